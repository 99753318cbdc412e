import fc from 'fast-check';
import { expect, test } from 'vitest';
import { noveltyOf } from '../../../src/score/likeness/novelty.js';
import { NoveltyMost } from '../../../src/search/evaluate/novelty-most.js';
import { runs } from '../../long.js';

const traits = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 7, maxLength: 7 });

test('novelty is never above its bound, and reaches it where all traits are known', () => {
  const lists = fc.array(traits, { minLength: 1, maxLength: 5 });
  fc.assert(
    fc.property(lists, traits, traits, traits, (classics, one, other, shares) => {
      const named = classics.map((list) => ({ name: '', traits: list }));
      const least = one.map((trait, t) => Math.min(trait, other[t]!));
      const most = one.map((trait, t) => Math.max(trait, other[t]!));
      const between = least.map((trait, t) => trait + shares[t]! * (most[t]! - trait));
      const bound = (from: readonly number[], to: readonly number[]): number => {
        const beside = NoveltyMost.beside(named);
        beside.take(from, to);
        return beside.with(between[3]!);
      };
      expect(bound(least, most)).toBeGreaterThanOrEqual(noveltyOf(between, named).novelty - 1e-8);
      expect(bound(between, between)).toBeCloseTo(noveltyOf(between, named).novelty, 8);
    }),
    { numRuns: runs(200) },
  );
});
