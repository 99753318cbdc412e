/**
 * The child of run.js: runs test files for one mutant after the other, and stops at the first that fails. Vitest stays, so
 * that only what was changed is read anew; each file has its own process.
 */
import { createVitest } from 'vitest/node';

const vitest = await createVitest('test', {
  config: false,
  watch: false,
  // What is tested is `src` itself, so that nothing is built beforehand.
  include: ['tests/**/*.test.ts'],
  setupFiles: ['tests/setup.ts'],
  testTimeout: 120_000,
  maxWorkers: 1,
  bail: 1,
  silent: true,
  reporters: [{}],
});
const project = vitest.getRootProject();

process.on('message', async ({ changed, tests }) => {
  for (const file of changed) vitest.invalidateFile(file);
  let fate = 'passed';
  for (const test of tests) {
    const { testModules } = await vitest.runTestSpecifications([project.createSpecification(test)]);
    // Vitest hands back every file that it ever ran; those of mutants before have failed.
    if (testModules.find(({ moduleId }) => moduleId === test)?.state() === 'passed') continue;
    fate = 'failed';
    break;
  }
  process.send(fate);
});
