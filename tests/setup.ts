import fc from 'fast-check';

// Properties are tried on the same examples every time, so that a red run is red for everybody. For a longer look:
// FC_SEED=2 FC_RUNS=1000 npm test
// One that fails on something large is not made smaller for ever: nothing else can stop a test that does not wait.
fc.configureGlobal({
  seed: Number(process.env.FC_SEED ?? 1),
  ...(process.env.FC_RUNS
    ? { numRuns: Number(process.env.FC_RUNS) }
    : { interruptAfterTimeLimit: 100_000, markInterruptAsFailure: true }),
});
