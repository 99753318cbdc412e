import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { faceMaker } from '../../../src/cloth/face.js';
import { PairContrast } from '../../../src/score/contrast/pair-contrast.js';
import { cellsOf, meetings } from '../../faces.js';
import { runs } from '../../long.js';
import * as plain from '../../plain/contrast.js';

describe('warps and wefts that meet in turn have the contrast that their cloth has cell by cell', () => {
  test.each([1, 0.8, 1.5])('picks over ends %d', (squareness) => {
    fc.assert(
      fc.property(meetings, ({ met, values }) => {
        const pairs = new PairContrast(squareness, values);
        for (const cloth of met) {
          const v = cellsOf(faceMaker()(cloth)).map((row) => row.map((colour) => values[colour]!));
          const figures = pairs.motif(cloth);
          expect(figures.tone).toBeCloseTo(plain.tone(v, squareness), 6);
          expect(figures.line).toBeCloseTo(plain.line(v, squareness), 6);
          expect(figures.darkShare).toBeCloseTo(1 - plain.mean(v), 12);
          expect(figures.contrast).toBeCloseTo(Math.min(1, Math.hypot(figures.tone, figures.line)), 12);
          expect(pairs.figure(cloth)).toBeCloseTo(plain.figure(v, squareness), 6);
        }
      }),
      { numRuns: runs(60) },
    );
  });
});
