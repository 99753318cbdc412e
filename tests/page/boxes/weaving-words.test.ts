import { describe, expect, test } from 'vitest';
import { ordersInWords } from '../../../src/page/boxes/weaving-words.js';
import { foundOf, HOUNDS_TOOTH } from '../../gallery/trial.js';

describe('what a weaver reads', () => {
  test('the orders as written, wound and threaded', () => {
    expect(Object.fromEntries(ordersInWords(foundOf(HOUNDS_TOOTH, 1)))).toMatchObject({
      'Warp colours': 'D4 L4: 8 ends in a repeat',
      Threading: '1–8: 1 2 3 4 1 2 3 4 in DDDDLLLL',
    });
    const { order } = foundOf(HOUNDS_TOOTH, 1);
    const later = foundOf(HOUNDS_TOOTH, 1, { order: { ...order, start: [4, 2] } });
    expect(Object.fromEntries(ordersInWords(later)).Order).toBe(
      'DDDDLLLL, by thread; warp order begins on end 5, weft order on pick 3',
    );
  });

  test('units that take turns, as a pair that repeats', () => {
    const [a, b, c] = [
      [1, 2],
      [3, 4],
      [5, 6],
    ];
    const threading = [c!, a!, b!, a!, b!, b!, b!].flat().map((shaft) => [shaft]);
    const draft = { ...HOUNDS_TOOTH, threading, endUnits: new Array(7).fill(2), warp: new Array(14).fill(0) };
    expect(Object.fromEntries(ordersInWords({ ...foundOf(HOUNDS_TOOTH, 1), draft })).Threading).toBe(
      '1–2: 5 6 in DD\n3–10: (1 2 in DD, 3 4 in DD), 2 times\n11–14: 3 4 in DD, 2 times',
    );
  });
});
