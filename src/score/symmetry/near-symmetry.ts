import type { Face } from '../../cloth/face.js';
import { type Complex, transform } from '../contrast/fourier.js';
import type { Nearly, Symmetry } from '../model/figures.js';
import { analyse, type FaceAnalysis } from './analysis.js';
import { ISOMETRIES, type Isometry } from './isometry.js';
import { allowedOperations } from './symmetry.js';

/** Below this share of agreeing cells an operation is not near. */
const NEAR = 0.8;

/**
 * Of the allowed operations that do not hold, the one with the largest share of agreeing cells at its best shift,
 * colours kept or exchanged; of equals the first listed. Undefined if this share is below 0.8 or all operations hold.
 * It tries every shift, so it is used for shown cloths only.
 */
export function nearlyOf(
  face: Face,
  squareCells: boolean,
  symmetry: Symmetry,
  analysis: FaceAnalysis = analyse(face),
): Nearly | undefined {
  const missing = allowedOperations(analysis, squareCells).filter(
    // A quarter turn back agrees as well as its opposite, which is listed before it.
    (op) => op !== 'quarter-turn-back' && symmetry.operations.every((held) => held.op !== op),
  );
  const agreements = bestAgreements(
    analysis,
    missing.map((op) => ISOMETRIES[op]),
  );
  let nearest: Nearly | undefined;
  agreements.forEach((agreement, at) => {
    if (agreement >= NEAR && agreement > (nearest?.agreement ?? 0)) nearest = { op: missing[at]!, agreement };
  });
  return nearest;
}

/**
 * For each isometry the largest share, over all shifts, of cells that agree, colours kept or (of two) exchanged.
 *
 * The number of agreeing cells is a correlation, computed for all shifts at once from spectra and rounded to the whole
 * number that it is. Two isometries share one transform, as its real and imaginary parts.
 */
export function bestAgreements(face: FaceAnalysis, isometries: readonly Isometry[]): number[] {
  const whole = face.rows.length * face.columns.length;
  const two = face.shown === 2;
  // Two colours as 1 and −1: the sum of products is cells that agree less cells that do not.
  const spectra = two ? [spectrumOf(face, 0, -1)] : [...new Set(face.cells)].map((cell) => spectrumOf(face, cell, 0));
  const agreeing = (sum: number): number => Math.round(two ? (whole + sum) / 2 : sum);
  return isometries.flatMap((_, at) => {
    if (at % 2 === 1) return [];
    const pair = isometries.slice(at, at + 2);
    const sums = correlations(face, spectra, pair);
    return pair.map((_, part) => {
      const { least, most } = range(part === 0 ? sums.re : sums.im);
      return Math.max(agreeing(most / whole), two ? whole - agreeing(least / whole) : 0) / whole;
    });
  });
}

/** Spectrum of a face, its cells of one value being 1 and all others `other`. */
function spectrumOf({ rows, columns, cells }: FaceAnalysis, value: number, other: number): Complex {
  const field = new Float64Array(rows.length * columns.length);
  for (let j = 0, at = 0; j < rows.length; j++) {
    const row = rows.word[j]! * columns.kinds;
    for (let i = 0; i < columns.length; i++, at++) field[at] = cells[row + columns.word[i]!] === value ? 1 : other;
  }
  return transform({ re: field, im: new Float64Array(field.length) }, rows.length, columns.length);
}

/**
 * The correlation Σ_x a(x)·a(g·x + t) of fields with their images under one isometry g (`re`) and another (`im`), for
 * every shift t in some order, times the number of cells. Its spectrum at frequency k is A(k)·A(gᵀk)*.
 */
function correlations(face: FaceAnalysis, spectra: readonly Complex[], isometries: readonly Isometry[]): Complex {
  const height = face.rows.length;
  const width = face.columns.length;
  const product = { re: new Float64Array(height * width), im: new Float64Array(height * width) };
  isometries.forEach(({ turned, across, along }, part) => {
    for (const { re, im } of spectra) {
      for (let l = 0, at = 0; l < height; l++) {
        for (let k = 0; k < width; k++, at++) {
          const column = turned ? along * l : across * k;
          const row = turned ? across * k : along * l;
          const there = (row < 0 ? row + height : row) * width + (column < 0 ? column + width : column);
          const real = re[at]! * re[there]! + im[at]! * im[there]!;
          const imaginary = im[at]! * re[there]! - re[at]! * im[there]!;
          product.re[at]! += part === 0 ? real : -imaginary;
          product.im[at]! += part === 0 ? imaginary : real;
        }
      }
    }
  });
  return transform(product, height, width);
}

function range(values: Float64Array): { least: number; most: number } {
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  for (const value of values) {
    if (value < least) least = value;
    if (value > most) most = value;
  }
  return { least, most };
}
