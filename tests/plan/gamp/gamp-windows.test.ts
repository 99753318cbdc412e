import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { gampColours, rightSizes } from '../../../src/plan/gamp/gamp-windows.js';

describe('gamp', () => {
  test('right sizes are those of a plain search, nearest first below then above', () => {
    const size = fc.integer({ min: 1, max: 90 });
    fc.assert(
      fc.property(
        size,
        fc.integer({ min: 1, max: 12 }),
        fc.nat(9),
        fc.integer({ min: 2, max: 8 }),
        (wanted, n, gap, weave) => {
          const fits = (threads: number): boolean => threads % n === 0 && (threads + gap) % weave === 0;
          const all = Array.from({ length: 400 }, (_, k) => k + 1).filter(fits);
          const expected = fits(wanted)
            ? [wanted]
            : [all.filter((threads) => threads < wanted).at(-1), all.find((threads) => threads > wanted)];
          expect(rightSizes(wanted, n, gap, weave)).toEqual(expected.filter((threads) => threads !== undefined));
        },
      ),
    );
  });

  test('colours of a gamp: sections between separators', () => {
    const sections = [
      { order: [0, 1], threads: 4 },
      { order: [0], threads: 2 },
    ];
    expect(gampColours({ sections, separator: 2, yarn: 2 }).join('')).toBe('220101220022');
  });
});
