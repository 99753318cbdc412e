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
