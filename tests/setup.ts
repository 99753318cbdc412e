import fc from 'fast-check';
import { LONG, runs } from './long.js';

// Properties are tried on the same examples every time, so that a red run is red for everybody. For other ones:
// FC_SEED=2 npm test
// One that fails on something large is not made smaller for ever: nothing else can stop a test that does not wait.
fc.configureGlobal({
  seed: Number(process.env.FC_SEED ?? 1),
  numRuns: runs(100),
  ...(!LONG && { interruptAfterTimeLimit: 100_000, markInterruptAsFailure: true }),
});
