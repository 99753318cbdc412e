import fc from 'fast-check';
import { expect, test } from 'vitest';
import { medianRoot } from '../../../src/score/look/median-root.js';

/** Numbers of a few values, where many are equal, and of any values; each occurs once to four times. */
const counted = fc.constantFrom(3, 1e6).chain((levels) =>
  fc.array(fc.record({ number: fc.nat(levels).map((level) => level / 7), times: fc.integer({ min: 1, max: 4 }) }), {
    minLength: 1,
    maxLength: 40,
  }),
);

test('the median is the mean of the middle two roots, all of them written out and sorted', () => {
  fc.assert(
    fc.property(counted, (list) => {
      const all = list.flatMap(({ number, times }) => new Array<number>(times).fill(Math.sqrt(number)));
      fc.pre(all.length % 2 === 0);
      all.sort((a, b) => a - b);
      const median = (all[all.length / 2 - 1]! + all[all.length / 2]!) / 2;
      const numbers = Float64Array.from(list, ({ number }) => number);
      const times = Uint8Array.from(list, (each) => each.times);
      expect(medianRoot(numbers, times, list.length)).toBeCloseTo(median, 9);
    }),
  );
});

test('of numbers in a longer room only the first count', () => {
  expect(medianRoot(Float64Array.of(4, 9, 0, 0), Uint8Array.of(1, 1, 4, 4), 2)).toBe(2.5);
  expect(medianRoot(Float64Array.of(0, 0, 9), Uint8Array.of(1, 3, 4), 2)).toBe(0);
});
