import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dentingOf, dentsFilled, dentsOf } from '../../../src/plan/warp/denting.js';

describe('denting', () => {
  test('dents hold just the sett, none more than one end apart', () => {
    fc.assert(
      fc.property(fc.integer({ min: 4, max: 60 }), fc.integer({ min: 4, max: 20 }), (sett, reed) => {
        const dents = dentsOf(sett, reed);
        expect((dents.reduce((a, b) => a + b, 0) * reed) / dents.length).toBeCloseTo(sett, 9);
        expect(Math.max(...dents) - Math.min(...dents)).toBeLessThanOrEqual(1);
        const denting = dentingOf(sett, { dents: reed }, 'inch', 5);
        expect(dentsFilled(sett * 10, denting, 2)).toBe(reed * 10 + 2);
      }),
    );
  });
});
