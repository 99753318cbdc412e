import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Elites } from '../../../src/search/evolve/elites.js';

describe('a grid', () => {
  const offers = fc.array(fc.tuple(fc.nat(9), fc.double({ min: 0, max: 1, noNaN: true })), { minLength: 1 });

  test('keeps the best of every cell, and neither coverage nor sum ever falls', () => {
    fc.assert(
      fc.property(offers, (offered) => {
        const elites = new Elites<number>(10);
        offered.forEach(([cell, score], thing) => {
          const before = elites.stats();
          const first = !offered.slice(0, thing).some(([other]) => other === cell);
          const better = offered.slice(0, thing).every(([other, known]) => other !== cell || known < score);
          expect(elites.offer(cell, score, thing)).toBe(first ? 'new' : better ? 'improved' : 'rejected');
          const now = elites.stats();
          expect(now.coverage).toBeGreaterThanOrEqual(before.coverage);
          expect(now.total).toBeGreaterThanOrEqual(before.total - 1e-12);
        });
        const best = new Map<number, number>();
        for (const [cell, score] of offered) best.set(cell, Math.max(best.get(cell) ?? 0, score));
        expect(elites.stats().filled).toBe(best.size);
        expect(elites.stats().total).toBeCloseTo(
          [...best.values()].reduce((a, b) => a + b),
          9,
        );
        expect(elites.stats().best).toBe(Math.max(...best.values()));
      }),
    );
  });

  test('refuses a cell that it has not, and a score below 0', () => {
    const elites = new Elites<string>(4);
    expect(() => elites.offer(4, 1, 'x')).toThrow('cell 4 of a grid of 4');
    expect(() => elites.offer(1, Number.NaN, 'x')).toThrow('a score of NaN');
  });
});
