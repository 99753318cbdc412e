/** What the test files of a mutant are run with. */
import { writeFileSync } from 'node:fs';
import fc from 'fast-check';
import { afterAll } from 'vitest';

// A property that fails is not made smaller: that it fails is enough.
fc.configureGlobal({ ...fc.readConfigureGlobal(), endOnFailure: true });

/** Where the branches that ran are written, and how many there are, as baseline.js asks for it. */
const { MUTATION_REACHED: to, MUTATION_BRANCHES: branches } = process.env;
if (to !== undefined) {
  globalThis.__ran = new Uint8Array(Number(branches));
  afterAll(() => writeFileSync(to, globalThis.__ran));
}
