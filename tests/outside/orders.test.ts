// Counts of colour orders against the On-Line Encyclopedia of Integer Sequences (OEIS), n = 1 … 16: words up to rotation,
// A000031 of two colours, A001867 of three; those that repeat no shorter word, A001037 and A027376.
import { describe, expect, test } from 'vitest';
import { countNecklaces, distinctOrdersOf, writtenOrders } from '../../src/order/necklace.js';

const A000031 = [2, 3, 4, 6, 8, 14, 20, 36, 60, 108, 188, 352, 632, 1182, 2192, 4116];
const A001037 = [2, 1, 2, 3, 6, 9, 18, 30, 56, 99, 186, 335, 630, 1161, 2182, 4080];
const A001867 = [3, 6, 11, 24, 51, 130, 315, 834, 2195, 5934, 16107, 44368, 122643, 341802, 956635, 2690844];
const A027376 = [3, 3, 8, 18, 48, 116, 312, 810, 2184, 5880, 16104];

const listed = (colours: number, upTo: number): number[] =>
  Array.from({ length: upTo }, (_, n) => distinctOrdersOf([n + 1], colours).length);
const wholly = (colours: number, upTo: number): number[] =>
  Array.from(
    { length: upTo },
    (_, n) => distinctOrdersOf([n + 1], colours).filter((order) => order.length === n + 1).length,
  );
const counted = (colours: number): number[] => Array.from({ length: 16 }, (_, n) => countNecklaces(n + 1, colours));

describe('orders that differ, by length', () => {
  test('two colours: A000031, listed and by formula', () => {
    expect(listed(2, 16)).toEqual(A000031);
    expect(counted(2)).toEqual(A000031);
  });
  test('two colours, no shorter repeat: A001037', () => expect(wholly(2, 16)).toEqual(A001037));
  test('three colours: A001867, listed to 11 and by formula', () => {
    expect(listed(3, 11)).toEqual(A001867.slice(0, 11));
    expect(counted(3)).toEqual(A001867);
  });
  test('three colours, no shorter repeat: A027376 (listed to 11)', () => expect(wholly(3, 11)).toEqual(A027376));
  test('five-end orders: 30 of two colours can be written, 6 differ (common practice, no source)', () => {
    expect(writtenOrders([5], 2) - 2).toBe(30);
    expect(distinctOrdersOf([5], 2).filter((order) => new Set(order).size > 1)).toHaveLength(6);
  });
});
