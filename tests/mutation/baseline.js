/** What each test file does on the program as it is: how long it takes, and which branches of which files it reaches. */
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { marked } from './places.js';
import { filesUnder } from './reach.js';
import { endTester, runTests } from './run-tests.js';

/** Kept from run to run, for test files whose text, and that of all they import, is the same. */
const KEPT = 'node_modules/.cache/shedlight-mutation.json';

/** A test file that takes longer on the program as it is, in milliseconds, is not run for mutants. */
const SLOW_MS = 60_000;

/**
 * Of each test: `ms`, undefined where it fails or is slow, and `branches`, the beginnings of the branches that it runs, by
 * file. `importsOf` hands out what a test imports.
 */
export async function baselineOf(copy, tests, importsOf) {
  const kept = existsSync(KEPT) ? JSON.parse(readFileSync(KEPT, 'utf8')) : {};
  const keys = new Map(tests.map((test) => [test, keyOf(importsOf(test))]));
  const missing = tests.filter((test) => kept[test]?.key !== keys.get(test));
  console.log(`${tests.length} test files, of which ${missing.length} must be timed`);
  if (missing.length > 0) {
    mkdirSync(path.dirname(KEPT), { recursive: true });
    const branches = [];
    const files = filesUnder('src');
    const texts = new Map(files.map((file) => [path.join(copy, file), readFileSync(file, 'utf8')]));
    for (const file of files) {
      const mark = (start) => branches.push({ file, start }) - 1;
      writeFileSync(path.join(copy, file), marked(file, texts.get(path.join(copy, file)), mark));
    }
    const env = { MUTATION_REACHED: path.join(copy, 'reached'), MUTATION_BRANCHES: branches.length };
    for (const test of missing) {
      const start = Date.now();
      const fate = await runTests(copy, [test], SLOW_MS, [], env);
      const ms = Date.now() - start;
      const ran = fate === 'passed' ? readFileSync(env.MUTATION_REACHED) : [];
      const reached = {};
      branches.forEach(({ file, start }, at) => {
        if (ran[at] === 1) reached[file] = [...(reached[file] ?? []), start];
      });
      kept[test] = { key: keys.get(test), ...(fate === 'passed' && { ms }), branches: reached };
      writeFileSync(KEPT, JSON.stringify(kept));
    }
    endTester();
    for (const [file, text] of texts) writeFileSync(file, text);
  }
  return new Map(tests.map((test) => [test, kept[test]]));
}

function keyOf(files) {
  const hash = createHash('sha256');
  for (const file of files) hash.update(file).update(readFileSync(file));
  return hash.digest('hex');
}
