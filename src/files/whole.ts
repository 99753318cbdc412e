import {
  accessSync,
  closeSync,
  constants,
  fchmodSync,
  fstatSync,
  fsyncSync,
  lstatSync,
  openSync,
  readdirSync,
  readlinkSync,
  realpathSync,
  renameSync,
  rmSync,
  type Stats,
  statSync,
  writeSync,
} from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { Problem } from '../problem.js';
import { explained } from './faults.js';
import { begin, end, hidden, owner, sweep } from './hidden.js';

/** Most links in a row that are followed, as in common file systems. */
const MOST_LINKS = 40;

/**
 * Writes a file whole or not at all: it is written beside its place, synced to the disk, then moved there. If the run
 * is interrupted, the old file is unchanged. A link is followed, and stays a link.
 *
 * @throws Problem if no file can be at that path, MachineFault if the disk fails
 */
export function writeWhole(path: string, data: string | Buffer): void {
  const place = judgeFile(path);
  const beside = hidden(place, `new-${owner()}`);
  try {
    sweep(place);
    begin(beside);
    try {
      writeFresh(beside, data, { mode: statSync(place, { throwIfNoEntry: false })?.mode, sync: true });
      renameSync(beside, place);
    } catch (error) {
      rmSync(beside, { force: true });
      throw error;
    } finally {
      end(beside);
    }
    syncFolder(dirname(place));
  } catch (error) {
    throw explained(error, path);
  }
}

/**
 * Checks whether a file can be written, before there is anything to write.
 *
 * @returns its real path, links followed
 */
export function judgeFile(path: string): string {
  try {
    const place = followed(path);
    const there = statSync(place, { throwIfNoEntry: false });
    if (there?.isDirectory()) throw new Problem(`${path}: found a folder; expected the name of a file`);
    if (there !== undefined && !there.isFile()) {
      throw new Problem(`${path}: found a device or a pipe; expected the name of a file`);
    }
    if (there !== undefined) accessSync(place, constants.W_OK);
    accessSync(dirname(place), constants.W_OK | constants.X_OK);
    lstat(hidden(place, `new-${owner()}`));
    return place;
  } catch (error) {
    throw explained(error, path);
  }
}

/** The real path of a file, existing or not: links are followed. */
function followed(path: string): string {
  let place = resolve(path);
  for (let links = 0; links < MOST_LINKS; links++) {
    const folder = folderOf(place, path);
    place = join(folder, basename(place));
    if (!lstat(place)?.isSymbolicLink()) return place;
    place = resolve(folder, readlinkSync(place));
  }
  throw new Problem(`${path}: found links that lead round in a ring; expected the name of a file`);
}

function folderOf(place: string, path: string): string {
  try {
    return realpathSync(dirname(place));
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ENOENT') throw error;
    throw new Problem(`${path}: found no folder ${dirname(path)}; expected one that is there`);
  }
}

const lstat = (path: string): Stats | undefined => lstatSync(path, { throwIfNoEntry: false });

/**
 * Writes a new file, checks that all bytes were taken, and returns its size. The file survives a power failure only
 * once it is synced, here or later together with many others, which is quicker.
 */
export function writeFresh(
  path: string,
  data: string | Buffer,
  { mode, sync }: { readonly mode?: number | undefined; readonly sync: boolean },
): number {
  const bytes = typeof data === 'string' ? Buffer.from(data) : data;
  const file = openSync(path, 'wx');
  try {
    if (mode !== undefined) fchmodSync(file, mode & 0o777);
    writeAll(file, bytes, 0);
    if (sync) fsyncSync(file);
    if (fstatSync(file).size !== bytes.length) throw cutShort();
  } finally {
    closeSync(file);
  }
  return bytes.length;
}

/**
 * Writes bytes into an open file, in several calls if needed: a nearly full disk takes fewer bytes without an error.
 */
export function writeAll(file: number, bytes: Buffer, from: number): void {
  for (let at = 0; at < bytes.length; ) {
    const count = writeSync(file, bytes, at, bytes.length - at, from + at);
    if (count === 0) throw cutShort();
    at += count;
  }
}

const cutShort = (): Error => Object.assign(new Error('cut short'), { code: 'ESHORT', syscall: 'write' });

/** Syncs the entries of a folder to the disk. */
export function syncFolder(path: string): void {
  // Windows cannot open a folder to sync it, and keeps its entries by itself.
  if (process.platform !== 'win32') syncPath(path, 'r');
}

function syncPath(path: string, flags: 'r' | 'r+'): void {
  const file = openSync(path, flags);
  try {
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
}

/** Syncs a file, or a folder with everything in it, to the disk. */
export function syncTree(path: string): void {
  const stats = lstatSync(path);
  if (stats.isFile()) syncPath(path, process.platform === 'win32' ? 'r+' : 'r');
  if (!stats.isDirectory()) return;
  for (const name of readdirSync(path)) syncTree(join(path, name));
  syncFolder(path);
}
