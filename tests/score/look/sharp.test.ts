import fc from 'fast-check';
import { expect, test } from 'vitest';
import { outlineOf } from '../../../src/score/look/sharp.js';
import * as plain from '../../plain/look.js';

/** Fields of four values, where many slopes are equal, and of any values, where hardly any are. */
const fields = fc
  .record({
    ends: fc.integer({ min: 1, max: 9 }),
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
      const { range, slope } = outlineOf(Float64Array.from(light.flat()), light[0]!.length, squareness);
      const expected = plain.outlineOf(light, squareness);
      expect(range).toBeCloseTo(expected.range, 12);
      expect(slope).toBeCloseTo(expected.slope, 12);
    }),
  );
});
