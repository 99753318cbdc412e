import fc from 'fast-check';
import { expect, test } from 'vitest';
import { lightGatherer } from '../../../src/score/look/local-light.js';
import { outlineOf } from '../../../src/score/look/sharp.js';
import { lightAt, lightOf, meetings } from '../../faces.js';
import { runs } from '../../long.js';
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

test('the same where warps and wefts meet in turn', () => {
  fc.assert(
    fc.property(meetings, ({ met, values }) => {
      const gather = lightGatherer(values, 2, 2);
      for (const cloth of met) {
        const light = gather(cloth);
        const cells = lightAt(light);
        const rows = Array.from({ length: light.picks }, (_, j) => cells.slice(j * light.ends, (j + 1) * light.ends));
        expect(outlineOf(light, 1).slope).toBeCloseTo(plain.outlineOf(rows, 1).slope, 9);
      }
    }),
    { numRuns: runs(100) },
  );
});
