// Worked examples of planning; their sources are named in worked-plans.ts.
import { describe, expect, test } from 'vitest';
import { drawdown } from '../../src/cloth/drawdown.js';
import { floatsOf } from '../../src/cloth/floats.js';
import { FLOAT_LIMITS, threadsWithin } from '../../src/plan/warp/purpose.js';
import { INCH } from '../../src/words/measure.js';
import { inches, profiled, SETT, twill } from './worked-plans.js';

describe('floats in length', () => {
  test.each([
    [16, 8, 6],
    [20, 10, 7],
    [24, 12, 9],
    [30, 15, 11],
  ])('%i ends to the inch: 1/2 in holds %i, 3/8 in %i', (epi, half, threeEighths) => {
    expect(threadsWithin(FLOAT_LIMITS.general, INCH / epi)).toBe(half);
    expect(threadsWithin(FLOAT_LIMITS.towel, INCH / epi)).toBe(threeEighths);
  });

  test.each([
    [2, 8, 0.4],
    [4, 16, 0.8],
    [8, 32, 1.6],
  ])("monk's belt AABAB, %i pairs an element: %i ends, %f in", (pairs, ends, length) => {
    const profile = [...'AABAB'].map((block) => new Array<string>(pairs).fill(block).join(' ')).join(' ');
    const { weftFace, weftBack, longestMm } = floatsOf(drawdown(profiled("monk's belt", profile)), SETT);
    expect(Math.max(weftFace!, weftBack!)).toBe(ends);
    expect(inches(longestMm!)).toBeCloseTo(length, 9);
  });

  test.each([1, 2, 4])('summer and winter with tabby: 3 at %i units an element', (units) => {
    const profile = [...'AABAB'].map((block) => new Array<string>(units).fill(block).join(' ')).join(' ');
    const floats = floatsOf(drawdown(profiled('summer and winter', profile)), SETT);
    expect([floats.warpFace, floats.warpBack, floats.weftFace, floats.weftBack]).toEqual([3, 3, 3, 3]);
  });
});

describe('floats of structures, in ends and picks', () => {
  test.each([
    ["M's and O's", 'A B', { weft: 4, warp: 2 }],
    ['huck', 'A B', { weft: 5, warp: 5 }],
    ['turned taqueté', 'A B', { weft: 2, warp: 3 }],
    ['turned twill', 'A B', { weft: 3, warp: 3 }],
  ])('%s', (name, profile, { weft, warp }) => {
    const { warpFace, warpBack, weftFace, weftBack } = floatsOf(drawdown(profiled(name, profile)), SETT);
    expect(Math.max(weftFace!, weftBack!)).toBe(weft);
    expect(Math.max(warpFace!, warpBack!)).toBe(warp);
  });

  /** Longest warp float of these lifts over a straight draw on four shafts. */
  const warpFloat = (lifts: readonly string[]): number => {
    const draft = twill([0], [0]);
    const floats = floatsOf(
      drawdown({
        ...draft,
        tieUp: lifts.map((lift) => [...lift].map(Number)),
        treadling: lifts.map((_, j) => [j + 1]),
      }),
      SETT,
    );
    return Math.max(floats.warpFace!, floats.warpBack!);
  };

  test.each([
    ['234 134 124 123', 4],
    ['134 124 123 234', 3],
    ['124 123 234 134', 3],
    ['123 234 134 124', 3],
    // The opposites run back: both joins are clean.
    ['123 124 134 234', 3],
  ])('turned twill on four shafts: after the 1/3 band the 3/1 band %s floats %i', (band, longest) => {
    expect(warpFloat([...'1234', ...band.split(' ')])).toBe(longest);
  });
});
