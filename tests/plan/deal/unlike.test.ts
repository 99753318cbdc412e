import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Fits, mostUnlikeDeal } from '../../../src/plan/deal/unlike.js';
import { runs } from '../../long.js';

type Apart = readonly (readonly number[])[];

/** Distances of points in a plane, and of points at random. */
const apartOf = (points: readonly (readonly [number, number])[]): number[][] =>
  points.map(([x, y]) => points.map(([u, v]) => Math.min(1, Math.hypot(x - u, y - v))));
const points = (most: number) =>
  fc.array(fc.tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true })), {
    minLength: 4,
    maxLength: most,
  });
const whole = (weavers: number, cloths: number): Fits =>
  Array.from({ length: weavers }, () => new Array<boolean>(cloths).fill(true));

const leastOf = (set: readonly number[], apart: Apart): number =>
  Math.min(1, ...set.flatMap((a, at) => set.slice(at + 1).map((b) => apart[a]![b]!)));

/** The plain way: every cloth is tried for every weaver; what is no better than the best is left. */
function byForce(fits: Fits, apart: Apart): number {
  let best = -1;
  const deal = (set: readonly number[]): void => {
    const least = leastOf(set, apart);
    if (least <= best) return;
    if (set.length === fits.length) {
      best = least;
      return;
    }
    apart.forEach((_, c) => {
      if (fits[set.length]![c] && !set.includes(c)) deal([...set, c]);
    });
  };
  deal([]);
  return best;
}

/** Numbers at random, the same in every run. */
function random(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}

describe('the most unlike cloths', () => {
  test('are those that a plain search finds, whatever fits whose loom', () => {
    let dealt = 0;
    fc.assert(
      fc.property(
        points(9),
        fc.integer({ min: 1, max: 4 }),
        fc.array(fc.boolean(), { minLength: 36, maxLength: 36 }),
        (places, weavers, gaps) => {
          const apart = apartOf(places);
          const fits = Array.from({ length: weavers }, (_, w) =>
            places.map((_, c) => gaps[w * 9 + c]! || gaps[(c * 5 + w) % 36]!),
          );
          const force = byForce(fits, apart);
          const found = mostUnlikeDeal(fits, apart);
          expect(found === undefined).toBe(force < 0);
          if (found === undefined) return;
          dealt++;
          expect(found.least).toBe(force);
          expect(found.atMost).toBe(found.least);
          expect(new Set(found.dealt).size).toBe(weavers);
          expect(found.dealt.every((cloth, w) => fits[w]![cloth])).toBe(true);
          expect(leastOf(found.dealt, apart)).toBe(found.least);
        },
      ),
      { numRuns: runs(150) },
    );
    expect(dealt).toBeGreaterThan(runs(150) / 2);
  });

  test('eight weavers out of forty cloths: exact, and the same in any order of the list', () => {
    const next = random(11);
    for (let round = 0; round < runs(3, 20); round++) {
      const places = Array.from({ length: 40 }, () => [next(), next()] as const);
      const found = mostUnlikeDeal(whole(8, 40), apartOf(places))!;
      expect(found.atMost).toBe(found.least);
      const other = mostUnlikeDeal(whole(8, 40), apartOf(places.toReversed()))!;
      expect(other.least).toBe(found.least);
    }
  });

  test('eight out of sixteen, every choice tried', () => {
    const next = random(5);
    for (let round = 0; round < runs(2, 10); round++) {
      const places = Array.from({ length: 16 }, () => [next(), next()] as const);
      const apart = apartOf(places);
      let best = 0;
      for (let bits = 0; bits < 1 << 16; bits++) {
        const set = places.flatMap((_, c) => ((bits >> c) & 1 ? [c] : []));
        if (set.length === 8) best = Math.max(best, leastOf(set, apart));
      }
      expect(mostUnlikeDeal(whole(8, 16), apart)!.least).toBe(best);
    }
  });

  test('many weavers: within 5 % of what no choice can pass', () => {
    const next = random(3);
    for (const [weavers, cloths] of [
      [12, 60],
      [20, 60],
      [20, 100],
    ] as const) {
      const places = Array.from({ length: cloths }, () => [next(), next()] as const);
      const found = mostUnlikeDeal(whole(weavers, cloths), apartOf(places))!;
      expect(found.least).toBeGreaterThanOrEqual(0.95 * found.atMost);
    }
  });
});
