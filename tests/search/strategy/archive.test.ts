import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { BatchBuilder, type ScoredCandidate } from '../../../src/search/evaluate/batch.js';
import { Archive, type LeftOut } from '../../../src/search/strategy/archive.js';
import { firstOfEachNiche } from '../../plain/niche.js';

const bit = fc.integer({ min: 0, max: 1 });

/** Candidates of 30 cloths; one of two that weave a cloth may be a little easier to weave, and score more. */
const candidates = fc
  .array(
    fc.record({
      cloth: fc.integer({ min: 0, max: 29 }),
      area: fc.integer({ min: 1, max: 3 }),
      preference: fc.tuple(bit, bit, bit, bit),
      more: bit,
    }),
    { minLength: 1, maxLength: 120, size: 'max' },
  )
  .map((all) =>
    all.map(
      ({ cloth, area, preference, more }, index): ScoredCandidate => ({
        index,
        score: (cloth % 4) * 1e9 + more,
        area,
        preference,
        niche: cloth % 5,
        key: [cloth, 0, 7, cloth],
      }),
    ),
  );

/** Where nothing else decides between two candidates, the later one sorts first, so that it is seen to be asked. */
const laterFirst = (a: number, b: number): number => b - a;
const code = (index: number): string => String(9000 - index);

function filled(all: readonly ScoredCandidate[], leftOut?: LeftOut): Archive {
  const archive = new Archive(laterFirst, leftOut);
  const builder = new BatchBuilder();
  for (const candidate of all) builder.add(candidate);
  archive.absorb(builder.done());
  return archive;
}

function grouped(all: readonly ScoredCandidate[]): Map<string, ScoredCandidate[]> {
  const groups = new Map<string, ScoredCandidate[]>();
  for (const one of all) {
    const key = Array.from(one.key).join();
    groups.set(key, [...(groups.get(key) ?? []), one]);
  }
  return groups;
}

/** The ranking, by lists and sorting alone. */
function plainRanking(
  all: readonly ScoredCandidate[],
): { index: number; equals: number; niche: number; key: string }[] {
  const cloths = grouped(all);
  const first = (a: readonly number[], b: readonly number[]): number =>
    a.map((part, at) => part - b[at]!).find((part) => part !== 0) ?? 0;
  return [...cloths]
    .map(([key, same]) => {
      const rank = ({ score, preference, area, index }: ScoredCandidate): number[] => [
        -score,
        ...preference,
        area,
        -index,
      ];
      return { key, equals: same.length - 1, kept: same.toSorted((a, b) => first(rank(a), rank(b)))[0]! };
    })
    .sort((a, b) => first([-a.kept.score, a.kept.area], [-b.kept.score, b.kept.area]) || b.kept.index - a.kept.index)
    .map(({ key, equals, kept: { index, niche } }) => ({ index, equals, niche, key }));
}

const withoutKey = ({ index, equals, niche }: { index: number; equals: number; niche: number }): object => ({
  index,
  equals,
  niche,
});

describe('the archive', () => {
  test('ranks as a plain list does, whatever comes first', () => {
    fc.assert(
      fc.property(candidates, fc.integer({ min: 1, max: 12 }), (all, most) => {
        const plain = plainRanking(all);
        for (const archive of [filled(all), filled(all.toReversed())]) {
          expect(archive.cloths).toBe(plain.length);
          expect(archive.duplicates).toBe(all.length - plain.length);
          expect(archive.best(most, code).map(withoutKey)).toEqual(plain.slice(0, most).map(withoutKey));
          const kinds = firstOfEachNiche(plain);
          expect(archive.bestOfEachNiche(most, code).map(withoutKey)).toEqual(kinds.slice(0, most).map(withoutKey));
          const both = plain.filter((each, at) => at < most || kinds.includes(each));
          expect(archive.bestAndOfNiches(most, code).map(withoutKey)).toEqual(both.map(withoutKey));
          const place = all.find(({ index }) => index === plain[most - 1]?.index);
          expect(archive.scoreOfPlace(most)).toBe(place ? place.score / 1e9 : Number.NEGATIVE_INFINITY);
        }
      }),
    );
  });

  test('leaves out what was done, and what is near to it as far as it would be shown', () => {
    const isOdd = (key: string): boolean => Number(key.split(',')[0]) % 2 === 1;
    const isThird = (key: string): boolean => Number(key.split(',')[0]) % 3 === 0;
    fc.assert(
      fc.property(candidates, fc.integer({ min: 1, max: 12 }), fc.boolean(), (all, most, eachKind) => {
        let asked = 0;
        const isNear = (key: string): boolean => {
          asked++;
          return isThird(key);
        };
        const archive = filled(all, { isDone: isOdd, isNear });
        const plain = plainRanking(all);
        const done = plain.filter(({ key }) => isOdd(key));
        expect(archive.out).toEqual({
          cloths: done.length,
          candidates: done.reduce((sum, { equals }) => sum + 1 + equals, 0),
        });
        for (let before = 0; !archive.settle(most, eachKind, 2); before = asked) {
          expect(asked - before).toBeGreaterThan(0);
          expect(asked - before).toBeLessThanOrEqual(2);
        }
        const stay = plain.filter(({ key }) => !isOdd(key) && !isThird(key));
        const kinds = firstOfEachNiche(stay);
        const shown = stay.filter((each, at) => at < most || (eachKind && kinds.includes(each)));
        const found = eachKind ? archive.bestAndOfNiches(most, code) : archive.best(most, code);
        expect(found.map(withoutKey)).toEqual(shown.map(withoutKey));
      }),
    );
  });

  test('loses none of thousands of cloths as it grows', () => {
    const all = Array.from({ length: 5000 }, (_, index): ScoredCandidate => {
      return { index, score: index, area: 1, preference: [0, 0, 0, 0], niche: 0, key: [index % 2500, 0, 0, 1] };
    });
    const archive = filled(all);
    expect([archive.cloths, archive.duplicates]).toEqual([2500, 2500]);
  });
});
