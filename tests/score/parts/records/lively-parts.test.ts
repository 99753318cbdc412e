import { expect, test } from 'vitest';
import { calmPart, liveliness } from '../../../../src/score/parts/records/lively-parts.js';

// Four bits are the most of sixteen patches (Shannon); above eight shapes a cloth is busy (a choice of ours).
test.each([
  [0, 0, 0],
  [4, 8, 1],
  [4, 0, 0.5],
  [0, 8, 0.5],
  [0, 9, 0.5],
  [2, 4, 0.5],
  [1, 1, 3 / 16],
])('%d bits and %d shapes are %d lively, and the rest calm', (bits, shapes, lively) => {
  expect(liveliness({ bits, shapes })).toBeCloseTo(lively, 12);
  expect(calmPart.of({ bits, shapes })).toBeCloseTo(1 - lively, 12);
});
