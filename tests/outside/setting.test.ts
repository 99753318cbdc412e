// Setting, reeds and amounts against J. T. Taylor, Cotton Weaving and Designing (6th ed. 1909), the chapters on calculations and
// on the firmness of cloth; Ashenhurst's rule as worked in articles of 1999 and later; CNCH, article on shrinkage.
// Printed figures, each recomputed; the reed table in data/planning.json by a separate script.
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { dentsOf } from '../../src/plan/warp/denting.js';
import { before, USUAL_WARP, warpLength } from '../../src/plan/warp/warp-length.js';
import { closestSett, intersectionsOf } from '../../src/plan/yarn/sett.js';
import { gramsOf } from '../../src/plan/yarn/yarn-amounts.js';
import { lengthPerWeight, texOfCount } from '../../src/plan/yarn/yarn-size.js';
import { findStructure, weaveOf } from '../../src/structure/catalogue/catalogue.js';
import { INCH, POUND, YARD } from '../../src/words/measure.js';

const data = JSON.parse(readFileSync(new URL('./data/planning.json', import.meta.url), 'utf8')) as {
  reed: [dents: number, sley: string, ends: number][];
};

/** Taylor’s own constant: threads that touch are √(yards per pound) less 5 per cent, here by way of 156 for 32s. */
const touching = (count: number): number => 156 * Math.sqrt(count / 32);

describe('Taylor', () => {
  test('threads for a firm cloth: touching threads × ends / (ends + intersections)', () => {
    expect(closestSett(135, 3, 2)).toBe(81);
    expect(closestSett(183, 9, 4)).toBeCloseTo(126.69, 2);
    expect(closestSett(156, 4, 2)).toBe(104);
    // From plain to 2/2 twill and on to 5/2/1/2: the ratio of the two closest setts.
    expect((103 * closestSett(1, 4, 2)) / closestSett(1, 2, 2)).toBeCloseTo(137.333, 3);
    expect((137 * closestSett(1, 10, 4)) / closestSett(1, 4, 2)).toBeCloseTo(146.786, 3);
  });

  test.each([
    [16, 110],
    [20, 123.5],
    [24, 135],
    [32, 156],
    [36, 165],
    [44, 183],
    [50, 195],
    [60, 213],
    [100, 275.5],
  ])('%is: threads that touch go with the square root of the count', (count, printed) => {
    expect(Math.abs(touching(count) - printed)).toBeLessThanOrEqual(1);
    const root = Math.sqrt(lengthPerWeight(texOfCount('cotton', count)).yardsPerPound);
    expect(Math.abs(0.95 * root - printed)).toBeLessThanOrEqual(1);
  });

  test('warp and weft of a piece in pounds', () => {
    const warp = 30 * 70 * 95 * YARD;
    expect(gramsOf(warp, texOfCount('cotton', 30)) / POUND).toBeCloseTo(7.916667, 6);
    // The weft uses the width in the reed: 30 in × 80 picks × 90 yd.
    const weft = 30 * INCH * 80 * 90 * (YARD / INCH);
    expect(gramsOf(weft, texOfCount('cotton', 40)) / POUND).toBeCloseTo(6.428571, 6);
  });

  test('take-up: 95 yards of warp for 90 of cloth', () => {
    expect(before(90, 0.0555556)).toBeCloseTo(95.29, 2);
    expect(95 / 90 - 1).toBeCloseTo(0.0555556, 7);
  });
});

test('Ashenhurst: 8/2 cotton, plain weave and 2/2 twill', () => {
  const diameters = 0.9 * Math.sqrt(3360);
  expect(diameters).toBeCloseTo(52.17, 2);
  expect(closestSett(diameters, 2, 2)).toBeCloseTo(26.08, 2);
  expect(closestSett(diameters, 4, 2)).toBeCloseTo(34.78, 2);
});

test('intersections in a repeat, counted on the weave', () => {
  const weave = (name: string) => {
    const structure = findStructure(name);
    return weaveOf(structure, structure.profile);
  };
  expect(intersectionsOf(weave('plain weave'))).toBe(weave('plain weave').threading.length);
  const twill = weave('2/2 twill');
  expect(intersectionsOf(twill) / twill.threading.length).toBe(0.5);
});

describe('reeds', () => {
  test.each(data.reed.filter(([, sley]) => !sley.includes('0')))('%i dents, %s in a dent', (dents, sley, ends) => {
    const pattern = sley.split('-').map(Number);
    // Setts are sleyed from two decimals on; thirds of an end do not come on a loom.
    const exact = (dents * pattern.reduce((a, b) => a + b, 0)) / pattern.length;
    expect(exact).toBeCloseTo(ends, 3);
    if (Number.isInteger(exact * 10)) expect(dentsOf(exact, dents).join('-')).toBe(sley);
  });
});

describe('losses are divided out, not added on', () => {
  test('10 in after 20 per cent takes 12.5 in; adding 20 per cent leaves 9.6', () => {
    expect(before(10, 0.2)).toBe(12.5);
    expect(12 * (1 - 0.2)).toBeCloseTo(9.6, 12);
  });

  test('four towels and a scarf', () => {
    const usual = { ...USUAL_WARP, divider: 0, header: 0, footer: 0, testing: 0 };
    const towels = warpLength(
      { ...usual, pieces: [30, 30, 30, 30].map((l) => l * INCH), shrinkage: 0.12, takeUp: 0.1, loomWaste: 27 * INCH },
      'inch',
    );
    expect(towels.offLoom / 4 / INCH).toBeCloseTo(34.0909, 4);
    expect(towels.total / INCH).toBeCloseTo(178.515, 3);
    const scarf = warpLength(
      { ...usual, pieces: [72 * INCH], shrinkage: 0.1, takeUp: 0.08, loomWaste: 30 * INCH },
      'inch',
    );
    expect(scarf.offLoom / INCH).toBeCloseTo(80, 9);
    expect(scarf.total / INCH).toBeCloseTo(116.957, 3);
  });
});
