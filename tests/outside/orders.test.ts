// Counts of colour orders against the On-Line Encyclopedia of Integer Sequences (OEIS), n = 1 … 16:
// two colours A000031 (rotation), A000029 (and reversal), A000013 (and exchange), A000011 (all three);
// three colours A001867 (rotation), A027671 (and reversal).
import { describe, expect, test } from 'vitest';
import { countNecklaces, distinctOrders, writtenOrders } from '../../src/order/necklace.js';

const A000031 = [2, 3, 4, 6, 8, 14, 20, 36, 60, 108, 188, 352, 632, 1182, 2192, 4116];
const A000029 = [2, 3, 4, 6, 8, 13, 18, 30, 46, 78, 126, 224, 380, 687, 1224, 2250];
const A000013 = [1, 2, 2, 4, 4, 8, 10, 20, 30, 56, 94, 180, 316, 596, 1096, 2068];
const A000011 = [1, 2, 2, 4, 4, 8, 9, 18, 23, 44, 63, 122, 190, 362, 612, 1162];
const A001867 = [3, 6, 11, 24, 51, 130, 315, 834, 2195, 5934, 16107, 44368, 122643, 341802, 956635, 2690844];
const A027671 = [3, 6, 10, 21, 39, 92, 198, 498, 1219, 3210, 8418, 22913, 62415, 173088, 481598, 1351983];

const count = (colours: number, merging = {}, upTo = 16): number[] =>
  Array.from({ length: upTo }, (_, n) => distinctOrders(n + 1, colours, merging).length);

describe('orders that differ, by length', () => {
  test('two colours, rotation: A000031', () => expect(count(2)).toEqual(A000031));
  test('two colours, rotation and reversal: A000029', () => expect(count(2, { reversal: true })).toEqual(A000029));
  test('two colours, rotation and exchange: A000013', () => expect(count(2, { exchange: true })).toEqual(A000013));
  test('two colours, all three: A000011', () => {
    expect(count(2, { reversal: true, exchange: true })).toEqual(A000011);
  });
  test('three colours, rotation: A001867 (listed to 11, by formula to 16)', () => {
    expect(count(3, {}, 11)).toEqual(A001867.slice(0, 11));
    expect(A001867.map((_, n) => countNecklaces(n + 1, 3))).toEqual(A001867);
  });
  test('three colours, rotation and reversal: A027671 (listed to 11)', () => {
    expect(count(3, { reversal: true }, 11)).toEqual(A027671.slice(0, 11));
  });
  test('five-end orders: 30 of two colours can be written, 6, 6 and 3 differ (common practice, no source)', () => {
    const bothColours = (merging = {}): number =>
      distinctOrders(5, 2, merging).filter((o) => new Set(o).size > 1).length;
    expect(writtenOrders([5], 2) - 2).toBe(30);
    expect(bothColours()).toBe(6);
    expect(bothColours({ reversal: true })).toBe(6);
    expect(bothColours({ reversal: true, exchange: true })).toBe(3);
  });
});
