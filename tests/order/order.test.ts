import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { formatOrder, formatRuns, parseOrder, smallestPeriod } from '../../src/order/order.js';
import { Problem } from '../../src/problem.js';

const YARNS = ['D', 'L', 'R'].map((letter) => ({ letter, name: letter, hex: '#000000' }));
const read = (text: string): string => formatOrder(parseOrder(text, YARNS), YARNS);

describe('reading an order', () => {
  test.each([
    ['D L D D L', 'DLDDL'],
    ['dlddl', 'DLDDL'],
    ['D4 L4', 'DDDDLLLL'],
    ['(DL)4 (LD)4', 'DLDLDLDLLDLDLDLD'],
    ['((D L)2 R)2', 'DLDLRDLDLR'],
    ['(D)1L', 'DL'],
    ['2x(DL), R', 'DLDLR'],
  ])('%s is %s', (text, expected) => expect(read(text)).toBe(expected));

  test.each([
    ['', 'an order is empty'],
    ['D X L', 'order “D X L”, place 3: found “X”, expected a yarn (D L R), a bracket or a count'],
    ['3 D', 'place 1: found the count 3 apart from what it counts, expected no space between, as 3D'],
    ['D0', 'place 2: found a count of 0'],
    ['(DL', 'place 1: found a bracket that is not closed, expected its partner'],
    ['DL)', 'place 3: found a closing bracket without its opening one'],
    ['()', 'place 2: found an empty bracket'],
    ['(DL)999999999', 'found more than 4096 elements, expected 4096 at most'],
    ['DXL', 'place 2: found “X”, expected a yarn (D L R)'],
  ])('refuses %j: %s', (text, message) => {
    expect(() => parseOrder(text, YARNS)).toThrow(message);
    expect(() => parseOrder(text, YARNS)).toThrow(Problem);
  });

  test('what is written is read back, plain and by runs', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 2 }), { minLength: 1, maxLength: 40 }), (order) => {
        expect(parseOrder(formatOrder(order, YARNS), YARNS)).toEqual(order);
        expect(parseOrder(formatRuns(order, YARNS), YARNS)).toEqual(order);
      }),
    );
  });
});

test.each([
  ['DDDDLLLL', 'D4 L4'],
  ['DLDDL', 'D L D2 L'],
  ['DLDLDLDLLDLDLDLD', '(DL)4 (LD)4'],
  ['DLDLD', 'D L D L D'],
  ['RRDLDLDL', 'R2 (DL)3'],
])('%s is written %s', (order, runs) => expect(formatRuns(parseOrder(order, YARNS), YARNS)).toBe(runs));

test('the smallest period is the shortest length that repeats', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 0, max: 1 }), { minLength: 1, maxLength: 24 }), (word) => {
      const repeats = (p: number): boolean => word.every((colour, i) => colour === word[(i + p) % word.length]);
      const plain = word.findIndex((_, i) => word.length % (i + 1) === 0 && repeats(i + 1)) + 1;
      expect(smallestPeriod(word)).toBe(plain);
    }),
  );
});
