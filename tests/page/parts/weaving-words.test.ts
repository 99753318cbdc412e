import { describe, expect, test } from 'vitest';
import { ordersInWords } from '../../../src/page/parts/weaving-words.js';
import { foundOf, HOUNDS_TOOTH } from '../../gallery/trial.js';

describe('what a weaver reads', () => {
  test('the orders as written, wound and threaded', () => {
    expect(Object.fromEntries(ordersInWords(foundOf(HOUNDS_TOOTH, 1)))).toMatchObject({
      'As wound': 'D4 L4: 8 ends in a repeat',
      'As threaded': '1–8: 1 2 3 4 1 2 3 4 in DDDDLLLL',
    });
    const { order } = foundOf(HOUNDS_TOOTH, 1);
    const later = foundOf(HOUNDS_TOOTH, 1, { order: { ...order, start: [4, 2] } });
    expect(Object.fromEntries(ordersInWords(later))['As written']).toBe(
      'DDDDLLLL, by thread; warp order begins on end 5, weft order on pick 3',
    );
  });
});
