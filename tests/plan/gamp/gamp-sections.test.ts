import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chooseSections, clothsOf, type SectionCrossings } from '../../../src/plan/gamp/gamp-sections.js';
import { runs } from '../../long.js';

describe('choosing sections', () => {
  const table = (rows: number, columns: number): fc.Arbitrary<SectionCrossings> => {
    const cell = fc.option(fc.constantFrom(...'abcdefghij'), { nil: null });
    const row = fc.array(cell, { minLength: columns, maxLength: columns });
    return fc.array(row, { minLength: rows, maxLength: rows });
  };
  const pairs = [
    [0, 1],
    [0, 2],
    [0, 3],
    [1, 2],
    [1, 3],
    [2, 3],
  ];

  test('no order is chosen twice, though nothing more can be gained', () => {
    const crossings: SectionCrossings = Array.from({ length: 40 }, () => new Array<string>(40).fill('the same cloth'));
    const { warps, wefts, cloths } = chooseSections(crossings, 5, 6);
    expect([new Set(warps).size, new Set(wefts).size, cloths]).toEqual([5, 6, 1]);
  });

  test('where five warp orders alone give many cloths, those five are taken', () => {
    const rich = [3, 8, 15, 21, 30];
    const crossings: SectionCrossings = Array.from({ length: 40 }, (_, w) =>
      Array.from({ length: 40 }, (_, f) => (rich.includes(w) ? `cloth ${w} ${f}` : 'the same cloth')),
    );
    expect(chooseSections(crossings, 5, 6)).toMatchObject({ warps: rich, cloths: 30 });
  });

  test('small cases are exact', () => {
    fc.assert(
      fc.property(table(4, 4), (crossings) => {
        const best = Math.max(...pairs.flatMap((w) => pairs.map((f) => clothsOf(crossings, w, f))));
        const choice = chooseSections(crossings, 2, 2);
        expect(choice).toMatchObject({ cloths: best, atMost: best, exact: true });
        expect(clothsOf(crossings, choice.warps, choice.wefts)).toBe(best);
      }),
    );
  });

  test('large cases say what they reach and what cannot be passed', () => {
    const rows = 40;
    const crossings: SectionCrossings = Array.from({ length: rows }, (_, w) =>
      Array.from({ length: rows }, (_, f) => ((w * f) % 7 === 0 ? null : `cloth ${(w * 31 + f * 17) % 97}`)),
    );
    const choice = chooseSections(crossings, 5, 6);
    expect(choice.warps).toHaveLength(5);
    expect(choice.wefts).toHaveLength(6);
    expect(choice.cloths).toBe(clothsOf(crossings, choice.warps, choice.wefts));
    expect(choice.atMost).toBeLessThanOrEqual(30);
    expect(choice.cloths).toBeGreaterThan((1 - 1 / Math.E) * choice.atMost);
    expect(choice.cloths).toBeLessThanOrEqual(choice.atMost);
  });

  test('greedy never passes its own bound, nor does the best', () => {
    // Thirty weft orders with nothing to give put the case beyond what is tried one by one.
    fc.assert(
      fc.property(table(4, 4), (small) => {
        const wide = small.map((row) => [...row, ...new Array<null>(600).fill(null)]);
        const best = Math.max(...pairs.flatMap((w) => pairs.map((f) => clothsOf(small, w, f))));
        const choice = chooseSections(wide, 2, 2);
        expect(choice.cloths).toBeLessThanOrEqual(best);
        expect(choice.atMost).toBeGreaterThanOrEqual(best);
      }),
      { numRuns: runs(12, 300) },
    );
  });
});
