import { existsSync, mkdirSync } from 'node:fs';
import { extname, join } from 'node:path';
import { writeWif } from '../draft/wif.js';
import { type KeptCloth, keepAlso, shortlistText } from '../plan/shortlist.js';
import { didYouMean, MachineFault, Problem } from '../problem.js';
import { EXIT, type Io, say, sayJson } from './io.js';
import { loadCloths, loadShortlist } from './kept-file.js';
import { programVersion } from './version.js';
import { writeWhole } from './whole-file.js';

/** What a person gave on the command line. */
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

/** Adds cloths to a shortlist. What is on it already stays, with its marks, unless marks are given. */
export async function runKeep(given: KeepArguments, io: Io): Promise<number> {
  const { out = 'kept.json' } = given;
  const chosen = chosenOf(given);
  const before = existsSync(out) ? loadShortlist(out) : [];
  const kept = marked(keepAlso(before, chosen), given);
  await writeWhole(out, shortlistText(kept));
  const wif = given.wif === true ? await writeWifs(out, kept) : undefined;
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
  }
  return EXIT.done;
}

/** A WIF file of every cloth, named by its code, in a folder named after the shortlist; returns the folder. */
async function writeWifs(out: string, kept: readonly KeptCloth[]): Promise<string> {
  const folder = `${out.slice(0, out.length - extname(out).length)}-wif`;
  try {
    mkdirSync(folder, { recursive: true });
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === 'EEXIST') throw new Problem(`${folder}: found a file; expected a folder, or nothing yet`);
    throw new MachineFault(`${folder}: could not be made (${code})`, { cause: error });
  }
  const version = programVersion();
  for (const { code, draft } of kept) await writeWhole(join(folder, `${code}.wif`), writeWif(draft, { version }));
  return folder;
}

/** The cloths of these codes in a gallery, or all of a saved list (those of the codes, where any are given). */
function chosenOf({ gallery, codes }: KeepArguments): KeptCloth[] {
  const { file, cloths, chosen } = loadCloths(gallery);
  if (codes.length === 0) {
    if (chosen) return cloths;
    throw new Problem('found no codes; expected those of the cloths to keep, as under their pictures');
  }
  return codes.map((code) => {
    const found = cloths.find((cloth) => cloth.code === code);
    const known = cloths.map((cloth) => cloth.code);
    if (found === undefined) throw new Problem(`${file}: found no cloth ${code} in it${didYouMean(code, known)}`);
    return found;
  });
}

function marked(kept: readonly KeptCloth[], { codes, stars, note }: KeepArguments): KeptCloth[] {
  if (stars !== undefined && !/^[0-5]$/.test(stars)) {
    throw new Problem(`--stars: found “${stars}”; expected a whole number from 0 to 5`);
  }
  const marks = { ...(stars !== undefined && { stars: Number(stars) }), ...(note !== undefined && { note }) };
  return kept.map((cloth) => (codes.includes(cloth.code) ? { ...cloth, ...marks } : cloth));
}
