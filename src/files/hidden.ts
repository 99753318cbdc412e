import { createHash } from 'node:crypto';
import { readdirSync, rmSync, statSync } from 'node:fs';
import { hostname, uptime } from 'node:os';
import { basename, dirname, join } from 'node:path';

/**
 * Age in milliseconds from which a file of a run on another machine, whose process cannot be checked, counts as left.
 */
const DEAD_ELSEWHERE = 24 * 3_600_000;
/** Milliseconds by which clocks and file times may differ. */
const SLACK = 60_000;

/**
 * The path of a temporary file or folder beside a place: `.NAME.shedlight-WHAT`. WHAT is one of: `new-OWNER`, a file or
 * folder being written; `old`, the old folder while the new one moves in; `gone-OWNER`, an old folder while it is
 * deleted; `lock`, held while a place is changed; `lock-OWNER`, a lock taken from a dead run.
 */
export function hidden(place: string, what: string): string {
  return join(dirname(place), `.${basename(place)}.shedlight-${what}`);
}

/** Names the running process: its number and, since disks are shared, a mark of the machine. */
export function owner(): string {
  return `${process.pid}-${createHash('sha256').update(hostname()).digest('hex').slice(0, 6)}`;
}

/** Temporary paths of this process. */
const underWay = new Set<string>();

/** Registers a temporary path, which is deleted if the process ends early. */
export function begin(path: string): void {
  if (underWay.size === 0) process.once('exit', clear);
  underWay.add(path);
}

/** Unregisters a temporary path that was deleted or moved into place. */
export function end(path: string): void {
  underWay.delete(path);
  if (underWay.size === 0) process.off('exit', clear);
}

function clear(): void {
  for (const path of underWay) rmSync(path, { recursive: true, force: true });
}

const OWNER = /^(\d+)-([0-9a-f]{6})$/;

/** Whether a text is the whole name of an owner. */
export function isOwner(text: string): boolean {
  return OWNER.test(text);
}

/** Whether a path was left by a dead run; `who` is its owner. False if `who` is no owner's name. */
export function isLeft(path: string, who: string): boolean {
  const [, pid, machine] = OWNER.exec(who) ?? [];
  if (pid === undefined) return false;
  const there = statSync(path, { throwIfNoEntry: false });
  if (there === undefined) return false;
  const age = Date.now() - there.mtimeMs;
  if (machine !== owner().split('-')[1]) return age > DEAD_ELSEWHERE;
  // After a restart of the machine another process may have the same number.
  if (age > uptime() * 1000 + SLACK) return true;
  if (Number(pid) === process.pid) return !underWay.has(path);
  try {
    process.kill(Number(pid), 0);
    return false;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'ESRCH';
  }
}

/** Deletes temporary files and folders that dead runs have left beside a place. */
export function sweep(place: string): void {
  const start = basename(hidden(place, ''));
  for (const name of readdirSync(dirname(place))) {
    if (!name.startsWith(start)) continue;
    const [, who] = /^(?:new|gone|lock)-(.+)$/.exec(name.slice(start.length)) ?? [];
    const path = join(dirname(place), name);
    if (who !== undefined && isLeft(path, who)) rmSync(path, { recursive: true, force: true });
  }
}
