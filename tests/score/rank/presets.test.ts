import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { figuredPart } from '../../../src/score/parts/figure-parts.js';
import { PARTS, partsOf } from '../../../src/score/parts/parts.js';
import type { Measured } from '../../../src/score/parts/score-part.js';
import { PRESET_NAMES, PRESETS, presetOf } from '../../../src/score/rank/presets.js';

describe('the ways of looking', () => {
  test('each is told by its weights', () => {
    for (const view of PRESET_NAMES) expect(presetOf(PRESETS[view])).toBe(view);
    expect(presetOf({ ...PRESETS.calm, symmetry: 5 })).toBeUndefined();
  });

  test('weigh parts from 0 to 1 only', () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(
        fc.record({
          contrast: share,
          tone: share,
          line: share,
          figure: share,
          darkShare: share,
          solid: share,
          sharp: share,
          bits: fc.double({ min: 0, max: 4, noNaN: true }),
          shapes: fc.nat(40),
          unlike: share,
          symmetry: share,
          novelty: share,
        }),
        fc.integer({ min: 1, max: 40 }),
        (measured, ends) => {
          const floats = { longest: 2, longestMm: 2.54 };
          const ease = { warpChanges: ends, weftChanges: 0, shuttles: 2 };
          const sett = { ends: 20, picks: 20, per: 'inch' } as const;
          const parts = partsOf({ ...measured, floats, ease, ends, picks: 4, floatLimit: { threads: 7 }, sett });
          for (const part of PARTS) {
            expect(parts[part]).toBeGreaterThanOrEqual(0);
            expect(parts[part]).toBeLessThanOrEqual(1);
          }
        },
      ),
    );
  });

  // A study of weavers’ practice: 0.25 to 0.6 is best, and below 0.1 it is a plaid.
  test.each([
    [0, 0],
    [0.1, 0],
    [0.175, 0.5],
    [0.25, 1],
    [0.4, 1],
    [0.6, 1],
    [0.8, 0.5],
    [1, 0],
  ])('a share of figure of %d counts %d', (figure, part) => {
    expect(figuredPart.of({ figure } as Measured)).toBeCloseTo(part, 12);
  });
});
