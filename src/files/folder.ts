import { chmodSync, existsSync, lstatSync, mkdirSync, renameSync, rmSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { MachineFault } from '../problem.js';
import { explained } from './faults.js';
import { begin, end, hidden, owner, sweep } from './hidden.js';
import { alone } from './lock.js';
import { checkWritable, placeOfFolder } from './place.js';
import { discard, settleFolder } from './settle.js';
import { carryOver, type FolderKind, glanceAt, inTheWay, strangersIn } from './strangers.js';
import { syncFolder, syncTree, writeFresh } from './whole.js';

/** Most attempts to copy a person's files, if they change while the old folder is being moved aside. */
const MOST_TRIES = 5;

export { type FolderKind, namesIn, type OwnFiles } from './strangers.js';

/** Writes one file of a new folder, by its path in it; returns its size. */
export type WriteFile = (name: string, data: string | Buffer) => number;

/** A folder as it lies on the disk. */
interface Replaced {
  /** Its absolute path, links followed. */
  readonly place: string;
  /** Bytes written, without the files that were carried over. */
  readonly bytes: number;
  /** The person's files that were kept in place of new ones. */
  readonly left: readonly string[];
}

/**
 * Checks whether a folder can be written, before there is anything to write. Cleans up after killed runs: puts back a
 * folder that was moved aside, and deletes unfinished ones.
 *
 * @throws Problem if something else is in the way, MachineFault if the disk cannot be written
 */
export async function judgeFolder(folder: string, kind: FolderKind): Promise<void> {
  try {
    const place = placeOfFolder(folder);
    // A name may be short enough for the folder, but too long for the hidden one beside it.
    lstatSync(hidden(place, `new-${owner()}`), { throwIfNoEntry: false });
    if (!existsSync(dirname(place))) return checkWritable(place);
    await alone(place, () => {
      settleFolder(place, kind, folder);
      const { strangers, named } = strangersIn(place, kind, folder);
      const changed = strangers.find((name) => named.has(name) && !kind.yields.includes(name));
      if (changed !== undefined) throw inTheWay(folder, changed);
    });
  } catch (error) {
    throw explained(error, folder);
  }
}

/**
 * Writes a folder whole or not at all. The new folder is filled beside its place and moved there at the end. If the run
 * is interrupted, the old folder is still there, or the next run puts it back. Files that a person has put into the old
 * folder are carried over. If two runs write at once, the last to finish wins.
 *
 * @throws Problem if something else is in the way, MachineFault if the disk fails, the signal's reason if aborted
 */
export async function replaceFolder(
  folder: string,
  kind: FolderKind,
  fill: (write: WriteFile) => Promise<void>,
  signal?: AbortSignal,
): Promise<Replaced> {
  await judgeFolder(folder, kind);
  const place = placeOfFolder(folder);
  const fresh = hidden(place, `new-${owner()}`);
  let bytes = 0;
  try {
    mkdirSync(dirname(place), { recursive: true });
    sweep(place);
    begin(fresh);
    mkdirSync(fresh);
    for (const inner of kind.folders) mkdirSync(join(fresh, inner));
    await fill((name, data) => {
      signal?.throwIfAborted();
      const size = written(join(fresh, name), data, join(folder, name));
      bytes += size;
      return size;
    });
    const left = await alone(place, () => {
      settleFolder(place, kind, folder);
      signal?.throwIfAborted();
      return moveIn(fresh, place, kind, folder);
    });
    return { place, bytes, left };
  } catch (error) {
    throw explained(error, folder);
  } finally {
    end(fresh);
    rmSync(fresh, { recursive: true, force: true });
  }
}

function written(path: string, data: string | Buffer, shown: string): number {
  try {
    return writeFresh(path, data, { sync: false });
  } catch (error) {
    throw explained(error, shown);
  }
}

/** Moves the old folder aside, and the new one, with the person's files, into its place. Returns the files kept. */
function moveIn(fresh: string, place: string, kind: FolderKind, shown: string): readonly string[] {
  let carried: readonly string[] = [];
  for (let tries = 0; tries < MOST_TRIES; tries++) {
    for (const name of carried) rmSync(join(fresh, name), { recursive: true, force: true });
    carried = strangersIn(place, kind, shown).strangers;
    const seen = glanceAt(place, carried);
    const left = carryOver(place, fresh, carried, kind, shown);
    syncTree(fresh);
    const there = statSync(place, { throwIfNoEntry: false });
    if (there) chmodSync(fresh, there.mode & 0o777);
    if (exchanged(fresh, place, (old) => glanceAt(old, strangersIn(old, kind, shown).strangers) === seen)) return left;
  }
  throw new MachineFault(`${shown}: could not be written: something in it is changed all the time`);
}

/** Exchanges two folders. Puts the old one back and returns false if `isAsSeen` is false once it is moved aside. */
function exchanged(fresh: string, place: string, isAsSeen: (old: string) => boolean): boolean {
  const old = hidden(place, 'old');
  const there = existsSync(place);
  if (there) renameSync(place, old);
  let done = false;
  try {
    done = !there || isAsSeen(old);
    if (done) renameSync(fresh, place);
  } catch (error) {
    if (there) renameSync(old, place);
    throw error;
  }
  if (!done) renameSync(old, place);
  syncFolder(dirname(place));
  if (done && there) discard(old, place);
  return done;
}
