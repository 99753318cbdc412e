import fc from 'fast-check';
import { expect, test } from 'vitest';
import { ScoreBound, TopCandidates } from '../../../src/search/bounded/score-bound.js';
import { QUESTION } from '../question.js';

const share = fc.double({ min: 0, max: 1, noNaN: true });

test('the bound is the weighted mean of contrast, symmetry and float', () => {
  const weight = fc.integer({ min: 0, max: 9 });
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 9 }), weight, weight, share, share, share, (...given) => {
      const [forContrast, forSymmetry, forFloat, contrast, symmetry, float] = given;
      const rank = { ...QUESTION.rank, contrast: forContrast, symmetry: forSymmetry, float: forFloat };
      const total = forContrast + forSymmetry + forFloat;
      const mean = (forContrast * contrast + forSymmetry * symmetry + forFloat * float) / total;
      const bound = new ScoreBound({ rank }, float);
      expect(bound.of(contrast ** 2, symmetry)).toBeCloseTo(mean, 9);
      // What is needed for a score is what reaches it, or a little less.
      const needed = bound.needed(mean, symmetry);
      expect(needed).toBeLessThanOrEqual(contrast ** 2);
      if (contrast > 0.1) expect(needed).toBeGreaterThan(contrast ** 2 - 1e-5);
      expect(bound.needed(mean + (1 - contrast + 0.01) * (forContrast / total), symmetry)).toBe(
        Number.POSITIVE_INFINITY,
      );
    }),
  );
});

test('what is needed: nothing where the other parts reach the score, never where full contrast does not', () => {
  const rank = { ...QUESTION.rank, contrast: 3, symmetry: 2, float: 1 };
  const bound = new ScoreBound({ rank }, 1);
  // Symmetry 1 and short floats are three of six.
  expect(bound.needed(0.5, 1)).toBe(Number.NEGATIVE_INFINITY);
  expect(bound.needed(0.75, 1)).toBeCloseTo(0.25, 7);
  expect(bound.needed(0.75, 1)).toBeLessThan(0.25);
  expect(bound.needed(1, 1)).toBeLessThan(1);
  expect(bound.needed(1.001, 1)).toBe(Number.POSITIVE_INFINITY);
  // A tone is never taken as more than full contrast, nor as less than none.
  expect([bound.of(4, 1), bound.of(-1, 1), bound.of(0.25, 0)]).toEqual([1, 0.5, 2.5 / 6]);
});

test('the most promising of each place are those of a plain sort, however many are offered', () => {
  const offer = fc.record({ hope: fc.integer({ min: 0, max: 6 }), place: fc.constantFrom(0, 2) });
  fc.assert(
    fc.property(fc.array(offer, { maxLength: 100 }), fc.integer({ min: 1, max: 5 }), (offers, most) => {
      const top = new TopCandidates(most);
      const all = offers.map((one, index) => ({ index, ...one }));
      for (const one of all) if (one.hope >= top.least(one.place)) top.offer(one);
      const sorted = all.toSorted((a, b) => b.hope - a.hope || a.index - b.index);
      const at = [0, 2].map((wanted) => sorted.filter(({ place }) => place === wanted));
      expect(top.best()).toEqual(at.flatMap((those) => those.slice(0, most)));
      at.forEach((those, k) => {
        expect(top.least(2 * k)).toBe(those.length < most ? Number.NEGATIVE_INFINITY : those[most - 1]!.hope);
      });
      expect(top.least(1)).toBe(Number.NEGATIVE_INFINITY);
    }),
  );
});
