import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { nearOrders } from '../../../src/search/evolve/near-orders.js';
import { canonicalOrder } from '../../../src/search/space/genome.js';
import { runs } from '../../long.js';

const words = (orders: readonly (readonly number[])[]): string[] => orders.map((order) => order.join(''));

describe('the orders nearest to an order', () => {
  test('are those of one change, in lengths that are asked', () => {
    // 0001011 has no symmetry: read backward it is another order, and of an odd length it is not its own exchange.
    const order = [0, 0, 0, 1, 0, 1, 1];
    expect(words(nearOrders(order, 2, [7]))).toEqual([
      '1001011',
      '0101011',
      '0011011',
      '0000011',
      '0001111',
      '0001001',
      '0001010',
    ]);
    expect(new Set(words(nearOrders(order, 2, [8])))).toEqual(
      new Set(['00001011', '00011011', '00010011', '00010111']),
    );
    expect(new Set(words(nearOrders(order, 2, [6])))).toEqual(new Set(['001011', '000011', '000111', '000101']));
  });

  test('of a mirrored order are mirrored first: 6 by one change and 15 by two, of eleven elements', () => {
    const list = nearOrders([0, 0, 0, 0, 0, 0, 0, 1, 1, 1, 1], 2, [11]);
    const isMirrored = (order: readonly number[]): boolean =>
      canonicalOrder(order).join() === canonicalOrder(order.toReversed()).join();
    expect(list.slice(0, 21).every(isMirrored)).toBe(true);
    // The element on which it turns is changed alone.
    expect(list).toHaveLength(21 + 10);
    expect(new Set(words(list.slice(0, 21))).size).toBe(21);
  });

  test('of an order whose second half is the exchange of the first are such orders first, longer and shorter ones too', () => {
    const near = nearOrders([0, 0, 0, 0, 0, 0, 1, 1, 1, 1, 1, 1], 2, [10, 12, 14]);
    const isOwnExchange = (order: readonly number[]): boolean =>
      order.every((colour, at) => colour !== order[(at + order.length / 2) % order.length]);
    const own = new Set(
      words(near.filter(isOwnExchange)).map((word) => canonicalOrder([...word].map(Number)).join('')),
    );
    // One or two elements changed on either side, and one more or one less on either side.
    for (const word of ['000010111101', '000011111100', '0000011111', '00000001111111']) {
      expect(own).toContain(canonicalOrder([...word].map(Number)).join(''));
    }
    const alone = near.findIndex((order) => order.join('') === '100000111111');
    const together = near.findIndex((order) => order.join('') === '000010111101');
    expect(together).toBeGreaterThanOrEqual(0);
    expect(alone).toBeGreaterThan(together);
  });

  test('of an order of three colours in turn change in every third', () => {
    const near = words(nearOrders([0, 0, 1, 1, 2, 2], 3, [6, 9]));
    // The second of each pair takes the next colour.
    expect(near).toContain('011220');
    expect(near).toContain('000111222');
  });

  test('hold every change of one element to another colour', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 4 }).chain((colours) =>
          fc.record({
            colours: fc.constant(colours),
            order: fc.array(fc.integer({ min: 0, max: colours - 1 }), { minLength: 2, maxLength: 8 }),
            at: fc.nat(7),
            by: fc.integer({ min: 1, max: colours - 1 }),
          }),
        ),
        ({ colours, order, at, by }) => {
          const place = at % order.length;
          const changed = order.with(place, (order[place]! + by) % colours).join('');
          const near = words(nearOrders(order, colours, [order.length]));
          expect(near).toContain(changed);
          expect(near).not.toContain(order.join(''));
        },
      ),
      { numRuns: runs(50) },
    );
  });
});
