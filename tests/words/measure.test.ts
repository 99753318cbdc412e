import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseLength, parseShare, sayAbout, sayLength, sayLong, upTo } from '../../src/words/measure.js';

describe('measures', () => {
  test('lengths and shares as they are written', () => {
    expect(parseLength('20 in')).toBe(508);
    expect(parseLength('2.5m')).toBe(2500);
    expect(parseLength('3 yd')).toBeCloseTo(2743.2, 9);
    for (const written of ['20 inches', '20 inch', '20"']) expect(parseLength(written)).toBe(508);
    expect(parseLength('3 yards')).toBe(parseLength('3 yd'));
    for (const written of ['1 1/2 in', '1½ in', '1.5 in', '1,5 in']) expect(parseLength(written)).toBeCloseTo(38.1, 9);
    expect(parseLength('⅜ in')).toBeCloseTo(9.525, 9);
    // A comma before three digits is one of thousands to some, and a decimal comma to others.
    for (const wrong of ['1,500 yd', '1/0 in', '1 ½', '½', '20 inched', '20 ', '20 constructor', '2.'])
      expect(() => parseLength(wrong)).toThrow('expected a length');
    expect(() => parseLength('20')).toThrow('found “20”; expected a length such as 20 in, 50 cm, 3 yd or 2.5 m');
    for (const written of ['8 %', '8%', '8 per cent', '8 percent']) expect(parseShare(written)).toBe(0.08);
    expect(() => parseShare('95 %')).toThrow('expected per cent below 90');
    expect(sayLength(513.08, 'inch')).toBe('20.2 in (51.3 cm)');
    expect(sayAbout(478, 'cm')).toBe('48 cm (18.9 in)');
    expect(sayAbout(478, 'inch')).toBe('18.8 in (47.8 cm)');
    expect(sayLong(2743.2, 'cm')).toBe('2.74 m (3 yd)');
  });

  test('rounding up leaves a whole number of steps alone', () => {
    fc.assert(
      fc.property(fc.nat(10_000), fc.constantFrom(0.1, 0.25, 1, 228.6), (count, step) => {
        expect(upTo(count * step, step)).toBeCloseTo(count * step, 6);
        expect(upTo((count + 0.5) * step, step)).toBeCloseTo((count + 1) * step, 6);
      }),
    );
  });
});
