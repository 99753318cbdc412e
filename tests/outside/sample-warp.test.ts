// Worked examples of planning; their sources are named in worked-plans.ts.
import { describe, expect, test } from 'vitest';
import type { Sett } from '../../src/draft/draft.js';
import { balanceOf, evenBorders, mirrored, nearestFillings } from '../../src/plan/warp/fill-width.js';
import { picksForSquare } from '../../src/plan/warp/purpose.js';
import { before, USUAL_WARP, warpLength } from '../../src/plan/warp/warp-length.js';
import { changesIn } from '../../src/plan/warp/winding.js';
import { adviseSett, closestSett, diametersPerInch } from '../../src/plan/yarn/sett.js';
import { gramsOf, picksIn, tally, WEFT_EXTRA, yarnAmount } from '../../src/plan/yarn/yarn-amounts.js';
import { parseYarnSize } from '../../src/plan/yarn/yarn-size.js';
import { INCH, YARD } from '../../src/words/measure.js';
import { field } from '../plan/cloths.js';
import { inches, planned, structure, twill, word } from './worked-plans.js';

describe('the sample warp', () => {
  test.each([
    [1, 319],
    [4, 79],
    [8, 39],
    [16, 19],
  ])('DDLDL ×%i over 400 ends: D 240, L 160, %i changes', (times, changes) => {
    const warp = field(word('DDLDL', times), 400);
    expect(tally(warp, 400, 2)).toEqual([240, 160]);
    expect(changesIn(warp)).toBe(changes);
    expect(nearestFillings(400, 5 * times, 0)[0]).toEqual({ repeats: 80 / times, ends: 400, over: 0 });
  });

  test('two floating selvedges in D: D 242, L 160; 202 dents of a 10-dent reed, 20.2 in; 100 heddles a shaft', () => {
    const warp = planned('2/2 twill', { warp: 'DDLDL', times: 4 }, { floating: 'yes', reed: '10', pieces: '8' });
    expect(warp.wound).toEqual([
      { letter: 'D', ends: 242 },
      { letter: 'L', ends: 160 },
    ]);
    expect([warp.ends.length, warp.floating.ends, warp.dents]).toEqual([400, 2, 202]);
    expect(inches(warp.widthInReed)).toBeCloseTo(20.2, 9);
    expect(warp.heddles).toEqual([100, 100, 100, 100]);
    expect(warp.length.wind / YARD).toBe(3);
    // 726 yd and 480 yd of warp, whatever is woven into it.
    expect(warp.yarn.map((amount) => amount.warp / YARD)).toEqual([expect.closeTo(726, 6), expect.closeTo(480, 6)]);
  });

  test('its length: 51 in finished, 61.594 used, 106.594 in all, 3 yd to wind', () => {
    const length = warpLength({ ...USUAL_WARP, pieces: new Array<number>(8).fill(5 * INCH) }, 'inch');
    expect(inches(length.finished)).toBeCloseTo(51, 9);
    expect(inches(length.offLoom)).toBeCloseTo(56.667, 3);
    expect(inches(length.used)).toBeCloseTo(61.594, 3);
    // Adding the two percentages, 18 % of 51 in, would be short.
    const added = 51 * 1.18;
    expect([added, inches(length.used) - added].map((each) => each.toFixed(2))).toEqual(['60.18', '1.41']);
    expect(inches(length.total)).toBeCloseTo(106.594, 3);
    expect(length.total / YARD).toBeCloseTo(2.961, 3);
    expect(length.wind / YARD).toBe(3);
    expect([before(10, 0.2), 12 * (1 - 0.2)]).toEqual([12.5, expect.closeTo(9.6, 12)]);
  });

  test('its yarn: 169.6 g of D and 112.4 g of L with includes 10 % reserve', () => {
    const { tex } = parseYarnSize('8/2 cotton');
    expect(tex).toBeCloseTo(147.6, 1);
    expect(gramsOf(6773 * 1000, tex)).toBeCloseTo(1000, 0);
    const offLoom = 51 / 0.9;
    const picks = picksIn(offLoom, 20);
    expect(picks).toBe(1134);
    const [dark, light] = tally(word('DDLDL'), picks, 2) as [number, number];
    expect([dark, light]).toEqual([681, 453]);
    const weft = (count: number): number => count * 20 * INCH * (1 + WEFT_EXTRA);
    const d = yarnAmount('D', 242 * 3 * YARD, weft(dark), tex);
    const l = yarnAmount('L', 160 * 3 * YARD, weft(light), tex);
    expect(d.warp / YARD).toBeCloseTo(726, 9);
    expect(gramsOf(d.warp, tex)).toBeCloseTo(98.0, 1);
    expect(gramsOf(l.warp, tex)).toBeCloseTo(64.8, 1);
    expect(d.weft / YARD).toBeCloseTo(416.2, 1);
    expect(gramsOf(d.weft, tex)).toBeCloseTo(56.2, 1);
    expect(l.weft / YARD).toBeCloseTo(276.8, 1);
    expect(gramsOf(l.weft, tex)).toBeCloseTo(37.4, 1);
    expect(d.total / YARD).toBeCloseTo(1142, 0);
    expect(d.grams).toBeCloseTo(154.2, 1);
    expect(l.total / YARD).toBeCloseTo(757, 0);
    expect(l.grams).toBeCloseTo(102.2, 1);
    expect(d.gramsWithReserve).toBeCloseTo(169.6, 1);
    expect(l.gramsWithReserve).toBeCloseTo(112.4, 1);
  });

  test('in metres: 50 cm at 10 ends are 500 ends; 2.5 m of 16/2 cotton, 1250 m and 92.3 g', () => {
    const sett: Sett = { ends: 10, picks: 10, per: 'cm' };
    const flags = { width: '50 cm', 'yarn size': '16/2 cotton' };
    const warp = planned('plain weave', { warp: 'D', weft: 'L', sett }, flags);
    expect(warp.ends).toHaveLength(500);
    const { tex } = parseYarnSize('16/2 cotton');
    expect(gramsOf(13547 * 1000, tex)).toBeCloseTo(1000, 0);
    expect(yarnAmount('D', 500 * 2500, 0, tex)).toMatchObject({ total: 1250 * 1000, grams: expect.closeTo(92.3, 1) });
  });

  test.each([
    ['5/2 cotton', 2100],
    ['10/2 cotton', 4200],
    ['16/2 cotton', 6720],
    ['20/2 cotton', 8400],
    ['16/2 linen', 2400],
    ['2/12 worsted', 3360],
  ])('%s: %i yards to the pound', (count, yards) => {
    expect(parseYarnSize(count).tex).toBeCloseTo(parseYarnSize(`${yards} yd/lb`).tex, 9);
  });
});

