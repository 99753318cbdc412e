import { fork } from 'node:child_process';
import { cpSync, mkdtempSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

/** A copy of the project in which mutants are written: the checkout itself is never touched. */
export function copyOfProject() {
  const copy = mkdtempSync(path.join(tmpdir(), 'shedlight-mutants-'));
  for (const name of [
    'src',
    'tests',
    'bin',
    'gallery',
    'package.json',
    'tsconfig.json',
    'README.md',
    'DEVELOPERS.md',
  ]) {
    cpSync(name, path.join(copy, name), { recursive: true });
  }
  for (const name of ['node_modules', 'dist']) symlinkSync(path.resolve(name), path.join(copy, name));
  process.on('exit', () => rmSync(copy, { recursive: true, force: true }));
  for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => process.exit(130));
  return copy;
}

const TESTER = fileURLToPath(new URL('tester.js', import.meta.url));
let child;

/** Ends the child with all that it started; the next run starts another, which has read no file yet. */
export function endTester() {
  if (child === undefined) return;
  child.removeAllListeners();
  process.kill(-child.pid, 'SIGKILL');
  child = undefined;
}
process.on('exit', endTester);

/**
 * Runs test files in the copy, in that order, and stops at the first failure. Their fate is 'passed', 'failed' or 'timed
 * out', and `by` the file that failed. `changed` are the files that are not as they were at the run before.
 */
export function runTests(copy, tests, limitMs, changed = [], env = {}) {
  child ??= fork(TESTER, { cwd: copy, stdio: 'ignore', detached: true, env: { ...process.env, ...env } });
  return new Promise((resolve) => {
    const timer = setTimeout(() => {
      endTester();
      resolve({ fate: 'timed out' });
    }, limitMs);
    child.once('message', ({ fate, by }) => {
      clearTimeout(timer);
      child.removeAllListeners();
      resolve({ fate, by: by && path.relative(copy, by) });
    });
    child.once('exit', () => {
      clearTimeout(timer);
      child = undefined;
      resolve({ fate: 'failed' });
    });
    const inCopy = (file) => path.join(copy, file);
    child.send({ changed: changed.map(inCopy), tests: tests.map(inCopy) });
  });
}
