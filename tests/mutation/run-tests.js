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

/**
 * Runs test files in the copy, in that order, and stops at the first failure: 'passed', 'failed' or 'timed out'. `changed`
 * are the files that are not as they were at the run before.
 */
export function runTests(copy, tests, limitMs, changed = []) {
  child ??= fork(TESTER, { cwd: copy, stdio: 'ignore', detached: true });
  const { pid } = child;
  const end = () => process.kill(-pid, 'SIGKILL');
  process.prependOnceListener('exit', end);
  return new Promise((resolve) => {
    const over = (fate) => {
      clearTimeout(timer);
      process.removeListener('exit', end);
      child.removeAllListeners();
      resolve(fate);
    };
    const timer = setTimeout(() => {
      over('timed out');
      child = undefined;
      end();
    }, limitMs);
    child.once('message', over);
    child.once('exit', () => {
      over('failed');
      child = undefined;
    });
    const inCopy = (file) => path.join(copy, file);
    child.send({ changed: changed.map(inCopy), tests: tests.map(inCopy) });
  });
}

/** How long each test file takes on the program as it is, in milliseconds; none that fails or takes longer than that. */
export async function durationsOf(copy, tests, limitMs) {
  const durations = new Map();
  for (const test of tests) {
    const start = Date.now();
    if ((await runTests(copy, [test], limitMs)) === 'passed') durations.set(test, Date.now() - start);
  }
  return durations;
}
