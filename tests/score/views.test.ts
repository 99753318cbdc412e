import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { patchVariety } from '../../src/score/patches.js';
import { PARTS } from '../../src/score/rank.js';
import { partsOf } from '../../src/score/score.js';
import { solidShare } from '../../src/score/solid.js';
import { VIEW_NAMES, VIEWS, viewOf } from '../../src/score/views.js';
import { cellsOf, wovenFaces } from '../faces.js';
import * as plain from '../plain/views.js';

const anyValues = fc.array(fc.constantFrom(0, 0.25, 0.5, 1), { minLength: 3, maxLength: 3 });

describe('by its kinds and cell by cell, a face has the same', () => {
  test('variety of patches', () => {
    fc.assert(
      fc.property(wovenFaces, anyValues, (face, values) => {
        const v = cellsOf(face).map((row) => row.map((colour) => values[colour]!));
        expect(patchVariety(face, values)).toBeCloseTo(plain.bits(v) / 4, 12);
      }),
    );
  });

  test.each([1, 1.4])('share of solid areas, picks over ends %d', (squareness) => {
    fc.assert(
      fc.property(wovenFaces, anyValues, (face, values) => {
        const v = cellsOf(face).map((row) => row.map((colour) => values[colour]!));
        expect(solidShare(face, values, squareness)).toBeCloseTo(plain.solid(v, squareness), 12);
      }),
      { numRuns: 60 },
    );
  });
});

describe('the ways of looking', () => {
  test('each is told by its weights', () => {
    for (const view of VIEW_NAMES) expect(viewOf(VIEWS[view])).toBe(view);
    expect(viewOf({ ...VIEWS.calm, symmetry: 5 })).toBeUndefined();
  });

  test('weigh parts from 0 to 1 only', () => {
    fc.assert(
      fc.property(
        wovenFaces,
        fc.constantFrom(...VIEW_NAMES),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (face, view, x) => {
          const measured = {
            face,
            contrast: { contrast: x, tone: x, line: 0, figure: x, darkShare: x },
            symmetry: { symmetry: 0.5 },
            floats: { longest: 2, longestMm: 2.54 },
            ease: { warpChanges: face.ends, weftChanges: 0, shuttles: 2 },
          };
          const scale = {
            weights: VIEWS[view],
            floatLimit: { threads: 7 },
            classics: [{ name: 'a classic', traits: [0, 0, 0, 0, 0, 0, 0] }],
            values: [0, 1, 0.5],
            sett: { ends: 20, picks: 20, per: 'inch' } as const,
          };
          const parts = partsOf(measured, scale);
          for (const part of PARTS) {
            expect(parts[part]).toBeGreaterThanOrEqual(0);
            expect(parts[part]).toBeLessThanOrEqual(1);
          }
        },
      ),
    );
  });
});
