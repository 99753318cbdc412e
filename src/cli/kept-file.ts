import { existsSync, statSync } from 'node:fs';
import { dirname } from 'node:path';
import writeFileAtomic from 'write-file-atomic';
import { type KeptCloth, parseShortlist } from '../plan/shortlist.js';
import { MachineFault, Problem } from '../problem.js';
import { readBytes } from './files.js';

/** Largest gallery or shortlist that is read, in bytes. */
export const LARGEST_LIST = 200_000_000;

/** A shortlist from a file. */
export function loadShortlist(path: string): KeptCloth[] {
  return parseShortlist(readBytes(path, 'a shortlist', LARGEST_LIST).toString('utf8'), path);
}

/** Whether something lies at a path that is a folder. */
export function isFolder(path: string): boolean {
  return existsSync(path) && statSync(path).isDirectory();
}

/** Writes a file whole or not at all. */
export async function writeWhole(path: string, data: string | Buffer): Promise<void> {
  try {
    await writeFileAtomic(path, data);
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === 'ENOENT') throw new Problem(`${path}: found no folder ${dirname(path)}; expected one that is there`);
    if (code === 'EISDIR') throw new Problem(`${path}: found a folder; expected the name of a file`);
    throw new MachineFault(`${path}: could not be written (${code})`, { cause: error });
  }
}
