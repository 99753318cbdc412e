import { createHash } from 'node:crypto';
import { readdirSync, rmSync, statSync } from 'node:fs';
import { hostname, uptime } from 'node:os';
import { basename, dirname, join } from 'node:path';

/** What is made on another machine, and so cannot be asked after, is left by a dead run when it is so old. */
const DEAD_ELSEWHERE = 24 * 3_600_000;
/** Clocks and file systems round. */
const SLACK = 60_000;

/**
 * The name of something that lies beside a place only while it is written: `.NAME.shedlight-WHAT`. What there is:
 * `new-OWNER`, a file or folder in the making; `old`, a folder that was moved aside while the new one moves in;
 * `gone-OWNER`, such a folder while it is deleted; `lock`, held while a place is changed; `lock-OWNER`, one that is
 * taken from a dead run.
 */
export function hidden(place: string, what: string): string {
  return join(dirname(place), `.${basename(place)}.shedlight-${what}`);
}

/** Who writes: the process and, as disks are shared, a mark of the machine. */
export function owner(): string {
  return `${process.pid}-${createHash('sha256').update(hostname()).digest('hex').slice(0, 6)}`;
}

/** What this process has under way. */
const underWay = new Set<string>();

/** Takes note of something that must not outlive this process. */
export function begin(path: string): void {
  if (underWay.size === 0) process.once('exit', clear);
  underWay.add(path);
}

/** It is gone, or in its place. */
export function end(path: string): void {
  underWay.delete(path);
  if (underWay.size === 0) process.off('exit', clear);
}

function clear(): void {
  for (const path of underWay) rmSync(path, { recursive: true, force: true });
}

const OWNER = /^(\d+)-([0-9a-f]{6})$/;

/** Whether a text names an owner, all of it. */
export function isOwner(text: string): boolean {
  return OWNER.test(text);
}

/** Whether the run that made something is dead; `who` is its owner. What nobody of ours can have made never is. */
export function isLeft(path: string, who: string): boolean {
  const [, pid, machine] = OWNER.exec(who) ?? [];
  if (pid === undefined) return false;
  const there = statSync(path, { throwIfNoEntry: false });
  if (there === undefined) return false;
  const age = Date.now() - there.mtimeMs;
  if (machine !== owner().split('-')[1]) return age > DEAD_ELSEWHERE;
  // A process of the same number may run since the machine was started anew.
  if (age > uptime() * 1000 + SLACK) return true;
  if (Number(pid) === process.pid) return !underWay.has(path);
  try {
    process.kill(Number(pid), 0);
    return false;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'ESRCH';
  }
}

/** Deletes what dead runs have left beside a place. */
export function sweep(place: string): void {
  const start = basename(hidden(place, ''));
  for (const name of readdirSync(dirname(place))) {
    if (!name.startsWith(start)) continue;
    const [, who] = /^(?:new|gone|lock)-(.+)$/.exec(name.slice(start.length)) ?? [];
    const path = join(dirname(place), name);
    if (who !== undefined && isLeft(path, who)) rmSync(path, { recursive: true, force: true });
  }
}
