import fc from 'fast-check';
import { expect, test } from 'vitest';
import { TopK } from '../../../src/search/evolve/top-k.js';

test('the best are the best of those offered, none of one name twice', () => {
  fc.assert(
    fc.property(fc.array(fc.nat(30), { minLength: 1 }), (offered) => {
      const best = new TopK<number>(5);
      // A thing of one name always has one score.
      for (const name of offered) best.offer(String(name), name, name);
      const names = [...new Set(offered)].sort((a, b) => b - a).slice(0, 5);
      expect(best.things()).toEqual(names);
    }),
  );
});

test('of equal scores the first offered stands first, and stays when there is no room', () => {
  const best = new TopK<string>(2);
  expect(best.takes('a', 0)).toBe(true);
  expect([best.offer('a', 1, 'a'), best.offer('b', 1, 'b'), best.offer('c', 1, 'c')]).toEqual([true, true, false]);
  expect([best.takes('c', 1), best.takes('c', 1.1), best.takes('a', 2)]).toEqual([false, true, false]);
  expect([best.things(), best.total()]).toEqual([['a', 'b'], 2]);
  expect(best.offer('d', 3, 'd')).toBe(true);
  expect([best.things(), best.total()]).toEqual([['d', 'a'], 4]);
});
