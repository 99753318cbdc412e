import { expect, test } from 'vitest';
import { minutesOf } from '../../../src/search/report/minutes.js';
import { spaceOf } from '../../../src/search/space/space.js';
import { QUESTION } from '../question.js';

test('what a person is told is longer than the estimate, and shorter on more threads', () => {
  const spaces = [[5], [13], [24]].map((lengths) => spaceOf({ ...QUESTION, lengths }));
  expect(spaces.map(({ way }) => way)).toEqual(['scored', 'bounded', 'evolved']);
  for (const space of spaces) {
    const alone = minutesOf(space, 1);
    expect(alone).toBeGreaterThan(space.seconds / 60);
    expect(minutesOf(space, 4)).toBeCloseTo(alone / 4, 9);
  }
});

test('a search that mutates is told by the most that it may try, for each of its tries', () => {
  const minutes = (tries: number): number => minutesOf(spaceOf({ ...QUESTION, lengths: [24], tries }), 1);
  // At most 400,000 candidates, of which 10,000 are measured in a second.
  expect(minutes(1)).toBeCloseTo(40 / 60, 9);
  expect(minutes(8)).toBeCloseTo(8 * minutes(1), 9);
});
