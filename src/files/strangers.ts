import { constants, cpSync, lstatSync, readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { Problem } from '../problem.js';

/** The files of a folder by which shedlight knows its own. */
export interface OwnFiles {
  /** Paths in the folder of all that was written there. */
  readonly named: ReadonlySet<string>;
  /** Those that still are as they were written. */
  readonly unchanged: ReadonlySet<string>;
}

/** A kind of folder that is written whole. */
export interface FolderKind {
  /** What it is called, such as “a gallery”. */
  readonly called: string;
  /** Folders in it. */
  readonly folders: readonly string[];
  /** Files that every folder of the kind has. */
  readonly always: readonly string[];
  /** Files that a person fills in: theirs stands in the place of a new one. */
  readonly yields: readonly string[];
  /**
   * What a folder holds of shedlight's; undefined where it is of no kind. `shown` is its name, for messages.
   *
   * @throws Problem where it is of another kind, or damaged
   */
  readonly ownFiles: (place: string, shown: string) => OwnFiles | undefined;
}

/** What a person has put into a folder or has changed there, and the names that shedlight gives. */
export interface Strangers {
  readonly strangers: readonly string[];
  readonly named: ReadonlySet<string>;
}

/**
 * What is not shedlight's in a folder, as paths in it; nothing where there is no folder.
 *
 * @throws Problem where the folder holds something, but is not of the kind
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

/** Everything that lies in a folder; nothing where there is none. */
export function namesIn(folder: string): string[] {
  try {
    return readdirSync(folder).sort();
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return [];
    throw error;
  }
}

/** What can be seen of files without reading them, in one line; another where one was changed. */
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
 * Copies what is a person's into a new folder, so that it is never missing, whenever the power fails.
 *
 * @returns those that stand in the place of new ones
 * @throws Problem where one has a name that the new folder needs
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

/** A person's file has a name that shedlight gives to its own. */
export function inTheWay(shown: string, name: string): Problem {
  return new Problem(
    `${join(shown, name)}: found a file that this version of shedlight did not write as it is, and would write over; expected it moved or deleted`,
  );
}
