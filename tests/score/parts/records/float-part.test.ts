import { expect, test } from 'vitest';
import { floatPart, shortness } from '../../../../src/score/parts/records/float-part.js';
import type { Measured } from '../../../../src/score/parts/records/score-part.js';

const floats = (longest: number | null) => ({ longest, longestMm: longest === null ? null : longest * 1.5 });

// 1 for plain weave, 0 at the limit, in between even steps.
test.each([
  [1, 7, 1],
  [4, 7, 0.5],
  [6, 7, 1 / 6],
  [7, 7, 0],
  [9, 7, 0],
  [1, 1, 1],
  [2, 1, 0],
  [null, 7, 0],
] as const)('a float of %s within %d threads counts %d, in threads and in millimetres', (longest, threads, counts) => {
  expect(shortness(floats(longest), { threads }, 1.5)).toBeCloseTo(counts, 12);
  expect(shortness(floats(longest), { mm: threads * 1.5 }, 1.5)).toBeCloseTo(counts, 12);
});

test('a limit in length counts a thread as wide as the wider of end and pick', () => {
  const measured = (ends: number, picks: number) =>
    floatPart.of({
      floats: { longest: 2, longestMm: 4 },
      floatLimit: { mm: 6 },
      sett: { ends, picks, per: 'cm' },
    } as Measured);
  // Two millimetres: a float of 4 is half way from one thread to 6.
  expect(measured(5, 10)).toBeCloseTo(0.5, 12);
  expect(measured(10, 5)).toBeCloseTo(0.5, 12);
  expect(measured(10, 10)).toBeCloseTo(0.4, 12);
});
