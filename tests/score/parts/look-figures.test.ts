import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fromCells } from '../../../src/cloth/drawdown.js';
import { faceMaker, woven } from '../../../src/cloth/face.js';
import { contrastMeter } from '../../../src/score/contrast/contrast.js';
import { Eye } from '../../../src/score/look/look.js';
import { lookOf } from '../../../src/score/parts/look-figures.js';
import { analyse } from '../../../src/score/symmetry/analysis.js';
import { cellsOf } from '../../faces.js';
import { runs } from '../../long.js';
import * as plain from '../../plain/look.js';

const side = fc.integer({ min: 1, max: 8 });
const colours = fc.array(fc.nat(2), { minLength: 8, maxLength: 8 });
const cloths = fc
  .record({
    ends: side,
    picks: side,
    up: fc.array(fc.boolean(), { minLength: 64, maxLength: 64 }),
    warp: colours,
    weft: colours,
    middle: fc.constantFrom(0, 0.25, 0.5, 1),
  })
  .map(({ ends, picks, up, warp, weft, middle }) => {
    const cloth = fromCells(ends, picks, (j, i) => up[j * 8 + i]!);
    const drawn = Array.from({ length: picks }, (_, j) => Array.from({ length: ends }, (__, i) => +up[j * 8 + i]!));
    return {
      cloth: woven(cloth, warp.slice(0, ends), weft.slice(0, picks)),
      drawn,
      values: Float64Array.of(0, middle, 1),
    };
  });

/** Three picks lie where one end does, so that nothing may take the one for the other. */
const SETT = { ends: 20, picks: 60, per: 'inch' } as const;
const SQUARENESS = 3;
const meter = contrastMeter(SQUARENESS);
/** One minute of arc at two metres, in ends. */
const MINUTE = (Math.PI / 10_800) * (2000 / 1.27);

test('cell by cell, a cloth has the same look, within bounds', () => {
  fc.assert(
    fc.property(cloths, ({ cloth, drawn, values }) => {
      const face = faceMaker()(cloth);
      const cells = cellsOf(face).map((row) => row.map((colour) => values[colour]!));
      const look = lookOf(new Eye(SETT, values, () => meter.variance(face, values)).turnTo(cloth, face, analyse(face)));
      const { dark, light } = plain.solid(cells, SQUARENESS);
      expect(look.solid).toBeCloseTo(2 * Math.min(dark, light), 12);
      expect(look.sharp).toBeCloseTo(plain.outline(cells, SQUARENESS).slope, 6);
      expect(look.bits).toBeCloseTo(plain.bits(cells), 12);
      expect(look.shapes).toBe(plain.shapes(cells, MINUTE, SQUARENESS * MINUTE).closed);
      expect(look.unlike).toBeCloseTo(plain.unlike(cells, drawn, SQUARENESS), 6);
      for (const share of [look.solid, look.sharp, look.bits / 4, look.unlike]) {
        expect(share).toBeGreaterThanOrEqual(0);
        expect(share).toBeLessThanOrEqual(1);
      }
    }),
    { numRuns: runs(60) },
  );
});
