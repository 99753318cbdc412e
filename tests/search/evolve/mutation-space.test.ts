import seedrandom from 'seedrandom';
import { describe, expect, test } from 'vitest';
import { smallestPeriod } from '../../../src/order/order.js';
import { MutationSpace } from '../../../src/search/evolve/mutation-space.js';
import type { Question } from '../../../src/search/question/question.js';
import type { Candidate } from '../../../src/search/space/candidate.js';
import { familiesOf } from '../../../src/search/space/families.js';
import { canonicalOrder } from '../../../src/search/space/genome.js';
import { QUESTION } from '../question.js';

const own: Question = { ...QUESTION, lengths: [2, 3, 4, 5, 6], weft: { rule: 'own' } };
const spaceOf = (question: Question) => new MutationSpace(question, familiesOf(question));
const first = (question: Question, warp: number[], weft: number[]): Candidate => ({
  ...{ family: familiesOf(question)[0]!, warp, weft, start: [0, 0] },
});
const ordersOf = ({ warp, weft }: Candidate): string => `${warp.join('')} ${weft.join('')}`;

describe('the neighbours of a candidate', () => {
  const from = first(own, [0, 0, 1], [0, 1, 1, 1]);

  test('come first with their orders exchanged, then each order alone for both sides, as it is and exchanged', () => {
    const near = [...spaceOf(own).neighbours(from, [])].slice(0, 5).map(ordersOf);
    expect(near).toEqual(['0111 001', '001 001', '001 011', '0111 0111', '0111 0001']);
  });

  test('take the orders of others from either side', () => {
    const other = first(own, [0, 1], [0, 1, 0, 1, 1]);
    const near = [...spaceOf(own).neighbours(from, [other])].slice(5, 9).map(ordersOf);
    expect(near).toEqual(['001 01', '01 0111', '001 01011', '01011 0111']);
  });

  test('keep a warp that is given, and a weft that follows it', () => {
    const given = [...spaceOf({ ...own, warp: [0, 0, 1] }).neighbours(from, [])];
    expect(given.length).toBeGreaterThan(10);
    expect(new Set(given.map(({ warp }) => warp.join('')))).toEqual(new Set(['001']));
    const alike = { ...own, weft: { rule: 'same' } } as const;
    const near = [...spaceOf(alike).neighbours(first(alike, [0, 0, 1], [0, 0, 1]), [])];
    expect(near.length).toBeGreaterThan(10);
    for (const { warp, weft } of near) expect(weft).toEqual(warp);
  });
});

test('every candidate drawn has orders of asked lengths in their canonical form', () => {
  const [space, rng] = [spaceOf(own), seedrandom('1')];
  const drawn = Array.from({ length: 1000 }, () => space.draw(rng));
  for (const { warp, weft } of drawn) {
    for (const order of [warp, weft]) {
      expect(order).toEqual(canonicalOrder(order));
      expect(own.lengths.some((length) => length % smallestPeriod(order) === 0)).toBe(true);
    }
  }
});

test('of wefts drawn, a third have the warp’s order, and a third one as long', () => {
  const question = { ...own, lengths: [23, 24, 25, 26, 27, 28, 29, 30, 31, 32] };
  const [space, rng] = [new MutationSpace(question, familiesOf(question)), seedrandom('2')];
  // Orders that repeat a shorter one, such as those of one colour, are of no length of their own.
  const drawn = Array.from({ length: 3000 }, () => space.draw(rng)).filter(({ warp }) => warp.length > 22);
  const share = (is: (candidate: Candidate) => boolean): number => drawn.filter(is).length / drawn.length;
  const alike = share(({ warp, weft }) => warp.join() === weft.join());
  const asLong = share(({ warp, weft }) => warp.length === weft.length);
  expect(Math.abs(alike - 1 / 3)).toBeLessThan(0.05);
  expect(Math.abs(asLong - alike - 1 / 3)).toBeLessThan(0.07);
});

test('nested orders keep their beginning, and are cut to what repeats', () => {
  const nested: Question = { ...own, fill: ['nest'], lengths: [4, 6] };
  const [space, rng] = [spaceOf(nested), seedrandom('1')];
  const warps = Array.from({ length: 300 }, () => space.draw(rng).warp);
  for (const warp of warps) expect([smallestPeriod(warp), 12 % warp.length]).toEqual([warp.length, 0]);
  expect(new Set(warps.map(({ length }) => length))).toEqual(new Set([1, 2, 3, 4, 6]));
  expect(warps.some((warp) => warp.join() !== canonicalOrder(warp).join())).toBe(true);
});
