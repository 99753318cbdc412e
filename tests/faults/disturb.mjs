/**
 * Loaded before the program, by `node --import`: disturbs it at one of the changes that it makes on the disk, as
 * SHEDLIGHT_FAULT says in JSON. `killAt`: at this change it is half done, then the process is killed. `fullAt`: from this
 * write on the disk takes half of what it is given, then nothing. `back`: milliseconds by which the clock is wrong, and
 * goes back further at every change. `count`: a file that gets the numbers of changes and writes.
 */
import fs from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';
import { isMainThread } from 'node:worker_threads';

const CHANGES = ['openSync', 'writeSync', 'fsyncSync', 'ftruncateSync', 'renameSync', 'rmSync', 'mkdirSync'].concat([
  'mkdtempSync',
  'rmdirSync',
  'cpSync',
  'chmodSync',
  'fchmodSync',
]);
const { killAt = 0, fullAt = 0, back = 0, count } = JSON.parse(process.env.SHEDLIGHT_FAULT ?? '{}');
const real = { ...fs };
let [changes, writes] = [0, 0];

if (isMainThread) {
  for (const name of CHANGES) fs[name] = (...given) => changed(name, given);
  syncBuiltinESMExports();
  if (count !== undefined) {
    process.on('exit', () => real.writeFileSync(count, JSON.stringify({ changes, writes })));
  }
}
if (back > 0) {
  const now = Date.now;
  Date.now = () => now() - back * (1 + changes);
}

function changed(name, given) {
  if (name === 'openSync' && given[1] === 'r') return real.openSync(...given);
  changes++;
  if (changes === killAt) {
    if (name === 'writeSync') writeHalf(given);
    process.kill(process.pid, 'SIGKILL');
    for (;;);
  }
  if (name !== 'writeSync') return real[name](...given);
  writes++;
  if (fullAt === 0 || writes < fullAt) return real.writeSync(...given);
  if (writes === fullAt && given[3] > 1) return writeHalf(given);
  throw Object.assign(new Error('ENOSPC: no space left on device, write'), { code: 'ENOSPC', syscall: 'write' });
}

function writeHalf([file, bytes, at, length, from]) {
  return real.writeSync(file, bytes, at, length >> 1, from);
}
