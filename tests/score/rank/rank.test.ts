import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Floats } from '../../../src/cloth/floats.js';
import { PARTS, UNWEIGHED } from '../../../src/score/parts/parts.js';
import { comparable, exceedsFloat, nearerFloats, rankScore, sameWeights } from '../../../src/score/rank/rank.js';

test('the score of every cloth of the demo is the weighted mean of the figures that stand beside it', () => {
  const file = new URL('../../../gallery/turned-twill/gallery.json', import.meta.url);
  const { question, candidates } = JSON.parse(readFileSync(file, 'utf8'));
  expect(question.rank).toEqual({ contrast: 3, symmetry: 2, float: 1, figure: 3 });
  expect(question.limits.float).toBe(7);
  for (const { scores } of candidates) {
    const float = (7 - scores.floats.longest) / 6;
    const score = (3 * scores.contrast + 2 * scores.symmetry + float + 3 * scores.figure) / 9;
    expect(scores.score).toBeCloseTo(score, 12);
  }
});

test('a score is the weighted mean of the parts, and nothing where nothing is weighed', () => {
  const parts = Object.fromEntries(PARTS.map((part, at) => [part, at / 20])) as Record<(typeof PARTS)[number], number>;
  expect(rankScore({ ...parts, contrast: 0.5, ease: 0.25 }, { ...UNWEIGHED, contrast: 3, ease: 1 })).toBe(1.75 / 4);
  expect(rankScore(parts, UNWEIGHED)).toBe(0);
  expect(sameWeights(UNWEIGHED, { ...UNWEIGHED })).toBe(true);
  for (const part of PARTS) expect(sameWeights(UNWEIGHED, { ...UNWEIGHED, [part]: 1 })).toBe(false);
});

test('scores are compared to nine places', () => {
  expect(comparable(0.5)).toBe(500_000_000);
  expect(comparable(0.5 + 4e-10)).toBe(comparable(0.5));
  expect(comparable(0.5 + 6e-10)).toBe(comparable(0.5) + 1);
});

describe('floats beside a limit', () => {
  test('what is as long as the limit is within it, machine rounding aside', () => {
    const floats = { longest: 5, longestMm: 6 };
    expect([4, 5, 6].map((threads) => exceedsFloat(floats, { threads }))).toEqual([true, false, false]);
    expect([5.99, 6 - 1e-10, 6, 6.01].map((mm) => exceedsFloat(floats, { mm }))).toEqual([true, false, false, false]);
    expect(exceedsFloat({ longest: null, longestMm: null }, { threads: 99 })).toBe(true);
    expect(exceedsFloat({ longest: null, longestMm: null }, { mm: 99 })).toBe(true);
  });

  test('nearer are those shorter in the measure of the limit, then in the other, then on each side', () => {
    const of = (longest: number | null, longestMm: number | null, side: number | null = 1): Floats => ({
      longest,
      longestMm,
      warpFace: side,
      warpBack: 1,
      weftFace: 1,
      weftBack: 1,
    });
    const pairs: [Floats, Floats, 'threads' | 'mm' | 'both'][] = [
      [of(5, 9), of(6, 8), 'threads'],
      [of(6, 8), of(5, 9), 'mm'],
      [of(5, 8), of(5, 9), 'both'],
      [of(5, 8, 4), of(5, 8, 5), 'both'],
      [of(5, 8), of(null, null), 'both'],
    ];
    for (const [near, far, by] of pairs) {
      for (const limit of [{ threads: 3 }, { mm: 3 }]) {
        if (by !== 'both' && !(by in limit)) continue;
        expect(nearerFloats(near, far, limit)).toBe(near);
        expect(nearerFloats(far, near, limit)).toBe(near);
      }
    }
    const one = of(5, 8);
    expect(nearerFloats(one, { ...one }, { threads: 3 })).toBe(one);
    expect(nearerFloats(undefined, one, { threads: 3 })).toBe(one);
    expect(nearerFloats(one, undefined, { threads: 3 })).toBe(one);
    expect(nearerFloats(undefined, undefined, { threads: 3 })).toBeUndefined();
  });
});
