import { letters, readElements } from '../../draft/notation.js';
import { Problem, quote } from '../../problem.js';
import { NO_BLOCK } from './block-weave.js';

/** Most elements of a profile; guards against `999999999A`. */
const LONGEST_PROFILE = 4096;

/** Most letters that a message names one by one. */
const MOST_NAMED = 8;

/** How many blocks a profile needs, to have the last letter of those that it names. */
export function blocksIn(profile: readonly string[]): number {
  return Math.max(0, ...[...profile.join('')].map((sign) => sign.charCodeAt(0) - 64));
}

/**
 * Reads a profile, the letters of blocks: `A A B A B`, `AABAB`, `4A 2B`, `A4 B2` and `(AB)3` are all profiles. Blocks
 * that show together are joined, `A+C`; a unit of no block is `.`.
 *
 * @param blocks the letters that there are
 * @throws Problem on an unknown block (naming the blocks that there are), a count that cannot be read, a bracket without
 *   its fellow, or an empty profile
 */
export function parseProfile(text: string, blocks: readonly string[]): string[] {
  const known = blocks.length > MOST_NAMED ? `${blocks[0]} to ${blocks.at(-1)}` : blocks.join(', ');
  const expected = `blocks ${known}, counts or brackets`;
  if (text.trim() === '') throw new Problem(`a profile is empty; expected ${expected}`);
  const refuse = (_: number, found: string, instead: string): never => {
    throw new Problem(`profile ${quote(text)}: found ${found}; expected ${instead}`);
  };
  const { times } = letters(blocks);
  const letter = `[${blocks.join('')}${blocks.join('').toLowerCase()}]`;
  const alphabet = {
    element: new RegExp(`${letter}(?:\\s*\\+\\s*${letter})*|\\${NO_BLOCK}`),
    expected,
    ...(times !== undefined && { times }),
    read: ([element]: RegExpExecArray) => [[...new Set(element.toUpperCase().split(/\s*\+\s*/))].sort().join('+')],
  };
  return readElements(text, alphabet, LONGEST_PROFILE, refuse);
}
