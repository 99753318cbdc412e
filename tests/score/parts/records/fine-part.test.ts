import { expect, test } from 'vitest';
import { finePart } from '../../../../src/score/parts/records/fine-part.js';

test('is 1 for two crossings and for one, 0 from twenty each way on, a step less for each doubling', () => {
  const [one, hairline, check, larger, motif, large] = [1, 2, 8, 16, 400, 6400].map((piece) => finePart.of({ piece }));
  expect([one, hairline, motif, large]).toEqual([1, 1, 0, 0]);
  expect(check! - larger!).toBeCloseTo(1 / Math.log2(200), 12);
});

test('is 0 in a gallery that was made before pieces were counted', () => {
  expect(finePart.of({ piece: 0 })).toBe(0);
});
