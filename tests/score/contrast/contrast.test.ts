import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fromCells } from '../../../src/cloth/drawdown.js';
import { colourAt, colourFace, type Face } from '../../../src/cloth/face.js';
import { contrastMeter } from '../../../src/score/contrast/contrast.js';
import { runs } from '../../long.js';
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
      { numRuns: runs(150) },
    );
  });
});

// Figures computed once by a separate plain program: yarns D #1f2a44 and L #efe6d2, 20 ends and 20 picks per inch.
const VALUES = Float64Array.of(0, 1);
const twill = fromCells(4, 4, (j, i) => (i - j + 4) % 4 < 2);
const tabby = fromCells(2, 2, (j, i) => (i + j) % 2 === 0);
const order = (word: string): number[] => [...word].map((letter) => (letter === 'D' ? 0 : 1));
const { measure } = contrastMeter(1);

describe('worked figures', () => {
  test('hound’s tooth: 2/2 twill, 4 and 4 both ways', () => {
    const figures = measure(colourFace(twill, order('DDDDLLLL'), order('DDDDLLLL')), VALUES);
    expect(figures.contrast).toBeCloseTo(0.3207, 4);
    expect(figures.tone).toBeCloseTo(0.3183, 4);
    expect(figures.line).toBeCloseTo(0.0385, 4);
    expect(figures.figure).toBeCloseTo(0.2461, 4);
  });

  test('log cabin: plain weave, (DL)4 (LD)4 both ways', () => {
    const figures = measure(colourFace(tabby, order('DLDLDLDLLDLDLDLD'), order('DLDLDLDLLDLDLDLD')), VALUES);
    expect(figures.contrast).toBeCloseTo(0.5649, 4);
    expect(figures.tone).toBeCloseTo(0.1106, 4);
    expect(figures.line).toBeCloseTo(0.5539, 4);
    expect(figures.figure).toBeCloseTo(0.3518, 4);
  });
});
