import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fromCells } from '../../src/cloth/drawdown.js';
import { FLOAT_SIDES, floatsOf, longestFloatPlace, weftFloatsByKind } from '../../src/cloth/floats.js';
import type { PickKind, Sett } from '../../src/draft/draft.js';
import { lifts, woven } from '../lifts.js';
import * as plain from '../plain/floats.js';

const SETT: Sett = { ends: 8, picks: 5, per: 'cm' };

const plainFloats = (cells: plain.Lifts) => ({
  warpFace: plain.longest(plain.columns(cells), 1),
  warpBack: plain.longest(plain.columns(cells), 0),
  weftFace: plain.longest(cells, 0),
  weftBack: plain.longest(cells, 1),
});

describe('floats by kinds equal floats strand by strand', () => {
  test('the four counts, the longest in threads and in millimetres', () => {
    fc.assert(
      fc.property(lifts, (cells) => {
        const four = plainFloats(cells);
        const { longestMm, ...found } = floatsOf(woven(cells), SETT);
        expect(found).toEqual({ ...four, longest: plain.most(Object.values(four)) });
        const warp = plain.most([four.warpFace, four.warpBack]);
        const weft = plain.most([four.weftFace, four.weftBack]);
        if (warp === null || weft === null) expect(longestMm).toBeNull();
        else expect(longestMm).toBeCloseTo(Math.max((warp * 10) / 5, (weft * 10) / 8), 12);
      }),
    );
  });

  test('the longest float lies where it is said to, and ends there', () => {
    fc.assert(
      fc.property(lifts, fc.constantFrom(undefined, SETT), (cells, sett) => {
        const { side, strand, from, length } = longestFloatPlace(woven(cells), sett);
        const across = side === 'weftFace' || side === 'weftBack';
        const along = across ? cells[strand]! : plain.columns(cells)[strand]!;
        const value = side === 'warpFace' || side === 'weftBack' ? 1 : 0;
        if (length === null) {
          expect(along.every((cell) => cell === value)).toBe(true);
          return;
        }
        const at = (crossing: number): number => along[(crossing + along.length) % along.length]!;
        const isFloat = (start: number) =>
          Array.from({ length }, (_, step) => at(start + step)).every((cell) => cell === value);
        expect(from).toBe(along.findIndex((_, start) => isFloat(start)));
        expect([at(from - 1), at(from + length)]).toEqual([1 - value, 1 - value]);
        const floats = floatsOf(woven(cells), SETT);
        if (sett === undefined) expect(length).toBe(floats.longest);
        else expect(length * (across ? 10 / 8 : 10 / 5)).toBeCloseTo(floats.longestMm!, 12);
      }),
    );
  });

  test('of equal floats the first side, strand and crossing is named', () => {
    const twill = fromCells(4, 4, (j, i) => (i - j + 4) % 4 < 2);
    expect(longestFloatPlace(twill)).toEqual({ side: 'warpFace', strand: 0, from: 3, length: 2 });
    expect(longestFloatPlace(twill, { ends: 10, picks: 20, per: 'cm' }).side).toBe('weftFace');
    const rib = fromCells(2, 6, (j, i) => (j % 3 === 0) === (i === 0));
    expect(longestFloatPlace(rib)).toEqual({ side: 'warpFace', strand: 1, from: 1, length: 2 });
    const early = fromCells(2, 6, (j, i) => (j % 3 === 2) === (i === 1));
    expect(longestFloatPlace(early)).toEqual({ side: 'warpFace', strand: 0, from: 0, length: 2 });
  });

  test('weft floats of ground, pattern and tabby picks apart', () => {
    fc.assert(
      fc.property(
        lifts,
        fc.array(fc.constantFrom<PickKind>('ground', 'pattern', 'tabby'), { minLength: 8 }),
        (cells, all) => {
          const kinds = all.slice(0, cells.length);
          const expected = Object.fromEntries(
            [...new Set(kinds)].map((kind) => {
              const own = cells.filter((_, j) => kinds[j] === kind);
              return [kind, { face: plain.longest(own, 0), back: plain.longest(own, 1) }];
            }),
          );
          expect(weftFloatsByKind(woven(cells), kinds)).toEqual(expected);
        },
      ),
    );
  });
});

test('a strand that never interlaces has no end to its float', () => {
  const loose = fromCells(2, 2, (j, i) => i === 0 || j === 0);
  const floats = floatsOf(loose, SETT);
  expect(FLOAT_SIDES.map((side) => floats[side])).toEqual([null, 1, 1, null]);
  expect([floats.longest, floats.longestMm]).toEqual([null, null]);
  expect(longestFloatPlace(loose)).toEqual({ side: 'warpFace', strand: 0, from: 0, length: null });
});
