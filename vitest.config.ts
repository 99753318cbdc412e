import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';
import type { Reporter, TestModule } from 'vitest/node';
import { LONG } from './tests/long.js';

/** Ends a run with one plain line of counts, for whoever reads a log by machine. */
const closingLine: Reporter = {
  onTestRunEnd(modules: readonly TestModule[]) {
    const count = { passed: 0, failed: 0, skipped: 0, pending: 0 };
    for (const module of modules) {
      if (module.state() === 'failed' && [...module.children.allTests()].length === 0) count.failed++;
      for (const test of module.children.allTests()) count[test.result().state]++;
    }
    console.log(`\n${count.passed} passed, ${count.failed} failed, ${count.skipped} skipped`);
  },
};

/** Tests of pages in a browser, and of files on a disk that fails: each file has a process of its own. */
const ALONE = ['tests/{files,gallery,library,page}/**/*.test.ts', 'tests/golden/page.test.ts'];

const EACH = { setupFiles: ['tests/setup.ts'], testTimeout: LONG ? 3_600_000 : 120_000 };

export default defineConfig({
  test: {
    // All others share processes, so that the program is loaded once for many.
    projects: [
      { test: { ...EACH, name: 'shared', include: ['tests/**/*.test.ts'], exclude: ALONE, isolate: false } },
      { test: { ...EACH, name: 'alone', include: ALONE } },
    ],
    // Once for both.
    globalSetup: ['tests/build.ts'],
    // Two files at a time, also where there are but two cores: some of them wait for a process or a browser.
    maxWorkers: Math.max(2, availableParallelism() - 1),
    reporters: ['default', closingLine],
  },
});
