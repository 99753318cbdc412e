import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { nearOrders } from '../../../src/search/evolve/near-orders.js';
import { canonicalOrder } from '../../../src/search/space/genome.js';
import { runs } from '../../long.js';

const words = (orders: readonly (readonly number[])[]): string[] => orders.map((order) => order.join(''));

describe('the orders nearest to an order', () => {
  test('are those of one change, in lengths that are asked', () => {
    // 001011 turns about no element, read backward it is another order.
    expect(words(nearOrders([0, 0, 1, 0, 1, 1], 2, [6]))).toEqual([
      '101011',
      '011011',
      '000011',
      '001111',
      '001001',
      '001010',
    ]);
    expect(new Set(words(nearOrders([0, 0, 1, 0, 1, 1], 2, [7])))).toEqual(
      new Set(['0001011', '0011011', '0010011', '0010111']),
    );
    expect(new Set(words(nearOrders([0, 0, 1, 0, 1, 1], 2, [5])))).toEqual(
      new Set(['01011', '00011', '00111', '00101']),
    );
  });

  test('of a mirrored order are mirrored first: 6 by one change and 15 by two, of eleven elements', () => {
    const list = nearOrders([0, 0, 0, 0, 0, 0, 0, 1, 1, 1, 1], 2, [11]);
    const isMirrored = (order: readonly number[]): boolean =>
      canonicalOrder(order).join() === canonicalOrder(order.toReversed()).join();
    expect(list.slice(0, 21).every(isMirrored)).toBe(true);
    expect(list).toHaveLength(21 + 11);
    expect(new Set(words(list.slice(0, 21))).size).toBe(21);
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
