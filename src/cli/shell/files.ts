import { closeSync, fstatSync, openSync, readSync } from 'node:fs';
import { extname } from 'node:path';
import type { Draft } from '../../draft/draft.js';
import { LARGEST_WIF, readWif, refuseLarge } from '../../draft/wif/read-wif.js';
import { readDraft } from '../../draft/yaml/read-draft.js';
import { standing } from '../../files/standing.js';
import { LARGEST_FILE } from '../../input/source.js';
import { MachineFault, Problem } from '../../problem.js';
import { recognise, understood } from '../../structure/recognise/recognise.js';

/** What keeps a file from being read, where the person can do something about it. */
const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'found no such file',
  ENOTDIR: 'found no such file',
  EISDIR: 'found a folder',
  EACCES: 'found a file that may not be read',
  EPERM: 'found a file that may not be read',
};

/** The bytes of a file; of one that is too large, whatever it says of its size, no more than a little is read. */
export function readBytes(path: string, what: string, largest = LARGEST_FILE): Buffer {
  try {
    const file = openSync(standing(path), 'r');
    try {
      const stats = fstatSync(file);
      if (stats.isDirectory()) throw new Problem(`${path}: found a folder; expected ${what}`);
      const bytes = stats.size > largest ? undefined : readAtMost(file, largest);
      if (bytes === undefined) {
        throw new Problem(`${path}: found more than ${largest / 1_000_000} MB; expected ${what}`);
      }
      return bytes;
    } finally {
      closeSync(file);
    }
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    if (code === undefined) throw error;
    const reason = REASONS[code];
    if (reason !== undefined) throw new Problem(`${path}: ${reason}; expected ${what}`);
    throw new MachineFault(`${path}: could not be read (${code})`, { cause: error });
  }
}

/** All that an open file holds, which may be a pipe; undefined where that is more. */
function readAtMost(file: number, largest: number): Buffer | undefined {
  const chunks: Buffer[] = [];
  for (let left = largest; left >= 0; ) {
    const chunk = Buffer.alloc(Math.min(left + 1, 65_536));
    const count = readSync(file, chunk);
    if (count === 0) return Buffer.concat(chunks);
    chunks.push(chunk.subarray(0, count));
    left -= count;
  }
  return undefined;
}

/** The text of a file, in UTF-8, whether marked as such or not. */
export function readText(path: string, what: string, largest = LARGEST_FILE): string {
  const bytes = readBytes(path, what, largest);
  const mark = bytes.subarray(0, 2).toString('hex');
  // Half the bytes of plain words in UTF-16 are 0.
  if (mark === 'fffe' || mark === 'feff' || /^(?:\0[^\0]|[^\0]\0){2}/.test(bytes.subarray(0, 4).toString('latin1'))) {
    throw new Problem(`${path}: found text in UTF-16; expected ${what} in UTF-8: save it again with that encoding`);
  }
  const zero = bytes.indexOf(0);
  if (zero >= 0) {
    const rest = bytes.subarray(zero);
    const where = rest.every((byte) => byte === 0) ? `${rest.length} at its end, as a crash leaves them` : 'within it';
    throw new Problem(`${path}: found bytes of zero (${where}); expected ${what}, which is text`);
  }
  return bytes.toString('utf8').replace(/^\uFEFF/, '');
}

/**
 * Reads drafts, by the ending of their name as WIF or as YAML; what a WIF file leaves open is told. A draft of bare
 * numbers is given the units of its structure, where that is recognised with some certainty, and this is told too.
 */
export function draftLoader(tell: (note: string) => void): (path: string) => Draft {
  const load = draftAsWritten(tell);
  return (path) => withUnits(path, load(path), tell);
}

/** Reads drafts as {@link draftLoader}, but leaves them as they are written: first end first, no units made. */
export function draftAsWritten(tell: (note: string) => void): (path: string) => Draft {
  return (path) => {
    if (extname(path).toLowerCase() !== '.wif') return readDraft(readText(path, 'a draft'), path);
    const bytes = readBytes(path, 'a draft', LARGEST_WIF);
    try {
      const { draft, notes } = readWif(bytes);
      refuseLarge(draft);
      for (const note of notes) tell(`${path}: ${note}`);
      return draft;
    } catch (error) {
      throw error instanceof Problem ? error.inFile(path) : error;
    }
  };
}

/** The draft with the units of its structure, begun where a unit begins; as it is, where it has units or none are sure. */
function withUnits(path: string, draft: Draft, tell: (note: string) => void): Draft {
  if ([...draft.endUnits, ...draft.pickUnits].some((unit) => unit !== 1)) return draft;
  const found = recognise(draft);
  const { structure, confidence, ends, picks } = found;
  if (structure === undefined || (confidence !== 'certain' && confidence !== 'likely')) return draft;
  const units = `${ends.units.length} unit${ends.units.length === 1 ? '' : 's'}`;
  const begins =
    ends.from === 0 && picks.from === 0 ? '' : `, begun at end ${ends.from + 1} and pick ${picks.from + 1} of the file`;
  tell(`${path}: threading understood as ${structure.name} (${confidence}), ${units}${begins}`);
  return understood(draft, found);
}
