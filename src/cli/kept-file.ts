import { existsSync, statSync } from 'node:fs';
import { type KeptCloth, parseShortlist } from '../plan/shortlist.js';
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
