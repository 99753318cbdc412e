import fc from 'fast-check';
import { expect, test } from 'vitest';
import { faceMaker } from '../../../src/cloth/face.js';
import { lightGatherer, rangeOf } from '../../../src/score/look/local-light.js';
import { cellsOf, lightAt, meetings } from '../../faces.js';
import { runs } from '../../long.js';
import { blurred } from '../../plain/contrast.js';

test.each([
  [2, 2],
  [0.4, 0.7],
])(
  'the light of warps and wefts that meet in turn is their face blurred, over %d ends and %d picks',
  (across, along) => {
    fc.assert(
      fc.property(meetings, ({ met, values }) => {
        const gather = lightGatherer(values, across, along);
        for (const cloth of met) {
          const v = cellsOf(faceMaker()(cloth)).map((row) => row.map((colour) => values[colour]!));
          const plain = blurred(v, across, along).flat();
          const light = gather(cloth);
          const cells = lightAt(light);
          expect(cells.length).toBe(plain.length);
          for (const [at, cell] of plain.entries()) expect(cells[at]).toBeCloseTo(cell, 7);
          expect(rangeOf(light)).toEqual({ least: Math.min(...cells), most: Math.max(...cells) });
        }
      }),
      { numRuns: runs(60) },
    );
  },
);
