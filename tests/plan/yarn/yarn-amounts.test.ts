import { expect, test } from 'vitest';
import { picksIn } from '../../../src/plan/yarn/yarn-amounts.js';

test('picks in a length: the last one whole, machine rounding aside', () => {
  expect(picksIn(56.666_666, 20)).toBe(1134);
  expect(picksIn(0.1 * 3, 10)).toBe(3);
});
