import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addressOf, floatOf, usualView, type View, viewOf } from '../../../src/page/store/view.js';
import { PARTS, UNWEIGHED } from '../../../src/score/parts/parts.js';

const USUAL = usualView({ ...UNWEIGHED, contrast: 3, symmetry: 2, float: 1 });
const CODES = new Set(['aaaa', 'bbbb', 'cccc']);

describe('the address', () => {
  test('says nothing of what is as usual', () => expect(addressOf(USUAL, USUAL)).toBe(''));

  test('reads back as it was written', () => {
    const view = fc.record<View>({
      weights: fc
        .array(fc.integer({ min: 0, max: 400 }), { minLength: PARTS.length, maxLength: PARTS.length })
        .map((n) => Object.fromEntries(PARTS.map((part, at) => [part, n[at]! / 4])) as View['weights']),
      filters: fc.record(
        {
          float: fc.oneof(
            fc.integer({ min: 1, max: 99 }).map((threads) => ({ threads })),
            fc.integer({ min: 1, max: 99 }).map((n) => ({ mm: n / 4 })),
          ),
          repeat: fc.integer({ min: 0, max: 2000 }),
          knots: fc.integer({ min: 0, max: 2000 }),
          darkFrom: fc.integer({ min: 0, max: 100 }),
          structure: fc.string({ minLength: 1 }),
          fill: fc.constantFrom('solid' as const, 'nest' as const),
        },
        { requiredKeys: [] },
      ),
      order: fc.constantFrom('best', 'calm', 'liked'),
      find: fc.string({ unit: 'grapheme' }),
      page: fc.integer({ min: 1, max: 40 }),
      kept: fc.boolean(),
      size: fc.constantFrom('quarter', 'actual', 'close'),
      metres: fc.constantFrom(0, 0.6, 1.5, 10),
      grey: fc.boolean(),
      compare: fc.constantFrom([], ['bbbb'], ['cccc', 'aaaa']),
      comparing: fc.constant(false),
    });
    fc.assert(
      fc.property(view, (each) => {
        expect(viewOf(addressOf(each, USUAL), USUAL, CODES)).toEqual(each);
      }),
    );
  });

  test('opens a cloth by its bare code, and passes over what it does not know', () => {
    expect(viewOf('bbbb', USUAL, CODES)).toEqual({ ...USUAL, cloth: 'bbbb' });
    expect(viewOf('size=huge&from=99&float=x&cloth=none&compare=aaaa.zzzz&beside=yes', USUAL, CODES)).toEqual({
      ...USUAL,
      compare: ['aaaa'],
    });
  });
});

describe('a limit for floats', () => {
  test.each([
    ['7', { threads: 7 }],
    ['9.5 mm', { mm: 9.5 }],
    ['1 cm', { mm: 10 }],
    ['3/8 in', { mm: 9.525 }],
    ['1 1/2 in', { mm: 38.1 }],
    ['0.5″', { mm: 12.7 }],
    ['0', undefined],
    ['3/8', undefined],
    ['1/0 in', undefined],
    ['long', undefined],
    ['', undefined],
  ])('%s', (text, limit) => expect(floatOf(text)).toEqual(limit));
});
