import fc from 'fast-check';
import { expect, test } from 'vitest';
import { DEFAULT_RANK, figuresFor, PART, PARTS, partsOf, UNWEIGHED } from '../../../src/score/parts/parts.js';
import { runs } from '../../long.js';

const share = fc.double({ min: 0, max: 1, noNaN: true });
const measured = fc.record({
  contrast: share,
  tone: share,
  line: share,
  figure: share,
  darkShare: share,
  solid: share,
  sharp: share,
  bits: fc.double({ min: 0, max: 4, noNaN: true }),
  shapes: fc.nat(30),
  unlike: share,
  symmetry: share,
  novelty: share,
  floats: fc.record({ longest: fc.option(fc.integer({ min: 1, max: 40 })), longestMm: fc.constant(3) }),
  ease: fc.record({ warpChanges: fc.nat(40), weftChanges: fc.nat(40), shuttles: fc.integer({ min: 1, max: 4 }) }),
  ends: fc.integer({ min: 1, max: 400 }),
  picks: fc.integer({ min: 1, max: 400 }),
  floatLimit: fc.oneof(fc.record({ threads: fc.integer({ min: 1, max: 20 }) }), fc.record({ mm: fc.constant(9) })),
  sett: fc.constant({ ends: 20, picks: 18, per: 'inch' as const }),
});

test('every part is from 0 to 1, whatever was measured, and reads only the costly figures that it needs', () => {
  fc.assert(
    fc.property(measured, (figures) => {
      const parts = partsOf(figures);
      for (const part of PARTS) {
        expect(parts[part]).toBeGreaterThanOrEqual(0);
        expect(parts[part]).toBeLessThanOrEqual(1);
        const needs = figuresFor({ ...UNWEIGHED, [part]: 1 });
        const costly = (['solid', 'sharp', 'bits', 'shapes', 'unlike', 'figure', 'novelty'] as const).filter(
          (figure) => !needs.has(figure),
        );
        const without = { ...figures, ...Object.fromEntries(costly.map((figure) => [figure, Number.NaN])) };
        expect(PART[part].of(without)).toBe(parts[part]);
      }
    }),
    { numRuns: runs(100, 5000) },
  );
});

test('where nothing is asked, contrast, symmetry and short floats are weighed three, two and one', () => {
  expect(DEFAULT_RANK).toEqual({ ...UNWEIGHED, contrast: 3, symmetry: 2, float: 1 });
});
