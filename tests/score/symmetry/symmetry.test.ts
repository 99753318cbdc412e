import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { analyse } from '../../../src/score/symmetry/analysis.js';
import { nearlyOf } from '../../../src/score/symmetry/near-symmetry.js';
import { symmetryOf } from '../../../src/score/symmetry/symmetry.js';
import { cellsOf, faces } from '../../faces.js';
import { runs } from '../../long.js';
import * as plain from '../../plain/symmetry.js';

describe('the symmetry of a face by its kinds equals the symmetry cell by cell', () => {
  test.each([true, false])('square cells: %s', (square) => {
    fc.assert(
      fc.property(faces, (face) => {
        expect(symmetryOf(face, square)).toEqual(plain.symmetry(cellsOf(face), square));
      }),
      { numRuns: runs(400, 15_000) },
    );
  });

  test('nearly: the same operation at the same agreement', () => {
    fc.assert(
      fc.property(faces, fc.boolean(), (face, square) => {
        const near = nearlyOf(face, square, symmetryOf(face, square));
        const expected = plain.nearly(cellsOf(face), square);
        expect(near?.op).toBe(expected?.op);
        if (near !== undefined) expect(near.agreement).toBeCloseTo(expected!.agreement, 12);
      }),
      { numRuns: runs(150, 4000) },
    );
  });

  test('an analysis made before gives the same', () => {
    fc.assert(
      fc.property(faces, (face) => {
        expect(symmetryOf(face, true, analyse(face))).toEqual(symmetryOf(face, true));
      }),
    );
  });
});
