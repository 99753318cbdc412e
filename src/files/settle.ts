import { existsSync, readdirSync, renameSync, rmSync, statSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { Problem } from '../problem.js';
import { begin, end, hidden, owner, sweep } from './hidden.js';
import { type FolderKind, namesIn, strangersIn } from './strangers.js';
import { syncFolder } from './whole.js';

/** Age in milliseconds from which no earlier version of shedlight can still be working in a folder. */
const LONG_AGO = 3_600_000;

/**
 * Cleans up after killed runs: an old folder that was moved aside is put back if there is no new one, and deleted if
 * the new one is complete. Call this only under the lock of the place.
 *
 * @throws Problem if the old folder holds a person's file that the new one lacks
 */
export function settleFolder(place: string, kind: FolderKind, shown: string): void {
  sweep(place);
  putRight(hidden(place, 'old'), place, kind, shown);
  for (const workshop of earlierWorkshops(place)) {
    putRight(join(workshop, 'old'), place, kind, shown);
    if (Date.now() - statSync(workshop).mtimeMs > LONG_AGO) rmSync(workshop, { recursive: true });
  }
}

function putRight(old: string, place: string, kind: FolderKind, shown: string): void {
  if (!existsSync(old)) return;
  if (!existsSync(place)) {
    renameSync(old, place);
    syncFolder(dirname(place));
    return;
  }
  const lacking = theirs(old, kind, shown).find((name) => !existsSync(join(place, name)));
  if (lacking !== undefined) {
    throw new Problem(
      `${shown}: found an earlier one in ${old}, left by a run that was cut off, with a file that only it has (“${lacking}”); expected that folder moved or deleted`,
    );
  }
  discard(old, place);
}

function theirs(old: string, kind: FolderKind, shown: string): readonly string[] {
  try {
    return strangersIn(old, kind, shown).strangers;
  } catch (error) {
    if (error instanceof Problem) return namesIn(old);
    throw error;
  }
}

/** Deletes an old folder that was moved aside. A failure is ignored: the next run tries again. */
export function discard(old: string, place: string): void {
  const gone = hidden(place, `gone-${owner()}`);
  begin(gone);
  try {
    renameSync(old, gone);
    rmSync(gone, { recursive: true });
  } catch (error) {
    if (!(error instanceof Error) || !('code' in error)) throw error;
  } finally {
    end(gone);
  }
}

/** Folders in which version 0.1.0 made a gallery: `.NAME-` and six letters, with `new` and `old` in it. */
function earlierWorkshops(place: string): string[] {
  const start = `.${basename(place)}-`;
  return readdirSync(dirname(place))
    .filter((name) => name.startsWith(start) && /^[A-Za-z0-9]{6}$/.test(name.slice(start.length)))
    .map((name) => join(dirname(place), name))
    .filter((path) => {
      const inner = statSync(path).isDirectory() ? namesIn(path) : [];
      return inner.length > 0 && inner.every((name) => name === 'new' || name === 'old');
    });
}
