import { describe, expect, test } from 'vitest';
import { PARTS } from '../../../src/score/parts/parts.js';
import { PRESET_NAMES, PRESETS } from '../../../src/score/rank/presets.js';
import type { Question } from '../../../src/search/question/question.js';
import { spaceOf } from '../../../src/search/space/space.js';
import { QUESTION } from '../question.js';

describe('a way of looking', async () => {
  test('that no bound is known for is never searched by bounds', () => {
    const lengths = [2, 3, 4, 5, 6, 7, 8, 9, 10];
    expect(spaceOf({ ...QUESTION, lengths }).way).toBe('bounded');
    for (const view of PRESET_NAMES) {
      const loose = PARTS.some((part) => !['contrast', 'symmetry', 'float'].includes(part) && PRESETS[view][part] > 0);
      expect(spaceOf({ ...QUESTION, lengths, rank: PRESETS[view] }).way).toBe(loose ? 'scored' : 'bounded');
    }
    expect(spaceOf({ ...QUESTION, lengths, oneOfEachKind: true }).way).toBe('scored');
  });
});

const ORDERS = [
  [0, 1],
  [0, 0, 1],
  [0, 1, 1],
];

test.each<[string, Partial<Question>, number]>([
  ['every order with every order', {}, 9],
  ['every order with itself', { weft: { rule: 'same' } }, 3],
  ['one warp with every order', { warp: [0, 0, 1] }, 3],
  ['one warp with itself', { warp: [0, 0, 1], weft: { rule: 'same' } }, 1],
])('three orders are written as pairs: %s', (_, change, pairs) => {
  expect(spaceOf({ ...QUESTION, lengths: [], orders: ORDERS, ...change }).written).toBe(pairs);
});
