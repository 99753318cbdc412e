import fc from 'fast-check';
import { expect, test } from 'vitest';
import { ParityUnionFind } from '../../../src/search/bounded/parity-union-find.js';

type Demand = readonly [a: number, b: number, unlike: number];

const demands = fc.record({ n: fc.integer({ min: 1, max: 5 }), m: fc.integer({ min: 1, max: 4 }) }).chain(({ n, m }) =>
  fc.record({
    n: fc.constant(n),
    m: fc.constant(m),
    asked: fc.array(fc.tuple(fc.nat(n + m), fc.nat(n + m), fc.nat(1)), { maxLength: 8 }),
  }),
);

/** Every way to colour warp, weft and tabby under which the demands hold. */
function colourings(count: number, asked: readonly Demand[]): number[][] {
  return Array.from({ length: 2 ** count }, (_, word) =>
    Array.from({ length: count }, (__, e) => (word >> e) & 1),
  ).filter((colour) => asked.every(([a, b, unlike]) => (colour[a]! ^ colour[b]!) === unlike));
}

/** Whether an order repeats a shorter one. */
const repeats = (order: readonly number[]): boolean =>
  order.some(
    (_, by) => by > 0 && order.length % by === 0 && order.every((c, e) => c === order[(e + by) % order.length]),
  );

test('demands are refused just where no colouring is left, or an order is settled that repeats a shorter one', () => {
  fc.assert(
    fc.property(demands, ({ n, m, asked }) => {
      const groups = new ParityUnionFind(n, m);
      groups.reset();
      const held: Demand[] = [];
      for (const demand of asked) {
        held.push(demand);
        const left = colourings(n + m + 1, held);
        const [warps, wefts] = [left.map((all) => all.slice(0, n)), left.map((all) => all.slice(n, n + m))];
        const isAllowed = groups.join(...demand);
        // An order is settled where two colourings of it, each other's exchange, are left.
        const settled = [warps, wefts].filter((orders) => new Set(orders.map(String)).size === 2);
        const fails = left.length === 0 || settled.some((orders) => orders[0]!.length > 1 && orders.every(repeats));
        expect(isAllowed).toBe(!fails);
        if (fails) return;
        expect(groups.allowsOrders()).toBe(![warps, wefts].some((orders) => orders.every(repeats)));
      }
    }),
    { numRuns: 300 },
  );
});

test('the demand on a part allows just the colourings of it that are left', () => {
  fc.assert(
    fc.property(demands, ({ n, m, asked }) => {
      const groups = new ParityUnionFind(n, m);
      groups.reset();
      if (!asked.every((demand) => groups.join(...demand))) return;
      const left = colourings(n + m + 1, asked);
      for (const [from, count] of [
        [0, n],
        [n, m],
      ] as const) {
        const part = groups.part(from, count);
        const allowed = colourings(count, []).filter((colour) =>
          part.every(({ mask, flips }) => {
            const inGroup = colour.flatMap((c, e) => ((mask >> e) & 1 ? [c ^ ((flips >> e) & 1)] : []));
            return new Set(inGroup).size === 1;
          }),
        );
        expect(new Set(allowed.map(String))).toEqual(new Set(left.map((all) => String(all.slice(from, from + count)))));
        for (const { mask, flips } of part) {
          expect(flips & (mask & -mask)).toBe(0);
          expect(flips & ~mask).toBe(0);
        }
      }
      groups.reset();
      expect(groups.part(0, n)).toEqual(Array.from({ length: n }, (_, e) => ({ mask: 1 << e, flips: 0 })));
    }),
    { numRuns: 300 },
  );
});