describe('heddles for AABAB', () => {
  test.each([
    ['summer and winter', 400, [100, 100, 120, 80]],
    ["monk's belt", 400, [120, 120, 80, 80]],
    ["M's and O's", 400, [100, 100, 100, 100]],
    ['huck', 400, [120, 80, 80, 120]],
    ['crackle', 24, [5, 10, 7, 2]],
  ])('%s, %i ends', (name, ends, counts) => {
    // Huck gives A and B as many half-units each.
    expect(structure(name, name === 'huck' ? 'A B' : 'A A B A B', ends)).toEqual(counts);
  });

  test('crackle in 400 ends: 16 repeats of 24 and 16 over', () => {
    expect(nearestFillings(400, 24, 0)).toContainEqual({ repeats: 16, ends: 384, over: -16 });
    const crackle = { warp: 'DDLDL', profile: 'A A B A B', by: 'unit' } as const;
    expect(planned('crackle', crackle, { loom: 'rising, 20 in' }).repeats).toBe(16);
  });
});

describe('fitting a width', () => {
  const order = word('DDLDL', 4);

  test('single turns: repeat 38, balance 1; 9 repeats are 367 ends, 10 are 405; even borders of 9 give 399', () => {
    const { order: turned, balance } = mirrored(order, 'single');
    expect([turned.length, balance]).toEqual([38, 1]);
    expect(balanceOf(turned)).toBe(1);
    const fillings = nearestFillings(400, 38, 24 + 1);
    expect(fillings.slice(0, 2)).toEqual([
      { repeats: 10, ends: 405, over: 5 },
      { repeats: 9, ends: 367, over: -33 },
    ]);
    const borders = evenBorders(400, 38, 1, 10);
    expect(borders).toBe(9);
    const ends = field(turned, 10 * 38 + 1);
    expect(ends.length + 2 * borders).toBe(399);
    expect(ends).toEqual(ends.toReversed());
    expect(tally(ends, 381, 2)).toEqual([231, 150]);
  });

  test('doubled turns: 9 repeats of 40 and borders of 20 are 400', () => {
    const { order: turned, balance } = mirrored(order, 'doubled');
    expect([turned.length, balance]).toEqual([40, 0]);
    expect(nearestFillings(400, 40, 40)[0]).toEqual({ repeats: 9, ends: 400, over: 0 });
  });
});

test('twelve weavers: one loom 208.04 in, 6 yd, 2412 yd in all; twelve looms 61.91 in, 1.75 yd, 4242 yd', () => {
  const one = warpLength({ ...USUAL_WARP, pieces: new Array<number>(12).fill(10 * INCH) }, 'inch');
  expect(inches(one.finished)).toBeCloseTo(135, 9);
  expect(inches(one.used)).toBeCloseTo(163.04, 2);
  expect(inches(one.total)).toBeCloseTo(208.04, 2);
  expect(one.wind / YARD).toBe(6);
  expect((402 * one.wind) / YARD).toBe(2412);
  const each = warpLength({ ...USUAL_WARP, pieces: [10 * INCH] }, 'inch');
  expect(inches(each.finished)).toBeCloseTo(14, 9);
  expect(inches(each.total)).toBeCloseTo(61.91, 2);
  expect(each.wind / YARD).toBe(1.75);
  expect((202 * each.wind * 12) / YARD).toBe(4242);
});

test('a weaving square: 4 pattern picks a unit at 40 picks in all, 2.4 at 24', () => {
  expect(picksForSquare(4, 20, 40 / 2)).toBe(4);
  expect(picksForSquare(4, 20, 24 / 2)).toBeCloseTo(2.4, 12);
});

test('sett of 8/2 cotton: 53.3 diameters; plain weave 26.7, at 80 % 21.3; 2/2 twill 35.6, at 80 % 28.4, at 70 % 24.9', () => {
  const diameters = diametersPerInch(parseYarnSize('8/2 cotton').tex, 'cotton');
  expect(diameters).toBeCloseTo(53.3, 1);
  expect(closestSett(diameters, 2, 2)).toBeCloseTo(26.7, 1);
  expect(closestSett(diameters, 2, 2) * 0.8).toBeCloseTo(21.3, 1);
  const weave = twill([0], [0]);
  expect(adviseSett(weave, diameters, 'general')).toMatchObject({ ends: 4, intersections: 2 });
  expect(adviseSett(weave, diameters, 'general').closest).toBeCloseTo(35.6, 1);
  expect(adviseSett(weave, diameters, 'general').advised).toBeCloseTo(28.4, 1);
  expect(adviseSett(weave, diameters, 'drape').advised).toBeCloseTo(24.9, 1);
});
