import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { lengthPerWeight, parseYarnSize, texOfCount } from '../../../src/plan/yarn/yarn-size.js';

test('no text breaks the reading of yarn sizes; it is a size or one sentence', () => {
  const label = fc.oneof(
    fc.string({ maxLength: 20 }),
    fc
      .tuple(
        fc.nat(99),
        fc.constantFrom('/', ' x ', '', ' '),
        fc.nat(9),
        fc.constantFrom('cotton', 'tex', 'silk', 'Nm', 'lea'),
      )
      .map(([a, sign, b, system]) => `${a}${sign}${b} ${system}`),
  );
  let read = 0;
  fc.assert(
    fc.property(label, (text) => {
      try {
        expect(parseYarnSize(text).tex).toBeGreaterThan(0);
        read++;
      } catch (error) {
        expect((error as Error).name).toBe('Problem');
      }
    }),
  );
  expect(read).toBeGreaterThan(5);
});

describe('a size on a label', () => {
  // Yards in a hank, lea, run, skein or cut (Taylor 1909, chapter XII).
  test.each([
    ['1 cotton', 840, 'cotton'],
    ['1 ne', 840, 'cotton'],
    ['1 nec', 840, 'cotton'],
    ['1 spun silk', 840, 'silk'],
    ['1 spun-silk', 840, 'silk'],
    ['1 worsted', 560, 'worsted'],
    ['1 wool', 560, 'worsted'],
    ['1 linen', 300, 'linen'],
    ['1 lea', 300, 'linen'],
    ['1 flax', 300, 'linen'],
    ['1 hemp', 300, undefined],
    ['1 run', 1600, 'woollen'],
    ['1 woollen', 1600, 'woollen'],
    ['1 woolen', 1600, 'woollen'],
    ['1 skein', 256, 'woollen'],
    ['1 yorkshire', 256, 'woollen'],
    ['1 cut', 300, 'woollen'],
  ])('%s: %d yd/lb of %s', (label, yards, fibre) => {
    const size = parseYarnSize(label);
    expect(lengthPerWeight(size.tex).yardsPerPound).toBeCloseTo(yards, 6);
    expect(size.fibre).toBe(fibre);
  });

  // A kilogram of 1000 tex is 1000 m; nine denier are a tex.
  test.each([
    ['1 Nm', 1000],
    ['30 tex', 30],
    ['30/2 tex', 60],
    ['30 tex', 30],
    ['den 45', 5],
    ['45 den', 5],
    ['denier 45', 5],
    ['4 m/g', 250],
    ['4000 metres per kilo', 250],
    ['400 m/100 g', 250],
    ['8/1 cotton', texOfCount('cotton', 8)],
    ['1/1 cotton', texOfCount('cotton', 1)],
    ['8.5/2 cotton', texOfCount('cotton', 4.25)],
    ['2/60 spun silk', texOfCount('spun silk', 60)],
    ['0.5 cotton', texOfCount('cotton', 0.5)],
  ])('%s is %d tex', (label, tex) => {
    expect(parseYarnSize(label).tex).toBeCloseTo(tex, 9);
  });

  test('is said in every measure', () => {
    expect(parseYarnSize(' 8/2 cotton').said).toBe('8/2 cotton: 3360 yd/lb, 6773 m/kg, 147.6 tex');
    expect(parseYarnSize('3360 yards per pound').said).toBe('3360 yards per pound: 3360 yd/lb, 6773 m/kg, 147.6 tex');
  });

  test('is refused for a loom from 100 kg and up to 0.1 g in a kilometre', () => {
    const noYarn = 'which is no yarn for a loom';
    for (const label of ['100000 tex', '0.1 tex']) expect(() => parseYarnSize(label), label).toThrow(noYarn);
    expect(parseYarnSize('99999.9 tex').tex).toBe(99999.9);
    expect(parseYarnSize('0.11 tex').tex).toBe(0.11);
  });

  test('the nearest name of a fibre is told', () => {
    expect(() => parseYarnSize('8/2 coton')).toThrow('(did you mean “cotton”?)');
    expect(() => parseYarnSize('16/2 Leinen')).toThrow('(did you mean “linen”?)');
    expect(() => parseYarnSize('8/2')).toThrow(/yd\/lb$/);
  });

  test.each(['0 cotton', '0/2 cotton', '8/0.5 cotton', '8/2.5 cotton', '30', 'tex', '8/2/3 cotton'])(
    '%s is none: expected is said with what was found',
    (label) => {
      expect(() => parseYarnSize(label)).toThrow(`found “${label}”; expected a yarn size such as 8/2 cotton`);
    },
  );

  test('a single silk can mean two lengths, a plied one three', () => {
    expect(() => parseYarnSize('60 silk')).toThrow('“60 silk” can mean 50400, 50400 or 29763 yards to the pound');
    expect(() => parseYarnSize('2/60 silk')).toThrow('“2/60 silk” can mean 50400, 25200 or 14882 yards to the pound');
  });
});
