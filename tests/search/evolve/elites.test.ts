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
    expect(() => elites.offer(-1, 1, 'x')).toThrow('cell -1 of a grid of 4');
    expect(() => elites.offer(0.5, 1, 'x')).toThrow('cell 0.5 of a grid of 4');
    expect(() => elites.offer(1, Number.NaN, 'x')).toThrow('a score of NaN');
    expect(() => elites.offer(1, -0.1, 'x')).toThrow('a score of -0.1; expected 0 or more');
    expect(elites.stats()).toEqual({ filled: 0, coverage: 0, total: 0, best: 0, mean: 0 });
    expect([elites.offer(0, 0, 'x'), elites.offer(3, 1, 'y')]).toEqual(['new', 'new']);
  });

  test('takes what fills a cell, even with nothing, and what is better; of equal things it keeps the first', () => {
    const elites = new Elites<string>(4);
    expect(elites.takes(2, 0)).toBe(true);
    expect(elites.offer(2, 0, 'nothing')).toBe('new');
    expect([elites.takes(2, 0), elites.takes(2, 0.1)]).toEqual([false, true]);
    expect(elites.offer(2, 0, 'another')).toBe('rejected');
    expect(elites.all()).toEqual(['nothing']);
    elites.offer(0, 0.5, 'half');
    elites.offer(1, 0.5, 'half as well');
    elites.offer(2, 0.75, 'best');
    expect(elites.all()).toEqual(['best', 'half', 'half as well']);
    expect(elites.filled()).toEqual([2, 0, 1]);
    expect(elites.stats()).toEqual({ filled: 3, coverage: 0.75, total: 1.75, best: 0.75, mean: 1.75 / 3 });
  });
});
