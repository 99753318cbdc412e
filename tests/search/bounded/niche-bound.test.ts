import { describe, expect, test } from 'vitest';
import { spacing } from '../../../src/draft/draft.js';
import { groundAt } from '../../../src/search/bounded/bound-ground.js';
import { BoundedScan } from '../../../src/search/bounded/bounded-scan.js';
import { NicheBound } from '../../../src/search/bounded/niche-bound.js';
import { PairBound, rankingOf } from '../../../src/search/bounded/pair-bound.js';
import { PairScan } from '../../../src/search/bounded/pair-scan.js';
import type { Scan } from '../../../src/search/bounded/scan.js';
import { warpsOn, weftsOn } from '../../../src/search/bounded/side-orders.js';
import { evaluator } from '../../../src/search/evaluate/evaluate.js';
import { QUARTERS } from '../../../src/search/evaluate/niche.js';
import type { Question } from '../../../src/search/question/question.js';
import { spaceOf } from '../../../src/search/space/space.js';
import { runs } from '../../long.js';
import { QUESTION } from '../question.js';

const RED = { letter: 'R', name: 'madder', hex: '#a0522d' };
const THREE = [...QUESTION.yarns, RED];

const QUESTIONS: readonly (readonly [string, Partial<Question>])[] = [
  ['2/2 twill', { lengths: [1, 2, 3, 4, 6] }],
  [
    'plain weave, where faces often repeat sooner than their orders',
    { structures: ['plain weave'], lengths: [2, 4, 6] },
  ],
  ['without exchange', { structures: ['plain weave'], lengths: [2, 3, 4], same: ['mirror'] }],
  ['three yarns, of which some show two', { structures: ['basket'], yarns: THREE, lengths: [2, 3] }],
  ['by unit, in alternation', { structures: ['M’s and O’s'], by: ['unit'], fill: ['alternate'], lengths: [2, 3] }],
  ['with tabby', { structures: ['summer and winter'], lengths: [2, 3] }],
  ['stretched', { structures: ['1/3 twill'], lengths: [2, 3], times: [1, 3] }],
];

describe('the niche of each pair of orders is that of its face', () => {
  let differing = 0;
  test.each(QUESTIONS)('%s', (_, change) => {
    const question: Question = { ...QUESTION, oneOfEachKind: true, ...change };
    const space = spaceOf(question);
    const { evaluate, verdict } = evaluator(question);
    const { across, along } = spacing(question.sett);
    const found = new Set<number>();
    for (const stratum of space.strata) {
      const { family, warps, wefts, starts, first } = stratum;
      const shared = verdict(family);
      if ('fault' in shared) continue;
      starts.forEach((start, s) => {
        const ground = groundAt(family, warps[0]!.length, wefts[0]!.length, start);
        const laid = {
          warps: warpsOn(ground, warps, question, family),
          wefts: weftsOn(ground, wefts, question, family),
        };
        const bound = new NicheBound(
          question,
          new PairBound(rankingOf(question, shared, across / along), ground, laid),
        );
        for (let pair = s % runs(5, 1); pair < warps.length * wefts.length; pair += runs(5, 1)) {
          const [w, f] = [Math.floor(pair / wefts.length), pair % wefts.length];
          const index = first + pair * starts.length + s;
          const batch = evaluate([[index, space.at(index)]]);
          if (batch.length === 0) continue;
          const niche = batch.niche[0]!;
          expect(bound.place(w, f, (niche % QUARTERS) / 4, () => 0)).toBe(niche);
          found.add(niche);
          differing += Number(laid.warps.repeats!.sign(w).startsWith('of'));
        }
      });
    }
    expect(found.size).toBeGreaterThan(3);
  });

  test('orders under which crossing threads repeat otherwise, by their kind and colour, were among them', () => {
    expect(differing).toBeGreaterThan(10);
  });
});

