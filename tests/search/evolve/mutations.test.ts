import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fitted, MUTATIONS, type MutationName, pickFrom, pickNumber } from '../../../src/search/evolve/mutations.js';

describe('changes of orders', () => {
  const orders = fc.array(fc.nat(2), { minLength: 1, maxLength: 12 });

  test('leave an order of the same palette', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...(Object.keys(MUTATIONS) as MutationName[])),
        orders,
        orders,
        fc.array(fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true }), { minLength: 8, maxLength: 8 }),
        (name, order, other, draws) => {
          let at = 0;
          const chance = (): number => draws[at++ % draws.length]!;
          const changed = MUTATIONS[name](order, chance, { colours: 3, other });
          expect(changed.length).toBeGreaterThan(0);
          expect(changed.length).toBeLessThanOrEqual(2 * (order.length + other.length));
          expect(changed.every((colour) => Number.isInteger(colour) && colour >= 0 && colour < 3)).toBe(true);
        },
      ),
    );
  });

  test.each([
    ['mirror', [0, 1, 2], [0, 0, 0], [0, 1, 2, 2, 1, 0]],
    ['mirror', [0, 1, 2], [0, 0.9, 0], [0, 1, 2, 1]],
    ['one element and its mirror', [0, 1, 0, 2], [0, 0.25, 0], [0, 2, 0, 2]],
    ['one element and its mirror', [0, 0, 1, 1], [0, 0, 0.5], [2, 2, 1, 1]],
    ['two colours change places', [0, 1, 2, 1], [0.4, 0], [0, 2, 1, 2]],
    ['double', [0, 1], [], [0, 0, 1, 1]],
    ['halve', [0, 1, 2], [], [0, 2]],
    ['one element', [0, 1, 2], [0.4, 0], [0, 2, 2]],
    ['exchange', [0, 1, 2], [0.4, 0.9], [0, 2, 0]],
    ['turn a part', [0, 1, 2], [0, 0.99], [2, 1, 0]],
    ['repeat a part', [0, 1, 2], [0.4, 0], [0, 1, 1, 2]],
    ['leave a part out', [0, 1, 2], [0.4, 0], [0, 2]],
    ['leave a part out', [0, 1, 2], [0, 0.99], [0, 1, 2]],
    ['leave a part out', [0, 1], [0, 0], [1]],
    ['leave a part out', [0, 1], [0.5, 0], [0]],
    ['one element more', [0, 1, 2], [0.4], [0, 1, 1, 2]],
    ['one element more', [0, 1, 2], [0.99], [0, 1, 2, 2]],
    ['one element less', [0, 1, 2], [0.4], [0, 2]],
    ['one element less', [0, 1], [0.5], [0]],
    ['one element less', [1], [0], [1]],
    ['two change places', [0, 1, 2], [0, 0.99], [2, 1, 0]],
    ['rotate', [0, 1, 2, 0], [0.25, 0.99, 0.4], [0, 2, 0, 1]],
    ['rotate', [0, 1, 2, 0], [0, 0.5, 0.4], [1, 2, 0, 0]],
    ['splice', [0, 1, 2], [0.4, 0, 0, 0.4], [0, 0, 1, 2]],
    ['exchange and repeat', [0, 1, 2], [0], [0, 1, 2, 1, 2, 0]],
    ['exchange and repeat', [0, 1, 2], [0.5], [0, 1, 1, 2]],
    ['mirror', [0, 1, 2, 0], [0.5, 0], [0, 1, 1, 0]],
    ['mirror', [0, 1, 2, 0], [0.5, 0.5], [0, 1, 0]],
    ['one element', [0, 1, 2], [0.99, 0.99], [0, 1, 1]],
    ['two colours change places', [0, 1, 2, 1], [0, 0.99], [2, 1, 0, 1]],
    ['one element and its mirror', [0, 1, 2, 1, 0, 2], [0, 0.5, 0], [0, 2, 2, 2, 0, 2]],
    ['halve', [0, 1, 2, 0], [], [0, 2]],
  ] as [MutationName, number[], number[], number[]][])('%s of %j', (name, order, draws, expected) => {
    let at = 0;
    expect(MUTATIONS[name](order, () => draws[at++]!, { colours: 3, other: order })).toEqual(expected);
  });

  test('are brought to a length that is asked for', () => {
    expect(fitted([0, 1, 2], [2, 5])).toEqual([0, 1]);
    expect(fitted([0, 1, 2], [4, 5])).toEqual([0, 1, 2, 0]);
    expect(fitted([0, 1, 2], [2, 4])).toEqual([0, 1, 2, 0]);
    expect(fitted([0, 1, 2], [1])).toEqual([0]);
    expect(fitted([0, 1, 2], [1, 3, 9])).toEqual([0, 1, 2]);
    expect(fitted([0, 1], [6, 7])).toEqual([0, 1, 0, 1, 0, 1]);
  });

  test('draw evenly: a number below the bound, an entry of a list', () => {
    expect([0, 0.24, 0.25, 0.99].map((draw) => pickNumber(4, () => draw))).toEqual([0, 0, 1, 3]);
    expect([0, 0.34, 0.99].map((draw) => pickFrom(['a', 'b', 'c'], () => draw))).toEqual(['a', 'b', 'c']);
  });
});
