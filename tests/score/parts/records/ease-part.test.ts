import { expect, test } from 'vitest';
import { easePart } from '../../../../src/score/parts/records/ease-part.js';
import type { Measured } from '../../../../src/score/parts/records/score-part.js';

// One colour and one shuttle count 1; five changes to a repeat of 25 threads as much as two shuttles more (our choice).
test.each([
  [0, 0, 1, 1],
  [5, 0, 1, 1 / 2],
  [0, 4, 1, 1 / 3],
  [0, 0, 2, 2 / 3],
  [0, 0, 3, 1 / 2],
  [5, 4, 3, 1 / 5],
])('%d changes in 25 ends, %d in 10 picks and %d shuttles count %d', (warpChanges, weftChanges, shuttles, counts) => {
  const measured = { ease: { warpChanges, weftChanges, shuttles }, ends: 25, picks: 10 };
  expect(easePart.of(measured as Measured)).toBeCloseTo(counts, 12);
});
