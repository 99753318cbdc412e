import { expect, test } from 'vitest';
import { balancePart } from '../../../../src/score/parts/records/balance-part.js';
import type { Measured } from '../../../../src/score/parts/records/score-part.js';

test.each([
  [0, 0],
  [0.25, 0.5],
  [0.5, 1],
  [0.75, 0.5],
  [1, 0],
])('a face that is dark by %d has a balance of %d', (darkShare, counts) => {
  expect(balancePart.of({ darkShare } as Measured)).toBeCloseTo(counts, 12);
});
