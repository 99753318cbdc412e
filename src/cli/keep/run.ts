import { existsSync, mkdirSync, readFileSync } from 'node:fs';
import { extname, join } from 'node:path';
import { writeWif } from '../../draft/wif/read-wif.js';
import { explained } from '../../files/faults.js';
import { alone } from '../../files/lock.js';
import { programVersion } from '../../files/program-version.js';
import { judgeFile, writeWhole } from '../../files/whole.js';
import {
  type KeptCloth,
  keepAlso,
  LARGEST_LIST,
  LONGEST,
  parseShortlist,
  readBack,
  shortlistText,
} from '../../formats/shortlist.js';
import { brief, didYouMean, Problem, quote } from '../../problem.js';
import { asArgument } from '../../words/shell.js';
import { commandLine, EXIT, type Io, say, sayJson } from '../shell/io.js';
import { loadCloths, loadShortlist } from '../shell/kept-file.js';

/** The arguments of the command. */
export interface KeepArguments {
  readonly gallery: string;
  readonly codes: readonly string[];
  readonly out?: string;
  readonly stars?: string;
  readonly note?: string;
  /** Write a WIF file of every cloth on the shortlist, in a folder beside it. */
  readonly wif?: boolean;
  readonly json?: boolean;
}

/** Adds cloths to a shortlist. Cloths on it keep their note and stars, unless new ones are given. */
export async function runKeep(given: KeepArguments, io: Io): Promise<number> {
  const { out = 'kept.json' } = given;
  const chosen = chosenOf(given);
  const marks = marksOf(given);
  // Several runs may add to one list at once; under the lock each reads what the runs before it wrote.
  const { before, kept } = await alone(judgeFile(out), () => {
    const before = existsSync(out) ? loadShortlist(out) : [];
    const added = keepAlso(before, chosen);
    const kept = added.map((cloth) => (given.codes.includes(cloth.code) ? { ...cloth, ...marks } : cloth));
    writeWhole(out, checkedText(kept, out));
    return { before, kept };
  });
  const wif = given.wif === true ? writeWifs(out, kept, io) : undefined;
  const added = kept.length - before.length;
  if (given.json) {
    const candidates = kept.map(({ code, recipe, note, stars }) => ({ code, recipe, note, stars }));
    sayJson(io, {
      format: 'shedlight-keep',
      version: 1,
      file: out,
      ...(wif !== undefined && { wif }),
      added,
      candidates,
    });
  } else {
    for (const { code, recipe, stars } of kept) say(io.stdout, `${code}  ${'*'.repeat(stars).padEnd(5)}  ${recipe}`);
    say(io.stdout, `${out}: ${added} added, ${kept.length} in all`);
    if (wif !== undefined) say(io.stdout, `${wif}: a WIF file of each, named by its code`);
    const what = kept.every(({ onTheLoom }) => onTheLoom) ? 'weft for the warp on the loom' : 'warp';
    say(io.stdout, `Plan the ${what}: ${commandLine(io, 'plan', asArgument(out), '--yarn-size "8/2 cotton"')}`);
  }
  return EXIT.done;
}

/** The text of a shortlist, checked by reading it back. */
function checkedText(kept: readonly KeptCloth[], out: string): string {
  const text = shortlistText(kept);
  if (Buffer.byteLength(text) > LARGEST_LIST) {
    throw new Problem(`${out}: found more than ${LARGEST_LIST / 1_000_000} MB to keep; expected fewer cloths`);
  }
  parseShortlist(text, out);
  return text;
}

/**
 * Writes a WIF file of every cloth, named by its code, in a folder named after the shortlist; returns the folder. An
 * existing file with other contents may have been edited, and is not overwritten.
 */
function writeWifs(out: string, kept: readonly KeptCloth[], io: Io): string {
  const folder = `${out.slice(0, out.length - extname(out).length)}-wif`;
  try {
    mkdirSync(folder, { recursive: true });
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw explained(error, folder);
    throw new Problem(`${folder}: found a file; expected a folder, or nothing yet`);
  }
  const version = programVersion();
  for (const { code, draft, origin } of kept) {
    const path = join(folder, `${code}.wif`);
    const text = writeWif(draft, { version, ...(origin !== undefined && { origin: `${code}, ${origin}` }) });
    if (!existsSync(path)) writeWhole(path, text);
    else if (readFileSync(path, 'utf8') !== text) say(io.stderr, `${path}: left as it is, as it holds something else`);
  }
  return folder;
}

/** The chosen cloths: those with the given codes; without codes, all cloths of a saved list. */
function chosenOf({ gallery, codes }: KeepArguments): KeptCloth[] {
  const { file, cloths, chosen } = loadCloths(gallery);
  if (codes.length === 0) {
    if (chosen) return cloths;
    const [first] = cloths;
    const such = first === undefined ? '' : `, such as: shedlight keep ${asArgument(gallery)} ${first.code}`;
    throw new Problem(`found no codes; expected those of the cloths to keep, as under their pictures${such}`);
  }
  return codes.map((code) => {
    const found = cloths.find((cloth) => cloth.code === code);
    const known = cloths.map((cloth) => cloth.code);
    if (found === undefined)
      throw new Problem(
        `${file}: found no cloth ${brief(code)} in it${didYouMean(code, known) || `; codes are under the pictures, such as ${known[0]}`}`,
      );
    // A gallery has wider limits than a shortlist, so the cloth is checked by reading it back.
    return chosen ? found : readBack(found, `${file}: ${code}: `);
  });
}

/** The note and stars given for the codes. */
function marksOf({ stars, note }: KeepArguments): Partial<Pick<KeptCloth, 'stars' | 'note'>> {
  if (stars !== undefined && !/^[0-5]$/.test(stars)) {
    throw new Problem(`--stars: found ${quote(stars)}; expected a whole number from 0 to 5`);
  }
  if (note !== undefined && note.length > LONGEST.note) {
    throw new Problem(`--note: found ${note.length} letters; expected at most ${LONGEST.note}`);
  }
  return { ...(stars !== undefined && { stars: Number(stars) }), ...(note !== undefined && { note }) };
}
