/**
 * The child of run.js: runs test files for one mutant after the other, and stops at the first test that fails. Vitest
 * stays, so that only what was changed is read anew. All files of one run share a process, which ends with the run: no
 * module of one mutant is left for the next.
 */
import { createVitest } from 'vitest/node';

const vitest = await createVitest('test', {
  config: false,
  watch: false,
  // What is tested is `src` itself, so that nothing is built beforehand.
  include: ['tests/**/*.test.ts'],
  setupFiles: ['tests/setup.ts', 'tests/mutation/setup.js'],
  testTimeout: 120_000,
  maxWorkers: 1,
  isolate: false,
  sequence: {
    sequencer: class {
      sort = (files) => files;
      shard = (files) => files;
    },
  },
  bail: 1,
  silent: true,
  reporters: [{}],
});
const project = vitest.getRootProject();

process.on('message', async ({ changed, tests }) => {
  for (const file of changed) vitest.invalidateFile(file);
  const { testModules } = await vitest.runTestSpecifications(tests.map((test) => project.createSpecification(test)));
  // Vitest hands back every file that it ever ran; those of mutants before have failed.
  const stateOf = (test) => testModules.find(({ moduleId }) => moduleId === test)?.state();
  const fate = tests.every((test) => stateOf(test) === 'passed') ? 'passed' : 'failed';
  process.send({ fate, by: tests.find((test) => stateOf(test) === 'failed') });
});
