import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { findStructure, weaveOf } from '../../../src/structure/catalogue/catalogue.js';
import {
  countermarchTieUp,
  heddles,
  type Lift,
  liftsUsed,
  sinkingTieUp,
  tabbySheds,
  twoFootTieUp,
} from '../../../src/structure/loom/lifts.js';
import { runs } from '../../long.js';

const weave = (name: string, profile: string) => weaveOf(findStructure(name), [...profile]);
const bits = (lift: Lift): number => lift.reduce((set, shaft) => set | (1 << (shaft - 1)), 0);

describe('lifts and heddles', () => {
  test('lifts are listed once each, as they come', () => {
    expect(liftsUsed(weave('2/2 twill', 'AA'))).toEqual([
      [1, 2],
      [2, 3],
      [3, 4],
      [1, 4],
    ]);
    expect(liftsUsed(weave('turned twill on four shafts', 'AB'))).toHaveLength(8);
    expect(liftsUsed({ tieUp: [[1], [3], [1, 3]], treadling: [[1, 2], [3]] })).toEqual([[1, 3]]);
  });
  test('heddles are counted on every shaft, those without ends too', () => {
    expect(heddles(weave('2/2 point twill', 'A'))).toEqual([1, 2, 2, 1]);
    expect(heddles(weaveOf(findStructure('monk’s belt'), ['A'], { treadled: ['A', 'B'] }))).toEqual([1, 1, 0, 0]);
  });
  test('plain-weave sheds, where there are any', () => {
    expect(tabbySheds([[1], [3], [2], [3]])).toEqual([[1, 2], [3]]);
    expect(tabbySheds([[1], [2], [1]])).toBeUndefined();
    expect(tabbySheds([[1], [2], [2], [1]])).toBeUndefined();
  });
});

describe('tie-ups for other looms', () => {
  test('sinking shed: the rest of the shafts; countermarch: both', () => {
    expect(sinkingTieUp([[1, 2], [4]], 4)).toEqual([
      [3, 4],
      [1, 2, 3],
    ]);
    expect(countermarchTieUp([[4, 1]], 4)).toEqual([{ rise: [1, 4], sink: [2, 3] }]);
  });
});

/** Every lift is what its one or two treadles raise together. */
const holds = (lifts: readonly Lift[], found: NonNullable<ReturnType<typeof twoFootTieUp>>): void => {
  lifts.forEach((lift, index) => {
    const pressed = found.presses[index]!;
    expect(pressed.length).toBeLessThanOrEqual(2);
    expect(pressed.reduce((set, treadle) => set | bits(found.tieUp[treadle - 1]!), 0)).toBe(bits(lift));
  });
};

/** Fewest treadles that give all lifts with two feet, by trying all sets of all sets of shafts. */
function fewest(lifts: readonly Lift[], shafts: number): number {
  const wanted = lifts.map(bits);
  const all = Array.from({ length: 2 ** shafts - 1 }, (_, index) => index + 1);
  const gives = (tied: readonly number[]): boolean =>
    wanted.every((lift) => tied.some((one) => tied.some((other) => (one | other) === lift)));
  let sets: number[][] = [[]];
  for (let count = 0; ; count++) {
    if (sets.some(gives)) return count;
    sets = sets.flatMap((set) => all.filter((tie) => tie > (set.at(-1) ?? 0)).map((tie) => [...set, tie]));
  }
}

describe('pressing two treadles at once', () => {
  test('the ten lifts of turned twill on four shafts with its plain weave go on six treadles', () => {
    const lifts = [...liftsUsed(weave('turned twill on four shafts', 'AB')), [1, 3], [2, 4]];
    expect(lifts).toHaveLength(10);
    const found = twoFootTieUp(lifts, 6)!;
    expect(found.tieUp).toEqual([[1], [2], [3], [4], [1, 3], [2, 4]]);
    holds(lifts, found);
    expect(twoFootTieUp(lifts, 10)!.presses.every((pressed) => pressed.length === 1)).toBe(true);
  });

  test('the search is exact: found just where trying everything finds it', () => {
    const lift = fc.subarray([1, 2, 3], { minLength: 1 });
    const lists = fc.uniqueArray(lift, { selector: String, minLength: 2, maxLength: 7 });
    fc.assert(
      fc.property(lists, (lifts) => {
        const least = fewest(lifts, 3);
        for (let treadles = 1; treadles <= lifts.length; treadles++) {
          const found = twoFootTieUp(lifts, treadles);
          expect(found !== undefined).toBe(treadles >= least);
          if (found !== undefined) holds(lifts, found);
        }
      }),
    );
  });

  test('on four shafts too', () => {
    const lift = fc.subarray([1, 2, 3, 4], { minLength: 1, maxLength: 3 });
    const lists = fc.uniqueArray(lift, { selector: String, minLength: 3, maxLength: 6 });
    fc.assert(
      fc.property(lists, (lifts) => {
        const least = fewest(lifts, 4);
        expect(twoFootTieUp(lifts, least)).toBeDefined();
        if (least > 1) expect(twoFootTieUp(lifts, least - 1)).toBeUndefined();
      }),
      { numRuns: runs(40) },
    );
  });

  test('more lifts than can be searched are left to a lift plan', () => {
    const many = Array.from({ length: 17 }, (_, index) => [index + 1]);
    expect(twoFootTieUp(many, 6)).toBeUndefined();
  });
});

test('sixteen lifts are tied for two feet, seventeen are woven from a lift plan', () => {
  const shafts = [1, 2, 3, 4, 5, 6];
  const pairs = shafts.flatMap((low) => shafts.filter((high) => high > low).map((high) => [low, high]));
  const lifts = [...shafts.map((shaft) => [shaft]), ...pairs];
  expect(twoFootTieUp(lifts.slice(0, 16), 6)?.tieUp).toHaveLength(6);
  expect(twoFootTieUp(lifts.slice(0, 17), 6)).toBeUndefined();
});
