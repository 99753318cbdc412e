import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fromCells } from '../../../src/cloth/drawdown.js';
import { colourFace, type Face, faceMaker } from '../../../src/cloth/face.js';
import { contrastMeter } from '../../../src/score/contrast/contrast.js';
import { lightGatherer } from '../../../src/score/look/local-light.js';
import { patchBits } from '../../../src/score/look/patches.js';
import { pieceOf } from '../../../src/score/look/piece.js';
import { shapesOf } from '../../../src/score/look/shapes.js';
import { outlineOf } from '../../../src/score/look/sharp.js';
import { solidShares } from '../../../src/score/look/solid.js';
import { structureAlone, unlikeStructure } from '../../../src/score/look/structure-likeness.js';
import { cellsOf, twillFaces, wovenCloths, wovenFaces } from '../../faces.js';
import { runs } from '../../long.js';
import * as plain from '../../plain/look.js';

const anyValues = fc
  .array(fc.constantFrom(0, 0.25, 0.5, 1), { minLength: 3, maxLength: 3 })
  .map((values) => Float64Array.from(values));
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

  test('crossings of the smallest piece', () => {
    fc.assert(
      fc.property(fc.oneof(wovenFaces, twillFaces), (face) => {
        expect(pieceOf(face)).toBe(plain.piece(cellsOf(face)));
      }),
    );
  });

  test.each([1, 1.4])('solid areas and outlines, picks over ends %d', (squareness) => {
    fc.assert(
      fc.property(wovenCloths, anyValues, (cloth, values) => {
        const face = faceMaker()(cloth);
        const v = valuesOf(face, values);
        const light = lightGatherer(values, 2, 2 * squareness)(cloth);
        const shares = plain.solid(v, squareness);
        expect(solidShares(light).dark).toBeCloseTo(shares.dark, 12);
        expect(solidShares(light).light).toBeCloseTo(shares.light, 12);
        const outline = plain.outline(v, squareness);
        const { range, slope } = outlineOf(light, face.ends, squareness);
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
      fc.property(wovenCloths, anyValues, (cloth, values) => {
        const face = faceMaker()(cloth);
        const light = lightGatherer(values, across, along)(cloth);
        expect(shapesOf(light, face.ends)).toEqual(plain.shapes(valuesOf(face, values), across, along));
      }),
      { numRuns: runs(60) },
    );
  });
});

const length = fc.integer({ min: 1, max: 4 });
const woven = fc
  .record({
    ends: length,
    picks: length,
    times: fc.constantFrom(1, 2),
    up: fc.array(fc.boolean(), { minLength: 16, maxLength: 16 }),
    warp: fc.array(fc.nat(2), { minLength: 8, maxLength: 8 }),
    weft: fc.array(fc.nat(2), { minLength: 8, maxLength: 8 }),
  })
  .map(({ ends, picks, times, up, warp, weft }) => {
    const cloth = fromCells(ends, picks, (j, i) => up[j * 4 + i]!);
    const face = colourFace(cloth, warp.slice(0, ends * times), weft.slice(0, picks * times));
    const drawn = Array.from({ length: picks }, (_, j) => Array.from({ length: ends }, (__, i) => +up[j * 4 + i]!));
    return { cloth, face, drawn };
  });

describe('what the colours make of a structure', () => {
  test.each([1, 1.4])('is the same folded on the weave and cell by cell, picks over ends %d', (squareness) => {
    fc.assert(
      fc.property(woven, anyValues, ({ cloth, face, drawn }, values) => {
        const variance = contrastMeter(squareness).variance(face, values);
        const unlike = unlikeStructure(face, values, variance, structureAlone(cloth, squareness));
        expect(unlike).toBeCloseTo(plain.unlike(valuesOf(face, values), drawn, squareness), 6);
      }),
    );
  });

  test('is nothing where all the warp is dark and all the weft light, or the other way about', () => {
    fc.assert(
      fc.property(woven, fc.boolean(), ({ cloth }, dark) => {
        const face = colourFace(
          cloth,
          new Uint8Array(cloth.ends).fill(+dark),
          new Uint8Array(cloth.picks).fill(+!dark),
        );
        const values = Float64Array.of(0, 1);
        const variance = contrastMeter(1).variance(face, values);
        expect(unlikeStructure(face, values, variance, structureAlone(cloth, 1))).toBeCloseTo(0, 9);
      }),
    );
  });
});
