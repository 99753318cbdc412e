import fc from 'fast-check';
import { expect, test } from 'vitest';
import { PARTS } from '../../../src/score/parts/parts.js';
import { ScoreBound } from '../../../src/search/bounded/score-bound.js';
import { QUESTION } from '../question.js';

const share = fc.double({ min: 0, max: 1, noNaN: true });

test('the bound is the weighted mean of the parts, those that are not known being 1', () => {
  const weights = fc.tuple(...PARTS.map(() => fc.integer({ min: 0, max: 9 })));
  fc.assert(
    fc.property(weights, share, share, share, (all, contrast, symmetry, float) => {
      const rank = { ...QUESTION.rank, ...Object.fromEntries(PARTS.map((part, at) => [part, all[at]!])) };
      fc.pre(rank.contrast > 0);
      const known: Record<string, number> = { contrast, symmetry, float };
      const total = all.reduce((sum, weight) => sum + weight, 0);
      const mean = PARTS.reduce((sum, part) => sum + rank[part] * (known[part] ?? 1), 0) / total;
      const bound = new ScoreBound({ ...QUESTION, rank }, float);
      expect(bound.of(contrast ** 2, symmetry)).toBeCloseTo(mean, 9);
      // What is needed for a score is what reaches it, or a little less.
      const needed = bound.needed(mean, symmetry);
      expect(needed).toBeLessThanOrEqual(contrast ** 2);
      if (contrast > 0.1) expect(needed).toBeGreaterThan(contrast ** 2 - 1e-5);
      expect(bound.needed(mean + (1 - contrast + 0.01) * (rank.contrast / total), symmetry)).toBe(
        Number.POSITIVE_INFINITY,
      );
    }),
  );
});
