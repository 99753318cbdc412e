import { closeSync, openSync, readFileSync, renameSync, rmSync, statSync } from 'node:fs';
import { setTimeout } from 'node:timers/promises';
import { MachineFault } from '../problem.js';
import { explained } from './faults.js';
import { begin, end, hidden, isLeft, isOwner, owner } from './hidden.js';
import { writeAll } from './whole.js';

/** Milliseconds that one run waits for another in all, and between two attempts. */
const PATIENCE = 60_000;
const LOOK = 20;
/**
 * Milliseconds for which a lock without an owner's name counts as being made; an older one was left by a killed run.
 */
const MAKING = 5000;

/**
 * Does some work on a place under a lock, so that runs change it one after the other. The lock of a dead run is
 * removed.
 *
 * @throws MachineFault if another run holds the lock for longer than any work takes
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

/** Removes the lock of a dead run. It is moved aside first: of several runs that try, only one can succeed. */
function takeAwayFromDead(lock: string): void {
  try {
    if (!isDead(lock)) return;
    const aside = `${lock}-${owner()}`;
    renameSync(lock, aside);
    // Another run may have taken the lock between the check and the move.
    if (isDead(aside)) rmSync(aside);
    else renameSync(aside, lock);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ENOENT') throw error;
  }
}

function isDead(lock: string): boolean {
  const who = readFileSync(lock, 'utf8');
  // A clock that has been set back since makes the age negative.
  return isOwner(who) ? isLeft(lock, who) : Math.abs(Date.now() - statSync(lock).mtimeMs) > MAKING;
}
