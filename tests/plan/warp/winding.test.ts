import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { changesIn, windingOf } from '../../../src/plan/warp/winding.js';
import { tally } from '../../../src/plan/yarn/yarn-amounts.js';
import { field } from '../cloths.js';

const order = fc.array(fc.nat(2), { minLength: 1, maxLength: 12 });

describe('winding', () => {
  const bordered = fc.tuple(order, fc.integer({ min: 30, max: 300 }), fc.nat(12));

  test('the parts in order are the warp, whole repeats and what is left', () => {
    fc.assert(
      fc.property(bordered, ([repeat, ends, border]) => {
        const edge = new Array<number>(border).fill(3);
        const warp = [...edge, ...field(repeat, ends), ...edge];
        const { parts } = windingOf(warp, repeat.length, border);
        const unwound = parts.flatMap(({ times, runs }) =>
          Array.from({ length: times }, () => runs.flatMap((run) => new Array<number>(run.ends).fill(run.yarn))).flat(),
        );
        expect(unwound).toEqual(warp);
        expect(parts.find(({ what }) => what === 'repeats')?.times).toBe(Math.floor(ends / repeat.length));
      }),
    );
  });

  test('a warp of one repeat has it once, one of less than a repeat has what is left alone', () => {
    const runs = [
      { yarn: 0, ends: 1 },
      { yarn: 1, ends: 2 },
    ];
    expect(windingOf([0, 1, 1], 3).parts).toContainEqual({ what: 'repeats', times: 1, runs });
    expect(windingOf([0, 1, 1], 4).parts).toContainEqual({ what: 'rest of a repeat', times: 1, runs });
  });

  test('counting ties follow the motif: at one place of the order and at one peg, borders apart', () => {
    fc.assert(
      fc.property(bordered, ([repeat, ends, border]) => {
        const edge = new Array<number>(border).fill(3);
        const { ties, tieEvery } = windingOf([...edge, ...field(repeat, ends), ...edge], repeat.length, border);
        const all = ends + 2 * border;
        const inField = ties.filter((tie) => tie > border && tie < border + ends);
        for (const tie of inField) {
          expect((tie - border) % repeat.length).toBe(0);
          expect((tie - border) % 2).toBe(0);
        }
        expect(inField).toHaveLength(Math.ceil(ends / tieEvery) - 1);
        expect(ties.slice(-1)).toEqual([all]);
        expect(ties).toEqual(ties.toSorted((a, b) => a - b));
        if (border > 0) expect(ties[0]).toBe(border);
      }),
    );
  });

  test('chains hold every end once, and every counting tie is whole repeats of that colour', () => {
    fc.assert(
      fc.property(order, fc.integer({ min: 1, max: 200 }), (repeat, ends) => {
        const warp = field(repeat, ends);
        const { chains, ways } = windingOf(warp, repeat.length);
        const counts = tally(warp, ends, 3);
        for (const chain of chains) {
          expect(chain.ends).toBe(counts[chain.yarn]);
          expect(chain.rounds * 2 + (chain.oneMore ? 1 : 0)).toBe(chain.ends);
          expect(chain.ties.at(-1)).toBe(chain.ends);
        }
        expect(chains.reduce((sum, chain) => sum + chain.ends, 0)).toBe(ends);
        expect(ways.map((way) => way.knots)).toEqual(ways.map((way) => way.knots).sort((a, b) => a - b));
      }),
    );
  });

  test('of a repeat too long for one counting tie every run is listed; ties begin anew with each repeat', () => {
    const order = [160, 80, 80, 90].flatMap((ends, at) => new Array<number>(ends).fill(at % 2));
    const { parts, ties } = windingOf([...order, ...order], 410);
    expect(parts).toEqual([
      { what: 'repeats', times: 2, runs: [160, 80, 80, 90].map((ends, at) => ({ ends, yarn: at % 2 })) },
    ]);
    expect(ties.slice(0, 3)).toEqual([20, 40, 60]);
    expect(ties.slice(19, 23)).toEqual([400, 410, 430, 450]);
    expect(ties.at(-1)).toBe(820);
  });

  // At least 10 ends between counting ties and an even number, 80 at most, else every 20 (common practice, no source).
  test.each([
    [1, 10],
    [3, 12],
    [9, 18],
    [10, 10],
    [11, 22],
    [80, 80],
    [81, 20],
  ])('of a repeat of %d ends, a counting tie comes after every %d', (repeat, ties) => {
    const warp = Array.from({ length: 5 * repeat }, (_, i) => Math.floor(i / repeat) % 2);
    expect(windingOf(warp, repeat).tieEvery).toBe(ties);
  });

  test('a chain is tied after its ends in the border, at whole repeats of its own ends, and at the end', () => {
    // Four of D to the repeat of 7 ends, three of L, and borders of 4 D: ties after 12 of D and of L.
    const warp = [0, 0, 0, 0, ...field([0, 0, 0, 0, 1, 1, 1], 35), 0, 0, 0, 0];
    expect(windingOf(warp, 7, 4).chains).toEqual([
      { yarn: 0, ends: 28, rounds: 14, oneMore: false, tieEvery: 12, ties: [4, 16, 24, 28] },
      { yarn: 1, ends: 15, rounds: 7, oneMore: true, tieEvery: 12, ties: [12, 15] },
    ]);
  });

  test('a repeat of 81 ends is tied every 20, the last tie of each at its end, never under ten ends away', () => {
    const { ties } = windingOf(field([0, ...new Array<number>(80).fill(1)], 100), 81);
    expect(ties).toEqual([20, 40, 60, 81, 100]);
    expect(windingOf(field([0, ...new Array<number>(89).fill(1)], 110), 90, 1).ties).toEqual([
      1, 21, 41, 61, 81, 91, 109, 110,
    ]);
  });

  test('changes are counted along a warp, not round it; no ends have none', () => {
    expect([[], [1], [1, 0, 1], [1, 1, 0]].map((warp) => changesIn(warp))).toEqual([0, 0, 2, 1]);
  });

  test('all changes fall at one peg where every run is even', () => {
    expect(windingOf(field([0, 0, 1, 1], 12), 4).even).toBe(true);
    expect(windingOf(field([0, 0, 1, 1], 11), 4).even).toBe(false);
  });

  describe('the ways', () => {
    const apart = (chains: number, passes: number) => ({
      way: 'a separate chain per colour',
      knots: 0,
      passes,
      chains,
    });
    const together = (knots: number, passes: number) => ({ way: 'several ends together', knots, passes, chains: 1 });
    const inOrder = (knots: number, passes: number) => ({
      way: 'in order, changing at the pegs',
      knots,
      passes,
      chains: 1,
    });
    const ways = (warp: number[], repeat: number, border = 0) => windingOf(warp, repeat, border).ways;

    test('of one colour there is one way', () => {
      expect(ways(field([0], 12), 4)).toEqual([apart(1, 12)]);
    });

    // Eight ends are wound together at most (common practice, no source).
    test('a repeat of eight ends is wound together, one of nine is not', () => {
      const eight = [0, 0, 0, 0, 0, 0, 1, 1];
      expect(ways(field(eight, 24), 8)).toEqual([apart(2, 24), together(0, 3), inOrder(5, 24)]);
      expect(ways(field([...eight, 1], 27), 9)).toEqual([apart(2, 27), inOrder(5, 27)]);
    });

    test('ends after the last whole repeat are wound in order: one knot to begin, and their changes', () => {
      expect(ways(field([0, 1, 1], 20), 3)).toEqual([apart(2, 20), together(2, 8), inOrder(13, 20)]);
      expect(ways(field([0, 0, 1], 20), 3)).toEqual([apart(2, 20), together(1, 8), inOrder(12, 20)]);
    });

    test('a repeat is wound together from one whole repeat on, and not with borders', () => {
      expect(ways([0, 1, 1], 3)).toEqual([apart(2, 3), together(0, 1), inOrder(1, 3)]);
      expect(ways([0, 1, 1], 4)).toEqual([apart(2, 3), inOrder(1, 3)]);
      expect(ways([2, ...field([0, 1, 1], 6), 2], 3, 1)).toEqual([apart(3, 8), inOrder(5, 8)]);
    });
  });
});
