import { describe, expect, test } from 'vitest';
import { PRESETS } from '../../../src/score/rank/presets.js';
import type { Question } from '../../../src/search/question/question.js';
import { secondsByWay } from '../../../src/search/space/cost.js';
import { spaceOf } from '../../../src/search/space/space.js';
import { QUESTION } from '../question.js';

const to = (longest: number): number[] => Array.from({ length: longest - 1 }, (_, k) => k + 2);
const SAME: Partial<Question> = { weft: { rule: 'same' }, by: ['unit'], times: [2], show: 12 };
const { calm, clear, unexpected } = PRESETS;

/**
 * Seconds of user time that both ways took on 29 November 2026, one thread of a busy server, for questions on either side
 * of where bounds begin to pay.
 */
const MEASURED: readonly (readonly [
  structure: string,
  longest: number,
  change: Partial<Question>,
  scored: number,
  bounded: number,
])[] = [
  ['halvdräll', 10, { rank: unexpected }, 6.4, 11.6],
  ['1/3 rosepath', 11, { rank: unexpected }, 1.9, 2.7],
  ['2/2 twill', 12, { rank: unexpected }, 3.8, 3.1],
  ['2/2 twill', 12, { rank: { ...QUESTION.rank, figure: 2 } }, 2.8, 1.5],
  ['2/2 twill', 13, { rank: clear }, 12.5, 11.9],
  ['3/1 twill', 12, { rank: calm }, 5.7, 2.5],
  ['crackle', 8, { rank: calm }, 7.5, 2.7],
  ['turned satin', 10, {}, 2.7, 1.6],
  ['overshot', 12, SAME, 4.5, 3.3],
];

describe.each(MEASURED)('%s, orders of 2 to %i', (structure, longest, change, scored, bounded) => {
  const question: Question = { ...QUESTION, structures: [structure], lengths: to(longest), ...change };
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
    const { seconds, count } = spaceOf({ ...QUESTION, lengths: to(longest) });
    return seconds / count;
  };
  expect(each(16)).toBeLessThan(each(14) / 3);
});
