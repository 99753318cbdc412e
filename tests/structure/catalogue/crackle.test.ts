import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawdown, isUp } from '../../../src/cloth/drawdown.js';
import { floatsOf } from '../../../src/cloth/floats.js';
import { holdsTogether } from '../../../src/cloth/holds-together.js';
import { findStructure, weaveOf } from '../../../src/structure/catalogue/catalogue.js';
import { tabbySheds } from '../../../src/structure/loom/lifts.js';
import { letters } from '../../../src/structure/model/structure.js';
import { runs } from '../../long.js';
import { longest } from '../../plain/floats.js';
import { crackleEnds, ringCells } from '../../plain/ring-cells.js';

const SETT = { ends: 10, picks: 10, per: 'cm' } as const;
const crackle = findStructure('crackle');

describe.each([
  [5, 6],
  [6, 6],
  [7, 8],
  [8, 8],
  [12, 12],
])('crackle with %i blocks, on %i shafts', (count, shafts) => {
  const structure = crackle.withBlocks!(count);
  const profiles = fc.array(fc.constantFrom(...letters(shafts)), { minLength: 1, maxLength: 10 });

  test('every end is on a shaft next to that of the last, round the ring', () => {
    expect(structure.shafts).toBe(shafts);
    fc.assert(
      fc.property(profiles, fc.constantFrom(0, 1), (profile, alternative) => {
        const { threading } = weaveOf(structure, profile, { alternative });
        const ends = threading.map(([shaft]) => shaft!);
        for (const [i, shaft] of ends.entries()) {
          expect([1, shafts - 1]).toContain((shaft - ends.at(i - 1)! + shafts) % shafts);
        }
      }),
      { numRuns: runs(40) },
    );
  });

  test('no three neighbouring shafts of a pattern shed are alike; its own block is over three, under one', () => {
    letters(shafts).forEach((block, place) => {
      const up = new Set(structure.tieUp[`P${block}`]);
      const at = (step: number): boolean => up.has(((place + step) % shafts) + 1);
      for (let step = 0; step < shafts; step++) {
        expect(at(step) === at(step + 1) && at(step) === at(step + 2)).toBe(false);
      }
      expect([at(0), at(1), at(2)]).toEqual([false, false, true]);
    });
  });

  test.each(crackle.manners.map(({ name }) => name))('%s: no weft over more than 3, and the cloth holds', (manner) => {
    fc.assert(
      fc.property(profiles, profiles, (profile, treadled) => {
        const cloth = drawdown(weaveOf(structure, profile, { manner, treadled }));
        const { warpFace, warpBack, weftFace, weftBack } = floatsOf(cloth, SETT);
        expect(Math.max(weftFace!, weftBack!)).toBeLessThanOrEqual(3);
        expect(Math.max(warpFace!, warpBack!)).toBeLessThanOrEqual(manner === 'Italian manner' ? 5 : 3);
        expect(holdsTogether(cloth)).toBe(true);
      }),
      { numRuns: runs(40) },
    );
  });
});

test('joins of blocks far apart on eight shafts go the shorter way, closing the point that is left', () => {
  const between = (profile: string, alternative = 0): string =>
    weaveOf(crackle.withBlocks!(8), [...profile], { alternative })
      .threading.flat()
      .join('-');
  // A 1-2-3-2, then up by B and C to D 4-5-6-5; at the seam down again by C and B.
  expect(between('AD')).toBe('1-2-3-2-1-2-3-4-5-6-5-4-3-2');
  expect(between('AE')).toBe('1-2-3-2-1-2-3-4-5-6-7-6-5-6-7-8');
  expect(between('AE', 1)).toBe('1-2-3-2-1-8-7-6-5-6-7-6-5-4-3-2');
});

describe.each([
  ['crackle', 1],
  ['crackle, opposites joined downward', -1],
] as const)('%s', (name, way) => {
  test.each([4, 6, 8])('on %i shafts, end by end and crossing by crossing', (shafts) => {
    const structure = findStructure(name).withBlocks!(shafts);
    const profiles = fc.array(fc.constantFrom(...letters(shafts)), { minLength: 1, maxLength: 10 });
    fc.assert(
      fc.property(profiles, profiles, (profile, treadled) => {
        const weave = weaveOf(structure, profile, { treadled });
        const ends = crackleEnds(profile, shafts, way);
        expect(weave.threading.map(([shaft]) => shaft!)).toEqual(ends);
        const cloth = drawdown(weave);
        const cells = ringCells(
          ends,
          treadled.flatMap((block) => [block, block]),
          shafts,
        );
        expect(cells.map((row, j) => row.map((_, i) => (isUp(cloth, j, i) ? 1 : 0)))).toEqual(cells);
        expect(tabbySheds(weave.threading)).toBeDefined();
        expect(Math.max(longest(cells, 0)!, longest(cells, 1)!)).toBe(3);
        expect(holdsTogether(cloth)).toBe(true);
      }),
      { numRuns: runs(40) },
    );
  });
});

// Frey and Tidball by way of notes: the shafts between opposite blocks, up through B or down through D.
test('from A to its opposite C there are two ways', () => {
  const ends = (name: string): string =>
    weaveOf(findStructure(name), [...'AC'])
      .threading.flat()
      .join('');
  expect(ends('crackle')).toBe('123212' + '341434');
  expect(ends('crackle, opposites joined downward')).toBe('123214' + '341432');
});
