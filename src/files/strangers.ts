import { constants, cpSync, lstatSync, readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { Problem } from '../problem.js';
import { textUpTo } from './reading.js';
import { writeFresh } from './whole.js';

/** Largest form, in bytes, that is brought up to date. */
const LARGEST_FORM = 1_000_000;

/** The files of a folder that shedlight wrote. */
export interface OwnFiles {
  /** Paths, within the folder, of all files written there. */
  readonly named: ReadonlySet<string>;
  /** The paths of those that are still as written. */
  readonly unchanged: ReadonlySet<string>;
}

/** A kind of folder that is written whole. */
export interface FolderKind {
  /** Its name in messages, such as “a gallery”. */
  readonly called: string;
  /** Names of its subfolders. */
  readonly folders: readonly string[];
  /** Files that every folder of the kind has. */
  readonly always: readonly string[];
  /** Files that a person fills in: the person's file is kept in place of a new one. */
  readonly yields: readonly string[];
  /** What such a file becomes in the new folder; undefined if it stays as it is. */
  readonly grown?: (text: string) => string | undefined;
  /**
   * The files that shedlight wrote into a folder; undefined if it is not of this kind. `shown` is its name in messages.
   *
   * @throws Problem if the folder is of another kind, or damaged
   */
  readonly ownFiles: (place: string, shown: string) => OwnFiles | undefined;
}

/** What a person has put into a folder or has changed there, and the names that shedlight gives. */
interface Strangers {
  readonly strangers: readonly string[];
  readonly named: ReadonlySet<string>;
}

/**
 * Finds the files in a folder that are not shedlight's, as paths within it; none if there is no folder.
 *
 * @throws Problem if the folder holds files but is not of this kind
 */
export function strangersIn(place: string, kind: FolderKind, shown: string): Strangers {
  const names = namesIn(place);
  const always = [...kind.always, ...kind.folders];
  if (names.length === 0) return { strangers: [], named: new Set(always) };
  const found = kind.ownFiles(place, shown);
  const other = names.find((name) => !kind.yields.includes(name));
  if (found === undefined && other !== undefined) {
    throw new Problem(
      `${shown}: found a folder with other things in it (“${other}”); expected ${kind.called}, or an empty or new folder`,
    );
  }
  const all = names.flatMap((name) =>
    kind.folders.includes(name) && lstatSync(join(place, name)).isDirectory()
      ? namesIn(join(place, name)).map((inner) => `${name}/${inner}`)
      : [name],
  );
  return {
    strangers: all.filter((name) => found?.unchanged.has(name) !== true),
    named: new Set([...always, ...(found?.named ?? [])]),
  };
}

/** Paths of everything in a folder; none if there is no folder. */
export function namesIn(folder: string): string[] {
  try {
    return readdirSync(folder).sort();
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return [];
    throw error;
  }
}

/** A fingerprint of files from their sizes and times, without reading them; it differs once a file has changed. */
export function glanceAt(folder: string, names: readonly string[]): string {
  const look = (name: string): unknown => {
    const path = join(folder, name);
    const stats = lstatSync(path);
    const inner = stats.isDirectory() ? namesIn(path).map((each) => look(join(name, each))) : [];
    return [name, stats.mtimeMs, stats.size, stats.ino, inner];
  };
  return JSON.stringify(names.map(look));
}

/**
 * Copies a person's files into a new folder. Each file exists at every moment, so a power failure loses none.
 *
 * @returns the files kept in place of new ones
 * @throws Problem if a file has a name that the new folder needs
 */
export function carryOver(
  place: string,
  fresh: string,
  strangers: readonly string[],
  kind: FolderKind,
  shown: string,
): string[] {
  const left: string[] = [];
  for (const name of strangers) {
    const path = join(fresh, name);
    if (lstatSync(path, { throwIfNoEntry: false }) !== undefined) {
      if (!kind.yields.includes(name)) throw inTheWay(shown, name);
      left.push(name);
      rmSync(path);
      if (grew(join(place, name), path, kind)) continue;
    }
    cpSync(join(place, name), path, {
      recursive: true,
      force: false,
      errorOnExist: true,
      preserveTimestamps: true,
      verbatimSymlinks: true,
      mode: constants.COPYFILE_FICLONE,
    });
  }
  return left;
}

/** Writes what a person's file becomes in the new folder; false if it stays as it is. */
function grew(old: string, path: string, kind: FolderKind): boolean {
  const stats = lstatSync(old);
  const begun = stats.isFile() ? textUpTo(old, LARGEST_FORM) : undefined;
  const text = begun === undefined ? undefined : kind.grown?.(begun);
  if (text !== undefined) writeFresh(path, text, { mode: stats.mode, sync: false });
  return text !== undefined;
}

/** The problem that a person's file has a name which shedlight needs. */
export function inTheWay(shown: string, name: string): Problem {
  return new Problem(
    `${join(shown, name)}: found a file that this version of shedlight did not write as it is, and would write over; expected it moved or deleted`,
  );
}
