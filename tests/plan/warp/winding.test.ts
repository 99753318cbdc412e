import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { changesIn, windInOrder, windingOf } from '../../../src/plan/warp/winding.js';
import { tally } from '../../../src/plan/yarn/yarn-amounts.js';
import { field } from '../cloths.js';

const order = fc.array(fc.nat(2), { minLength: 1, maxLength: 12 });

describe('winding', () => {
  test('the list in order adds up to the warp, and its runs to its changes', () => {
    fc.assert(
      fc.property(order, fc.integer({ min: 1, max: 200 }), (repeat, ends) => {
        const warp = field(repeat, ends);
        const list = windInOrder(warp);
        expect(list.at(-1)!.running).toBe(ends);
        expect(list.length - 1).toBe(changesIn(warp));
        for (const line of list) expect(line.peg).toBe(line.running % 2 === 0 ? 1 : 2);
        expect(list.flatMap((run) => new Array<number>(run.ends).fill(run.yarn))).toEqual(warp);
      }),
    );
  });

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
});
