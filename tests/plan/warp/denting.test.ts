import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dentingOf, dentsFilled, dentsOf, rankReeds, settIn } from '../../../src/plan/warp/denting.js';

describe('denting', () => {
  test('dents hold just the sett, none more than one end apart', () => {
    fc.assert(
      fc.property(fc.integer({ min: 4, max: 60 }), fc.integer({ min: 4, max: 20 }), (sett, reed) => {
        const dents = dentsOf(sett, reed);
        expect((dents.reduce((a, b) => a + b, 0) * reed) / dents.length).toBeCloseTo(sett, 9);
        expect(Math.max(...dents) - Math.min(...dents)).toBeLessThanOrEqual(1);
        const denting = dentingOf(sett, { dents: reed }, 'inch', 5);
        expect(dentsFilled(sett * 10, denting, 2)).toBe(reed * 10 + 2);
      }),
    );
  });

  test('reeds in every order are ranked alike: fewest dents, nearest to two ends in a dent, those in step last', () => {
    const order = fc.shuffledSubarray([5, 8, 10, 12, 15, 16, 20], { minLength: 7 });
    fc.assert(
      fc.property(order, (reeds) => {
        const ranked = rankReeds(20, reeds, 'inch', 5);
        expect(ranked.map(({ reed, dents, meets, inStep }) => [reed, dents.join('-'), meets, inStep])).toEqual([
          [10, '2', 10, false],
          [5, '4', 20, false],
          [20, '1', 5, false],
          [15, '1-1-2', 20, false],
          [8, '2-3', 5, true],
          [12, '1-2-2', 5, true],
          [16, '1-1-1-2', 5, true],
        ]);
      }),
    );
  });

  // One to four ends in a dent (common practice, no source).
  test('a reed with more than four ends in a dent, or with empty dents, is not advised', () => {
    expect(rankReeds(20, [4, 5, 20, 24, 40], 'inch', 7).map(({ reed }) => reed)).toEqual([5, 20]);
    expect(rankReeds(21, [5], 'inch', 7)).toEqual([]);
  });

  test('a reed of the other measure has the shortest order of dents within a hundredth of the sett, or the nearest', () => {
    const metric = (sett: number, dents: number) => dentingOf(sett, { dents, per: 'inch' }, 'cm', 4);
    for (let dents = 5; dents <= 40; dents++) {
      for (const sett of [2, 3, 4.5, 6, 8, 10, 14]) {
        const reed = dents / 2.54;
        const orders = Array.from({ length: 8 }, (_, at) => {
          const ends = Math.max(1, Math.round((sett / reed) * (at + 1)));
          return { length: at + 1, off: Math.abs((ends / (at + 1)) * reed - sett) / sett };
        });
        const near = orders.find(({ off }) => off <= 0.01);
        const denting = metric(sett, dents);
        const off = Math.abs(settIn(denting) - sett) / sett;
        if (near !== undefined) expect([denting.dents.length, off]).toEqual([near.length, expect.closeTo(near.off, 9)]);
        else expect(off).toBeCloseTo(Math.min(...orders.map((each) => each.off)), 9);
      }
    }
    // However open the sett, some dent has an end.
    expect(settIn(metric(0.5, 40))).toBeCloseTo(40 / 2.54 / 8, 9);
  });

  test('dents are filled one after the other, and a dent is left for each floating selvedge', () => {
    const denting = dentingOf(20, { dents: 8 }, 'inch', 7);
    expect(denting.dents).toEqual([2, 3]);
    expect([0, 1, 2, 3, 5, 6, 8, 10, 11].map((ends) => dentsFilled(ends, denting, 0))).toEqual([
      0, 1, 1, 2, 2, 3, 4, 4, 5,
    ]);
    expect(dentsFilled(10, denting, 2)).toBe(6);
  });
});
