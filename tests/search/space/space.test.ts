import { describe, expect, test } from 'vitest';
import { PRESET_NAMES, PRESETS } from '../../../src/score/rank/presets.js';
import type { Question } from '../../../src/search/question/question.js';
import { spaceOf } from '../../../src/search/space/space.js';
import { QUESTION } from '../question.js';

describe('the way of searching', () => {
  const lengths = [2, 3, 4, 5, 6, 7, 8, 9, 10];
  test.each(PRESET_NAMES)('few candidates are all measured, more are held against bounds: %s', (view) => {
    const rank = PRESETS[view];
    expect(spaceOf({ ...QUESTION, lengths: lengths.slice(0, 7), rank }).way).toBe('scored');
    expect(spaceOf({ ...QUESTION, lengths: [...lengths, 11, 12, 13], rank }).way).toBe('bounded');
  });

  test('where grounds have few candidates each, listing costs less than making their bounds', () => {
    const wide: Question = { ...QUESTION, structures: ['halvdräll'], lengths: lengths.slice(0, 7) };
    expect(spaceOf(wide).count).toBeGreaterThan(50_000);
    expect(spaceOf(wide).way).toBe('scored');
    expect(spaceOf({ ...QUESTION, lengths: [...lengths, 11, 12] }).way).toBe('bounded');
  });

  test('all are tried while that takes minutes and fits the memory, and good ones varied beyond', () => {
    const byBlock: Partial<Question> = { structures: ['turned twill'], profile: 'order' };
    expect(spaceOf({ ...QUESTION, ...byBlock, lengths }).way).toBe('scored');
    // Eleven million would take seven minutes, but do not fit.
    expect(spaceOf({ ...QUESTION, ...byBlock, lengths: [14, 15] }).way).toBe('evolved');
    expect(spaceOf({ ...QUESTION, lengths: [14, 15], oneOfEachKind: true }).way).toBe('bounded');
    expect(spaceOf({ ...QUESTION, lengths: [14, 15] }).way).toBe('bounded');
    const to16 = [...lengths, 11, 12, 13, 14, 15, 16];
    expect(spaceOf({ ...QUESTION, lengths: to16 }).way).toBe('bounded');
    expect(spaceOf({ ...QUESTION, lengths: to16, rank: PRESETS.clear }).way).toBe('evolved');
    expect(spaceOf({ ...QUESTION, lengths: [22] }).way).toBe('evolved');
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
