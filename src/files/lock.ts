import { closeSync, openSync, readFileSync, renameSync, rmSync, statSync } from 'node:fs';
import { setTimeout } from 'node:timers/promises';
import { MachineFault } from '../problem.js';
import { explained } from './faults.js';
import { begin, end, hidden, isLeft, isOwner, owner } from './hidden.js';
import { writeAll } from './whole.js';

/** Milliseconds that one run waits for another, and between two looks. */
const PATIENCE = 60_000;
const LOOK = 20;
/** A lock without a whole owner in it is being made, or was left by a run that was killed in that moment. */
const MAKING = 5000;

/**
 * Does some work on a place while no other run does any there: one after the other. The lock of a dead run is taken
 * over.
 *
 * @throws MachineFault where another run holds the place for longer than anything takes
 */
export async function alone<T>(place: string, work: () => T | Promise<T>): Promise<T> {
  const lock = hidden(place, 'lock');
  const until = performance.now() + PATIENCE;
  while (!taken(lock, place)) {
    if (performance.now() > until) {
      throw new MachineFault(
        `${place}: another run has been writing there for a minute; if there is none, delete ${lock}`,
      );
    }
    await setTimeout(LOOK);
  }
  try {
    return await work();
  } finally {
    end(lock);
    rmSync(lock, { force: true });
  }
}

function taken(lock: string, place: string): boolean {
  let file: number;
  try {
    file = openSync(lock, 'wx');
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw explained(error, place);
    takeAwayFromDead(lock);
    return false;
  }
  try {
    begin(lock);
    writeAll(file, Buffer.from(owner()), 0);
    return true;
  } catch (error) {
    end(lock);
    rmSync(lock, { force: true });
    throw explained(error, place);
  } finally {
    closeSync(file);
  }
}

/** Where the lock was held by a run that is dead, it goes: moved first, as only one of those who try can do. */
function takeAwayFromDead(lock: string): void {
  try {
    if (!isDead(lock)) return;
    const aside = `${lock}-${owner()}`;
    renameSync(lock, aside);
    // Another may have taken it over between the look and the move.
    if (isDead(aside)) rmSync(aside);
    else renameSync(aside, lock);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ENOENT') throw error;
  }
}

function isDead(lock: string): boolean {
  const who = readFileSync(lock, 'utf8');
  return isOwner(who) ? isLeft(lock, who) : Date.now() - statSync(lock).mtimeMs > MAKING;
}
