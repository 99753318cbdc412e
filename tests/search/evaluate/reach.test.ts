import fc from 'fast-check';
import { expect, test } from 'vitest';
import { UNWEIGHED } from '../../../src/score/parts/parts.js';
import { NICHES, QUARTERS } from '../../../src/search/evaluate/niche.js';
import { Aims } from '../../../src/search/evaluate/reach.js';

const RANK = { ...UNWEIGHED, contrast: 2, symmetry: 1 };
const NONE = Number.NEGATIVE_INFINITY;
const score = fc.integer({ min: 0, max: 100 }).map((hundredths) => hundredths / 100);

test('a pair must reach the score of its niche, whatever its symmetry is in the end, and no more than the best of all', () => {
  const known = fc.array(fc.oneof(score, fc.constant(NONE)), { minLength: NICHES, maxLength: NICHES });
  const finds = fc.array(fc.tuple(fc.nat(2 * QUARTERS - 1), score), { maxLength: 20 });
  fc.assert(
    fc.property(known, score, finds, fc.boolean(), (given, best, found, before) => {
      const niches = given.map((of) => Math.min(of, best));
      const aims = new Aims({ score: best, niches }, { rank: RANK, ...(before && { done: [] as never }) });
      for (const [niche, scored] of found) {
        aims.found(niche, scored);
        if (!before) niches[niche] = Math.max(niches[niche]!, Math.min(scored, best));
      }
      for (let place = 0; place < 2 * QUARTERS; place++) {
        expect(aims.of(place)).toBe(niches[place]);
        const [without, most] = [place - (place % QUARTERS), place % QUARTERS];
        const enough = niches
          .slice(without, place + 1)
          .map((of, quarters) => of + (RANK.symmetry * (most - quarters)) / 4 / 3);
        expect(aims.foreseen(place)).toBeCloseTo(Math.min(...enough), 12);
      }
    }),
  );
});

test('without niches one score is to be reached', () => {
  const aims = new Aims({ score: 0.5 }, { rank: RANK });
  aims.found(3, 0.75);
  expect([aims.of(3), aims.foreseen(0)]).toEqual([0.5, 0.5]);
});
