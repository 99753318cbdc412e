import { existsSync, readdirSync, renameSync, rmSync, statSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { Problem } from '../problem.js';
import { begin, end, hidden, owner, sweep } from './hidden.js';
import { type FolderKind, namesIn, strangersIn } from './strangers.js';
import { syncFolder } from './whole.js';

/** So old is what no earlier version of shedlight can still be working in, in milliseconds. */
const LONG_AGO = 3_600_000;

/**
 * Repairs what runs that were killed have left beside a place: a folder that was moved aside goes back where there is
 * no new one, and goes away where the new one is complete. To be called while no other run works there.
 *
 * @throws Problem where what was moved aside holds something of the person's that the place lacks
 */
export function settle(place: string, kind: FolderKind, shown: string): void {
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

/** Deletes a folder that was moved aside. What cannot be deleted does no harm: the next run tries again. */
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
