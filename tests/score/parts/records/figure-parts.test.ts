import { expect, test } from 'vitest';
import { figuredPart } from '../../../../src/score/parts/records/figure-parts.js';
import type { Measured } from '../../../../src/score/parts/records/score-part.js';

// A study of weavers’ practice: 0.25 to 0.6 is best, and below 0.1 it is a plaid.
test.each([
  [0, 0],
  [0.1, 0],
  [0.175, 0.5],
  [0.25, 1],
  [0.4, 1],
  [0.6, 1],
  [0.8, 0.5],
  [1, 0],
])('a share of figure of %d counts %d', (figure, part) => {
  expect(figuredPart.of({ figure } as Measured)).toBeCloseTo(part, 12);
});
