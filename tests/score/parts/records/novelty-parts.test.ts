import { expect, test } from 'vitest';
import { newnessPart } from '../../../../src/score/parts/records/novelty-parts.js';
import type { Measured } from '../../../../src/score/parts/records/score-part.js';

test.each([
  [0, 0],
  [0.05, 0.5],
  [0.1, 1],
  [0.4, 1],
])('a difference of %d to the nearest classic is %d new', (novelty, counts) => {
  expect(newnessPart.of({ novelty } as Measured)).toBeCloseTo(counts, 12);
});
