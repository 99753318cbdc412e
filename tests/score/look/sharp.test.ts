import fc from 'fast-check';
import { expect, test } from 'vitest';
import { outlineOf } from '../../../src/score/look/sharp.js';
import { lightOf } from '../../faces.js';
import * as plain from '../../plain/look.js';

/** Fields of four values, where many slopes are equal, and of any values, where hardly any are. */
const fields = fc
  .record({
    // Beyond 32 ends a pick is held in two words.
    ends: fc.oneof(fc.integer({ min: 1, max: 9 }), fc.integer({ min: 31, max: 34 })),
    picks: fc.integer({ min: 1, max: 9 }),
    levels: fc.constantFrom(3, 1e6),
  })
  .chain(({ ends, picks, levels }) => {
    const value = fc.nat(levels).map((level) => level / (4 * levels));
    return fc.array(fc.array(value, { minLength: ends, maxLength: ends }), { minLength: picks, maxLength: picks });
  });

test.each([1, 1.4, 0.5])('the outline is that found cell by cell, picks over ends %d', (squareness) => {
  fc.assert(
    fc.property(fields, (light) => {
      const { range, slope } = outlineOf(lightOf(light.flat(), light[0]!.length), squareness);
      const expected = plain.outlineOf(light, squareness);
      expect(range).toBeCloseTo(expected.range, 12);
      expect(slope).toBeCloseTo(expected.slope, 12);
    }),
  );
});
