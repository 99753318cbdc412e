import { brief, Problem } from '../../problem.js';

/** Dashes that stand where a word processor had two hyphens, and the single hyphen of other programs. */
const SLIPPED = /^(?:-|[\u2010-\u2015\u2212]+-?)([a-z][a-z-]+)(?:=|$)/u;
/** A curly quotation mark that opens and is not closed in the same word: the shell has cut the name in two. */
const CUT = /^(?:--[a-z-]+=)?[\u201c\u201d\u201e\u00ab][^\u201c\u201d\u00bb]*$/u;

/**
 * Refuses words that were typed for a printed page and not for a shell.
 *
 * @param words what follows the program's name
 * @param flags all flags of all commands, as --structure
 * @throws Problem for an option with one hyphen or a dash, or a name in curly quotation marks
 */
export function refusePasted(words: readonly string[], flags: ReadonlySet<string>): void {
  for (const word of words) {
    const flag = `--${SLIPPED.exec(word)?.[1]}`;
    if (flags.has(flag)) {
      throw new Problem(`${brief(word)}: found a dash; expected two hyphens, ${flag}`);
    }
    if (CUT.test(word)) {
      throw new Problem(`${brief(word)}: found a curly quotation mark; expected straight ones round the whole name, "`);
    }
  }
}
