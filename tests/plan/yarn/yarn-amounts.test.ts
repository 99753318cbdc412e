import { expect, test } from 'vitest';
import { gramsOf, picksIn, tally, WEFT_EXTRA, yarnAmount, yarnName } from '../../../src/plan/yarn/yarn-amounts.js';

test('picks in a length: the last one whole, machine rounding aside', () => {
  expect(picksIn(56.666_666, 20)).toBe(1134);
  expect(picksIn(0.1 * 3, 10)).toBe(3);
});

// A tex is a gram in a kilometre (ISO 1144). A tenth more weft and a tenth in reserve are common practice, no source.
test('an amount is warp and weft together, a tenth more with the reserve, and weighed where the size is known', () => {
  expect(gramsOf(1_000_000, 30)).toBe(30);
  expect(WEFT_EXTRA).toBe(0.1);
  const amount = yarnAmount('D', 600_000, 400_000, 50);
  expect(amount).toMatchObject({ letter: 'D', warp: 600_000, weft: 400_000, total: 1_000_000, grams: 50 });
  expect([amount.withReserve, amount.gramsWithReserve]).toEqual([expect.closeTo(1_100_000, 6), expect.closeTo(55, 9)]);
  expect(yarnAmount('D', 1, 2, undefined)).toMatchObject({ total: 3, grams: null, gramsWithReserve: null });
});

test('a tally counts the first places of a repeated word', () => {
  expect(tally([0, 2, 2], 7, 4)).toEqual([3, 0, 4, 0]);
  expect(tally([0, 2, 2], 0, 3)).toEqual([0, 0, 0]);
});

test('a yarn is named by its letter, and by its use where that has one', () => {
  expect([yarnName({ letter: 'D' }), yarnName({ letter: 'D', use: 'pattern weft' })]).toEqual(['D', 'D pattern weft']);
});
