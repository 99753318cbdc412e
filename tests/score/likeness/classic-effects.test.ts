import { expect, test } from 'vitest';
import { parseOrder } from '../../../src/order/order.js';
import { isLogCabin } from '../../../src/score/likeness/classic-effects.js';
import { HOUNDS_TOOTH } from '../../gallery/trial.js';

test.each([
  ['(DL)4 (LD)4', true],
  ['(DL)24 (LD)24', true],
  // Begun elsewhere, and twice over.
  ['L (DL)3 (LD)4 D', true],
  ['L D L D L L D L D L D D', true],
  ['D L L D', false],
  ['(DL)4 (LD)3', false],
  ['D L', false],
  ['D4 L4', false],
  ['(DL)4 D D (LD)3 L L', false],
])('whether %s is a log cabin: %s', (order, is) => {
  expect(isLogCabin(parseOrder(order, HOUNDS_TOOTH.yarns))).toBe(is);
});
