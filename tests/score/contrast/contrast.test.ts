import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fromCells } from '../../../src/cloth/drawdown.js';
import { colourAt, colourFace, type Face } from '../../../src/cloth/face.js';
import { contrastMeter } from '../../../src/score/contrast/contrast.js';
import * as plain from '../../plain/contrast.js';

/** Random interlacements with few kinds of threads, coloured by random orders: 1 to 3 yarns of any value. */
const faces = fc
  .record({
    ends: fc.integer({ min: 1, max: 12 }),
    picks: fc.integer({ min: 1, max: 12 }),
    threading: fc.array(fc.nat(3), { minLength: 12, maxLength: 12 }),
    treadling: fc.array(fc.nat(3), { minLength: 12, maxLength: 12 }),
    tie: fc.array(fc.boolean(), { minLength: 16, maxLength: 16 }),
    warp: fc.array(fc.nat(2), { minLength: 12, maxLength: 12 }),
    weft: fc.array(fc.nat(2), { minLength: 12, maxLength: 12 }),
    values: fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 3, maxLength: 3 }),
  })
  .map((r) => ({
    face: colourFace(
      fromCells(r.ends, r.picks, (j, i) => r.tie[r.treadling[j]! * 4 + r.threading[i]!]!),
      r.warp.slice(0, r.ends),
      r.weft.slice(0, r.picks),
    ),
    values: Float64Array.from(r.values),
  }));

const field = (face: Face, values: Float64Array): number[][] =>
  Array.from({ length: face.picks }, (_, j) =>
    Array.from({ length: face.ends }, (_, i) => values[colourAt(face, j, i)]!),
  );

describe('the contrast of a face by its kinds equals the contrast cell by cell', () => {
  test.each([1, 0.8, 1.5])('picks over ends %d', (squareness) => {
    const { measure } = contrastMeter(squareness);
    fc.assert(
      fc.property(faces, ({ face, values }) => {
        const v = field(face, values);
        const figures = measure(face, values);
        expect(figures.tone).toBeCloseTo(plain.tone(v, squareness), 6);
        expect(figures.line).toBeCloseTo(plain.line(v, squareness), 6);
        expect(figures.figure).toBeCloseTo(plain.figure(v, squareness), 6);
        expect(figures.darkShare).toBeCloseTo(1 - plain.mean(v), 12);
        expect(figures.contrast).toBeCloseTo(Math.min(1, Math.hypot(figures.tone, figures.line)), 12);
      }),
      { numRuns: 150 },
    );
  });
});
