// Worked examples of planning; their sources are named in worked-plans.ts.
import { describe, expect, test } from 'vitest';
import { gampNeeds, gampOf } from '../../src/plan/gamp/gamp-plan.js';
import {
  checkSections,
  gampColours,
  rightSizes,
  type Section,
  sectionStarts,
  squareNumber,
} from '../../src/plan/gamp/gamp-windows.js';
import { readPlanOptions } from '../../src/plan/options/plan-options.js';
import { planWarps } from '../../src/plan/piece/warp-plan.js';
import { tally } from '../../src/plan/yarn/yarn-amounts.js';
import { INCH } from '../../src/words/measure.js';
import { kept } from '../plan/cloths.js';
import { inches, word } from './worked-plans.js';

describe('gamp', () => {
  const orders = [word('DDLDL'), word('DDLDL', 4), word('DL'), word('DDLL'), word('LLDLD')];
  const sections: Section[] = orders.map((order) => ({ order, threads: 60 }));
  const gamp = { sections, separator: 4, yarn: 2 };

  test('five sections of 60 and six separators of 4: 324 ends, D 156, L 144, S 24, 16.2 in, 81 heddles a shaft', () => {
    checkSections(gamp, 4);
    const ends = gampColours(gamp);
    expect(ends).toHaveLength(324);
    expect(tally(ends, 324, 3)).toEqual([156, 144, 24]);
    expect(sections.map(({ order, threads }) => tally(order, threads, 2))).toEqual([
      [36, 24],
      [36, 24],
      [30, 30],
      [30, 30],
      [24, 36],
    ]);
    expect(sectionStarts(gamp).every((start) => start % 4 === 0)).toBe(true);
    expect(squareNumber(4, 4, 5)).toBe(25);
  });

  test('the same from a shortlist: 324 ends, 16.2 in, 81 heddles a shaft, a woven square with two hems 18.2 in', () => {
    const shortlist = [
      kept('2/2 twill', { warp: 'DDLDL' }),
      kept('2/2 twill', { warp: 'DDLDL', times: 4 }),
      ...['DL', 'DDLL', 'LLDLD'].map((warp) => kept('2/2 twill', { warp })),
    ];
    const options = readPlanOptions('', 'needs', { width: '16.2 in', floating: 'no' });
    const whole = gampOf(shortlist, options, { separator: 4 });
    const wanted = gampNeeds(whole, options);
    const [warp] = planWarps([whole.cloth], wanted);
    expect(warp!.wound).toEqual([
      { letter: 'D', ends: 156 },
      { letter: 'L', ends: 144 },
      { letter: 'S', ends: 24 },
    ]);
    expect([warp!.ends.length, inches(warp!.ends.length * (INCH / 20))]).toEqual([324, expect.closeTo(16.2, 9)]);
    expect(warp!.heddles).toEqual([81, 81, 81, 81]);
    expect(inches(warp!.pieces[0]!.woven)).toBeCloseTo(18.2, 9);
    expect(whole.squares.map(({ number }) => number)).toEqual(Array.from({ length: 25 }, (_, s) => s + 1));
  });

  test('an order of 4 and 4 does not fit 60: 56 or 64', () => {
    expect(rightSizes(60, 8, 4, 4)).toEqual([56, 64]);
    expect(() => checkSections({ ...gamp, sections: [{ order: word('DDDDLLLL'), threads: 60 }] }, 4)).toThrow(
      'section 1: found 60 threads for an order of 8; expected whole repeats that start in step with the weave: 56 or 64',
    );
  });
});
