import { isUtf8 } from 'node:buffer';
import { readdirSync, statSync } from 'node:fs';
import { basename, dirname, extname, isAbsolute, join } from 'node:path';
import type { Draft } from '../../draft/draft.js';
import { LARGEST_WIF, readWif, refuseLarge } from '../../draft/wif/read-wif.js';
import { readDraft } from '../../draft/yaml/read-draft.js';
import { unread } from '../../files/faults.js';
import { bytesUpTo } from '../../files/reading.js';
import { standing } from '../../files/standing.js';
import { LARGEST_FILE } from '../../input/source.js';
import { didYouMean, Problem } from '../../problem.js';
import { withUnits } from '../../structure/recognise/with-units.js';

/**
 * The bytes of a file. Of a file over the limit, only slightly more than the limit is read, whatever size it claims.
 */
export function readBytes(path: string, what: string, largest = LARGEST_FILE): Buffer {
  try {
    const place = standing(path);
    const bytes = statSync(place).isFile()
      ? bytesUpTo(place, largest)
      : endedBySignals(() => bytesUpTo(place, largest));
    if (bytes === 'folder') throw new Problem(`${path}: found a folder; expected ${what}`);
    if (bytes === 'large') throw new Problem(`${path}: found more than ${largest / 1_000_000} MB; expected ${what}`);
    return bytes;
  } catch (error) {
    const near = (error as NodeJS.ErrnoException).code === 'ENOENT' ? nearName(path) : '';
    throw unread(error, path, `${what}${near}`);
  }
}

/** The name in the same folder that is nearest to a missing one, if one is near. */
function nearName(path: string): string {
  try {
    return didYouMean(basename(path), readdirSync(dirname(path)));
  } catch {
    return '';
  }
}

/** Waits for a pipe or a terminal, so that Ctrl-C ends the process: while it waits, no listener of ours would run. */
function endedBySignals<T>(wait: () => T): T {
  const heard = (['SIGINT', 'SIGTERM', 'SIGHUP'] as const).flatMap((signal) =>
    process.listeners(signal).map((listener) => [signal, listener] as const),
  );
  for (const [signal, listener] of heard) process.off(signal, listener);
  try {
    return wait();
  } finally {
    for (const [signal, listener] of heard) process.on(signal, listener);
  }
}

/** The path of a file that another file names: relative to that file. */
export function besideFile(file: string, written: string): string {
  return isAbsolute(written) ? written : join(dirname(file), written);
}

/** The text of a file in UTF-8, with or without a byte order mark. */
export function readText(path: string, what: string, largest = LARGEST_FILE): string {
  const bytes = readBytes(path, what, largest);
  const mark = bytes.subarray(0, 2).toString('hex');
  // In UTF-16 half the bytes of Latin text are 0.
  if (mark === 'fffe' || mark === 'feff' || /^(?:\0[^\0]|[^\0]\0){2}/.test(bytes.subarray(0, 4).toString('latin1'))) {
    throw new Problem(`${path}: found text in UTF-16; expected ${what} in UTF-8: save it again with that encoding`);
  }
  const zero = bytes.indexOf(0);
  if (zero >= 0) {
    const rest = bytes.subarray(zero);
    const where = rest.every((byte) => byte === 0) ? `${rest.length} at its end, as a crash leaves them` : 'within it';
    throw new Problem(`${path}: found bytes of zero (${where}); expected ${what}, which is text`);
  }
  const text = bytes.toString('utf8');
  if (!isUtf8(bytes)) {
    const line = text.slice(0, text.indexOf('\uFFFD')).split('\n').length;
    throw new Problem(
      `${path}:${line}: found letters that are not UTF-8; expected ${what} in UTF-8: save it again with that encoding`,
    );
  }
  return text.replace(/^\uFEFF/, '');
}

/**
 * Makes a reader of drafts, in WIF or YAML by the ending of the name. A draft without units gets those of its structure
 * if that is certain or likely. Notes about either go to `tell`.
 */
export function draftLoader(tell: (note: string) => void): (path: string) => Draft {
  const load = draftAsWritten(tell);
  return (path) => withUnits(path, load(path), tell);
}

/** Makes a reader like {@link draftLoader} that leaves drafts as written: no units added, no other first end. */
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
