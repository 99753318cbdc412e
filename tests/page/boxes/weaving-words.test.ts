import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { folded, ordersInWords } from '../../../src/page/boxes/weaving-words.js';
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
    const [a, b, c] = ['1 2 3 4', '5 6 7 8', '1 3 1 3'];
    expect(folded([a!, b!, a!, b!, a!, b!])).toEqual([{ at: 0, length: 2, times: 3 }]);
    expect(folded([c!, a!, b!, a!, b!, b!, b!])).toEqual([
      { at: 0, length: 1, times: 1 },
      { at: 1, length: 2, times: 2 },
      { at: 5, length: 1, times: 2 },
    ]);
  });

  test('no unit lost, and none in another place', () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom('a', 'b', 'c'), { maxLength: 40 }), (units) => {
        const unfolded = folded(units).flatMap(({ at, length, times }) =>
          Array.from({ length: times }, () => units.slice(at, at + length)).flat(),
        );
        expect(unfolded).toEqual(units);
      }),
    );
  });
});
