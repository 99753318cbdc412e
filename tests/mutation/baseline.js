/** What each test file does on the program as it is: how long it takes, and which branches of which files it reaches. */
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { marked } from './places.js';
import { filesUnder } from './reach.js';
import { endTester, runTests } from './run-tests.js';

/** Kept from run to run: a change of one file does not let all test files be timed anew. */
const KEPT = 'node_modules/.cache/shedlight-mutation.json';

/** A test file that takes longer on the program as it is, in milliseconds, is not run for mutants. */
const SLOW_MS = 120_000;

/**
 * Of each test: `ms`, undefined where it fails or is slow; `isSure`, whether it did so on the very files that there are
 * now; and `reaches`, whether it may run a branch of a file. `importsOf` hands out what a test imports.
 */
export async function baselineOf(copy, tests, importsOf) {
  const kept = existsSync(KEPT) ? JSON.parse(readFileSync(KEPT, 'utf8')) : {};
  const missing = tests.filter((test) => kept[test]?.files[test] !== hashOf(test));
  console.log(`${tests.length} test files, of which ${missing.length} must be timed`);
  if (missing.length > 0) {
    mkdirSync(path.dirname(KEPT), { recursive: true });
    const branches = [];
    const texts = new Map(filesUnder('src').map((file) => [file, readFileSync(path.join(copy, file), 'utf8')]));
    for (const [file, text] of texts) {
      writeFileSync(
        path.join(copy, file),
        marked(file, text, (start) => branches.push({ file, start }) - 1),
      );
    }
    const env = { MUTATION_REACHED: path.join(copy, 'reached'), MUTATION_BRANCHES: branches.length };
    for (const test of missing) {
      const start = Date.now();
      const { fate } = await runTests(copy, [test], SLOW_MS, [], env);
      const ms = Date.now() - start;
      const ran = fate === 'passed' ? readFileSync(env.MUTATION_REACHED) : [];
      const reached = {};
      branches.forEach(({ file, start }, at) => {
        if (ran[at] === 1) reached[file] = [...(reached[file] ?? []), start];
      });
      const files = Object.fromEntries(importsOf(test).map((file) => [file, hashOf(file)]));
      kept[test] = { ...(fate === 'passed' && { ms }), files, reached };
      writeFileSync(KEPT, JSON.stringify(kept));
    }
    endTester();
    for (const [file, text] of texts) writeFileSync(path.join(copy, file), text);
  }
  return new Map(
    tests.map((test) => {
      const { ms, files, reached } = kept[test];
      const isSure = importsOf(test).every((file) => files[file] === hashOf(file));
      const reaches = (file, branch) => files[file] !== hashOf(file) || reached[file]?.includes(branch) === true;
      return [test, { ms, isSure, reaches }];
    }),
  );
}

const hashes = new Map();

function hashOf(file) {
  if (!hashes.has(file)) hashes.set(file, createHash('sha256').update(readFileSync(file)).digest('base64').slice(0, 8));
  return hashes.get(file);
}
