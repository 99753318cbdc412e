import { describe, expect, test } from 'vitest';
import { secondsByWay } from '../../../src/search/space/cost.js';
import { spaceOf } from '../../../src/search/space/space.js';
import { QUESTION } from '../question.js';
import { MEASURED } from './measured-ways.js';

describe.each(MEASURED)('$name', ({ question, scored, bounded }) => {
  const space = spaceOf(question);

  test('it is searched the way that took less time', () => {
    expect(space.way).toBe(scored < bounded ? 'scored' : 'bounded');
  });

  test('what is estimated is not twice what was measured, nor half', () => {
    const estimate = secondsByWay(question, space.strata, space.count);
    expect(space.seconds).toBe(Math.min(estimate.scored, estimate.bounded));
    const taken = Math.min(scored, bounded);
    expect(space.seconds).toBeGreaterThan(taken / 2);
    expect(space.seconds).toBeLessThan(taken * 2);
  });
});

test('tables of whole classes take less time for each candidate, the more there are', () => {
  const each = (longest: number): number => {
    const lengths = Array.from({ length: longest - 1 }, (_, k) => k + 2);
    const { seconds, count } = spaceOf({ ...QUESTION, lengths });
    return seconds / count;
  };
  expect(each(16)).toBeLessThan(each(14) / 3);
});