test.each([
  ['2/2 point twill', [6]],
  ['1/3 rosepath', [8]],
  ['turned taqueté by shafts', [8]],
] as const)(
  'orders of one sign repeat alike under each other order, and these under them: %s',
  (structure, lengths) => {
    const question: Question = { ...QUESTION, structures: [structure], lengths, oneOfEachKind: true };
    // Wefts that differ only in the kinds of picks that show their colours, where that makes a difference to a warp.
    let byKinds = 0;
    for (const { family, warps, wefts, starts } of spaceOf(question).strata) {
      for (const start of starts.slice(0, runs(2))) {
        const ground = groundAt(family, warps[0]!.length, wefts[0]!.length, start);
        const ends = warpsOn(ground, warps, question, family).repeats!;
        const picks = weftsOn(ground, wefts, question, family).repeats!;
        const firstOf = new Map<string, number>();
        const coarse = new Map<string, number>();
        wefts.forEach((_, weft) => {
          const sign = picks.sign(weft);
          const first = firstOf.get(sign) ?? weft;
          firstOf.set(sign, first);
          for (let warp = 0; warp < warps.length && first < weft; warp++) {
            expect(ends.repeat(warp, picks, weft)).toBe(ends.repeat(warp, picks, first));
            expect(picks.repeat(weft, ends, warp)).toBe(picks.repeat(first, ends, warp));
          }
          const colours = `${sign.split(' ')[0]} ${picks.colours[weft]}`;
          const other = coarse.get(colours) ?? weft;
          coarse.set(colours, other);
          byKinds += Number(
            warps.some((__, warp) => ends.repeat(warp, picks, weft) !== ends.repeat(warp, picks, other)),
          );
        });
      }
    }
    expect(byKinds).toBeGreaterThan(5);
  },
);

test('a hairline of two colours on plain weave repeats after two threads one way, and at once the other way', () => {
  const question: Question = { ...QUESTION, structures: ['plain weave'], lengths: [2], oneOfEachKind: true };
  const [family] = spaceOf(question).families;
  const repeats = [[0, 0] as const, [0, 1] as const].map((start) => {
    const ground = groundAt(family!, 2, 2, start);
    const ends = warpsOn(ground, [[0, 1]], question, family!).repeats!;
    const picks = weftsOn(ground, [[0, 1]], question, family!).repeats!;
    return [ends.repeat(0, picks, 0), picks.repeat(0, ends, 0)];
  });
  expect(repeats.toSorted(([a], [b]) => a! - b!)).toEqual([
    [1, 2],
    [2, 1],
  ]);
});

test('both scans give a pair the same place', () => {
  let classes = 0;
  for (const structures of [['plain weave'], ['2/2 twill'], ['2/2 point twill']]) {
    const question: Question = { ...QUESTION, structures, lengths: [1, 2, 4, 5], oneOfEachKind: true };
    for (const stratum of spaceOf(question).strata) {
      const placesBy = (scan: Scan): Map<string, number> => {
        const places = new Map<string, number>();
        const anyScore = (): number => Number.NEGATIVE_INFINITY;
        scan.guess(0, stratum.warps.length, anyScore, (w, f, s, place) => places.set(`${w} ${f} ${s}`, place));
        return places;
      };
      const tabled = new BoundedScan(question, stratum);
      const one = placesBy(tabled);
      const other = placesBy(new PairScan(question, stratum, { floatPart: 1, classics: [] }));
      expect(one.size).toBe(other.size);
      for (const [pair, place] of one) {
        const [w, f, s] = pair.split(' ').map(Number);
        // Without a table of its own the other takes symmetry as 1.
        const most = tabled.symmetryAtMost(w!, f!, s!);
        const theirs = other.get(pair)!;
        expect([theirs, theirs - 4 * (1 - most)], pair).toContain(place);
      }
      classes += new Set(one.values()).size;
    }
  }
  expect(classes).toBeGreaterThan(50);
});
