import { spawn } from 'node:child_process';
import { cpSync, mkdtempSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';

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

/** Runs test files in the copy, in that order, and stops at the first failure: 'passed', 'failed' or 'timed out'. */
export function runTests(copy, tests, limitMs) {
  return new Promise((resolve) => {
    const child = spawn(
      process.execPath,
      ['node_modules/vitest/vitest.mjs', 'run', '--config', 'tests/mutation/vitest.config.js', '--bail', '1'],
      { cwd: copy, stdio: 'ignore', detached: true, env: { ...process.env, MUTATION_TESTS: JSON.stringify(tests) } },
    );
    const end = () => process.kill(-child.pid, 'SIGKILL');
    process.prependOnceListener('exit', end);
    let late = false;
    const timer = setTimeout(() => {
      late = true;
      end();
    }, limitMs);
    child.on('exit', (code) => {
      clearTimeout(timer);
      process.removeListener('exit', end);
      resolve(late ? 'timed out' : code === 0 ? 'passed' : 'failed');
    });
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
