import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Drawdown, fromCells, isUp } from '../../../src/cloth/drawdown.js';
import { colourAt, type Face, faceMaker, type Woven, woven } from '../../../src/cloth/face.js';
import { contrastMeter } from '../../../src/score/contrast/contrast.js';
import { lightGatherer } from '../../../src/score/look/local-light.js';
import { patchBits } from '../../../src/score/look/patches.js';
import { shapesOf } from '../../../src/score/look/shapes.js';
import { outlineOf } from '../../../src/score/look/sharp.js';
import { solidShares } from '../../../src/score/look/solid.js';
import { structureAlone, structureLikeness } from '../../../src/score/look/structure-likeness.js';
import { analyse } from '../../../src/score/symmetry/analysis.js';
import { cellsOf, faces, meetings, twillFaces, wovenCloths, wovenFaces } from '../../faces.js';
import { runs } from '../../long.js';
import * as plain from '../../plain/look.js';

const anyValues = fc
  .array(fc.constantFrom(0, 0.25, 0.5, 1), { minLength: 3, maxLength: 3 })
  .map((values) => Float64Array.from(values));
/** Wide enough for more than one word of 32 cells, some with many ends at each place of the weave. */
const wideCloths = fc
  .record({
    ends: fc.constantFrom(2, 4, 8, 11, 13, 16),
    picks: fc.integer({ min: 1, max: 4 }),
    times: fc.integer({ min: 2, max: 9 }),
    up: fc.array(fc.boolean(), { minLength: 64, maxLength: 64 }),
    colours: fc.array(fc.nat(2), { minLength: 12, maxLength: 12 }),
    long: fc.integer({ min: 1, max: 9 }),
  })
  .map(({ ends, picks, times, up, colours, long }) => {
    const laid = (length: number): number[] =>
      Array.from({ length }, (_, s) => colours[Math.floor(s / long) % colours.length]!);
    return woven(
      fromCells(ends, picks, (j, i) => up[j * 16 + i]!),
      laid(ends * times),
      laid(picks * 2),
    );
  });
const valuesOf = (face: Face, values: ArrayLike<number>): number[][] =>
  cellsOf(face).map((row) => row.map((colour) => values[colour]!));

describe('by its kinds and cell by cell, a face has the same', () => {
  test('bits of its patches', () => {
    fc.assert(
      fc.property(wovenFaces, anyValues, (face, values) => {
        expect(patchBits(face, values)).toBeCloseTo(plain.bits(valuesOf(face, values)), 12);
      }),
    );
  });

  test('bits of its patches, where warps and wefts meet in turn', () => {
    fc.assert(
      fc.property(meetings, ({ met, values }) => {
        const faceOf = faceMaker();
        for (const cloth of met) {
          const face = faceOf(cloth);
          expect(patchBits(face, values)).toBeCloseTo(plain.bits(valuesOf(face, values)), 12);
        }
      }),
      { numRuns: runs(60) },
    );
  });

  test('crossings of the smallest piece', () => {
    fc.assert(
      fc.property(fc.oneof(wovenFaces, twillFaces), (face) => {
        const { width, height } = analyse(face).lattice;
        expect(width * height).toBe(plain.piece(cellsOf(face)));
      }),
    );
  });

  test.each([1, 1.4])('solid areas and outlines, picks over ends %d', (squareness) => {
    fc.assert(
      fc.property(fc.oneof(wovenCloths, wideCloths), anyValues, (cloth, values) => {
        const face = faceMaker()(cloth);
        const v = valuesOf(face, values);
        const light = lightGatherer(values, 2, 2 * squareness)(cloth);
        const shares = plain.solid(v, squareness);
        expect(solidShares(light).dark).toBeCloseTo(shares.dark, 12);
        expect(solidShares(light).light).toBeCloseTo(shares.light, 12);
        const outline = plain.outline(v, squareness);
        const { range, slope } = outlineOf(light, squareness);
        expect(range).toBeCloseTo(outline.range, 7);
        expect(slope).toBeCloseTo(outline.slope, 6);
      }),
      { numRuns: runs(60) },
    );
  });

  test.each([
    [0.46, 0.46],
    [0.4, 0.7],
  ])('shapes, over %d ends and %d picks', (across, along) => {
    fc.assert(
      fc.property(fc.oneof(wovenCloths, wideCloths), anyValues, (cloth, values) => {
        const face = faceMaker()(cloth);
        const light = lightGatherer(values, across, along)(cloth);
        const shapes = plain.shapes(valuesOf(face, values), across, along);
        expect(shapesOf(light)).toEqual(shapes);
        for (const enough of [1, 2, 4]) expect(shapesOf(light, enough).closed).toBe(Math.min(enough, shapes.closed));
      }),
      { numRuns: runs(60) },
    );
  });
});

const drawn = (cloth: Drawdown): number[][] =>
  Array.from({ length: cloth.picks }, (_, j) => Array.from({ length: cloth.ends }, (__, i) => +isUp(cloth, j, i)));

/** Cloths on structures of which many are symmetrical, so that not all shifts, half turns and mirrors of them differ. */
const onStructures = fc
  .record({
    structure: faces,
    times: fc.constantFrom(1, 2),
    warp: fc.array(fc.nat(2), { minLength: 24, maxLength: 24 }),
    weft: fc.array(fc.nat(2), { minLength: 24, maxLength: 24 }),
  })
  .map(({ structure, times, warp, weft }) => {
    const cloth = fromCells(structure.picks, structure.ends, (j, i) => colourAt(structure, i, j) === 0);
    return woven(cloth, warp.slice(0, cloth.ends * times), weft.slice(0, cloth.picks * times));
  });

const plainly = (cloth: Woven, values: Float64Array, squareness: number): number =>
  plain.unlike(valuesOf(faceMaker()(cloth), values), drawn(cloth.cloth), squareness);

describe('what the colours make of a structure', () => {
  test.each([1, 1.4])('is the same by warp and weft and cell by cell, picks over ends %d', (squareness) => {
    fc.assert(
      fc.property(onStructures, anyValues, (cloth, values) => {
        const variance = contrastMeter(squareness).variance(faceMaker()(cloth), values);
        const unlike = structureLikeness(values)(cloth, variance, structureAlone(cloth.cloth, squareness));
        expect(unlike).toBeCloseTo(plainly(cloth, values, squareness), 6);
      }),
    );
  });

  test('is the same where warps and wefts meet in turn', () => {
    fc.assert(
      fc.property(meetings, ({ met, values }) => {
        const measure = structureLikeness(values);
        const alone = new Map(met.map(({ cloth }) => [cloth, structureAlone(cloth, 1)]));
        for (const cloth of met) {
          const variance = contrastMeter(1).variance(faceMaker()(cloth), values);
          expect(measure(cloth, variance, alone.get(cloth.cloth)!)).toBeCloseTo(plainly(cloth, values, 1), 6);
        }
      }),
      { numRuns: runs(40) },
    );
  });

  test('is nothing where all the warp is dark and all the weft light, or the other way about', () => {
    fc.assert(
      fc.property(onStructures, fc.boolean(), ({ cloth }, dark) => {
        const values = Float64Array.of(0, 1);
        const plainest = woven(cloth, new Uint8Array(cloth.ends).fill(+dark), new Uint8Array(cloth.picks).fill(+!dark));
        const variance = contrastMeter(1).variance(faceMaker()(plainest), values);
        expect(structureLikeness(values)(plainest, variance, structureAlone(cloth, 1))).toBeCloseTo(0, 9);
      }),
    );
  });
});
