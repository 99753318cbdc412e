import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readPlanOptions } from '../../../src/plan/options/plan-options.js';
import { checkLetters, planWarps } from '../../../src/plan/piece/warp-plan.js';
import { buyWords, parseAmount, toBuy } from '../../../src/plan/yarn/in-hand.js';
import { yarnOrder } from '../../../src/sheets/yarn-order.js';
import { kept } from '../cloths.js';

describe('amounts of yarn', () => {
  // The international pound and yard of 1959.
  test.each([
    ['400 g', { grams: 400 }],
    ['1.5 kg', { grams: 1500 }],
    ['8oz', { grams: 453.59237 / 2 }],
    ['1 lb', { grams: 453.59237 }],
    ['500 m', { mm: 500_000 }],
    ['600 yd', { mm: 600 * 914.4 }],
  ])('%s', (text, amount) => expect(parseAmount(text)).toEqual(amount));

  test.each(['400', 'g', '-1 g', '400 stone', ''])('%j is none', (text) => {
    expect(() => parseAmount(text)).toThrow('expected an amount such as 400 g, 8 oz, 1 lb, 500 m or 600 yd');
  });
});

describe('what to buy', () => {
  const amount = fc.oneof(
    fc.integer({ min: 0, max: 2000 }).map((grams) => ({ grams })),
    fc.integer({ min: 0, max: 9_000_000 }).map((mm) => ({ mm })),
  );
  const pack = fc.integer({ min: 50, max: 500 }).map((grams) => ({ grams }));

  test('hand and put-ups together are enough, one put-up fewer is not', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1000, max: 9_000_000 }),
        fc.integer({ min: 5, max: 3000 }),
        amount,
        pack,
        (length, tex, hand, each) => {
          const grams = (length / 1e6) * tex;
          const found = toBuy('D', { length, grams }, hand, each);
          const inGrams = 'grams' in hand ? hand.grams : (hand.mm / 1e6) * tex;
          const { count } = found.putUps!;
          expect(inGrams + count * each.grams).toBeGreaterThanOrEqual(grams * (1 - 1e-9));
          if (count > 0) expect(inGrams + (count - 1) * each.grams).toBeLessThan(grams);
          expect(found.missing.grams).toBeCloseTo(Math.max(0, grams - inGrams), 4);
        },
      ),
    );
  });

  test('is said in few words', () => {
    const need = { length: 1e6, grams: 300 };
    expect(buyWords(toBuy('D', need, { grams: 100 }, { grams: 150 }), 'cm')).toBe(
      'in hand 100.0 g (3.53 oz), buy 200.0 g (7.05 oz), 2 of 150.0 g (5.29 oz)',
    );
    expect(buyWords(toBuy('D', need, { grams: 500 }, undefined), 'cm')).toBe(
      'in hand 500.0 g (17.64 oz), nothing to buy',
    );
    expect(buyWords(toBuy('D', need, undefined, undefined), 'cm')).toBe('');
  });

  test('a weight of a yarn without a size is refused', () => {
    expect(() => toBuy('D', { length: 1e6, grams: null }, { grams: 100 }, undefined)).toThrow(
      'yarn D: found 100 g of it; expected its size too (yarn size), or a length such as 600 yd',
    );
    expect(toBuy('D', { length: 1e6, grams: null }, { mm: 4e5 }, undefined).missing.length).toBe(6e5);
  });
});

test('a plan’s yarn order: warp and weft apart, a yarn in hand counted once, letters that are in the cloths', () => {
  const read = (flags: Record<string, string>) => readPlanOptions('', 'setup', { 'yarn size': '8/2 cotton', ...flags });
  const options = read({ 'in hand': 'D 50 g', 'put-up': '250 g' });
  const cloths = [kept('2/2 twill', { warp: 'DDLDL', times: 4 }), kept('2/2 twill', { warp: 'DL' })];
  const [dark, light] = yarnOrder(planWarps(cloths, options), options);
  expect(dark!.warp + dark!.weft).toBeCloseTo(dark!.length, 3);
  expect(dark!.toBuy.missing.grams).toBeCloseTo(dark!.grams! - 50, 6);
  expect(light!.toBuy.missing.grams).toBeCloseTo(light!.grams!, 6);
  expect(dark!.toBuy.putUps!.count).toBe(Math.ceil((dark!.grams! - 50) / 250));
  expect(() => checkLetters(cloths, read({ 'in hand': 'Q 50 g' }))).toThrow(
    'found “Q”; expected yarns that are in the cloths: D L',
  );
  expect(() => read({ 'in hand': '50 g' })).toThrow(
    '--in-hand: found “50 g”; expected amounts by letter, such as D 400 g, L 500 yd',
  );
  expect(() => read({ 'put-up': '50 stone' })).toThrow(/--put-up: found “50 stone”/);
});
