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
        const list = windInOrder(warp, 10);
        expect(list.at(-1)!.running).toBe(ends);
        expect(list.length - 1).toBe(changesIn(warp));
        for (const line of list) expect(line.peg).toBe(line.running % 2 === 0 ? 1 : 2);
        expect(list.flatMap((run) => new Array<number>(run.ends).fill(run.yarn))).toEqual(warp);
      }),
    );
  });

  test('a counting tie stands at every tenth end after the first border, where a run ends there', () => {
    fc.assert(
      fc.property(order, fc.integer({ min: 1, max: 200 }), fc.nat(12), (repeat, ends, border) => {
        const tied = Array.from({ length: 20 }, (_, k) => border + 10 * (k + 1));
        for (const { running, tie } of windInOrder(field(repeat, ends), 10, border)) {
          expect(tie).toBe(tied.includes(running));
        }
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

  test('of a repeat too long for one counting tie every run is listed', () => {
    const order = [160, 80, 80, 80].flatMap((ends, at) => new Array<number>(ends).fill(at % 2));
    const { stretch, tieEvery } = windingOf([...order, ...order], 400);
    expect(stretch.map(({ ends, running }) => [ends, running])).toEqual([
      [160, 160],
      [80, 240],
      [80, 320],
      [80, 400],
    ]);
    expect(tieEvery).toBe(20);
  });
});
