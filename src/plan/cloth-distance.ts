import { drawdown } from '../cloth/drawdown.js';
import { colourAt, colourFace, type Face } from '../cloth/face.js';
import { values } from '../colour/yarn.js';
import { type Draft, isSquareSett, spacing } from '../draft/draft.js';
import { contrastMeter } from '../score/contrast.js';
import { traitsOf } from '../score/novelty.js';
import { symmetryOf } from '../score/symmetry.js';

/** A cloth as it is compared with others. */
export interface Portrait {
  readonly traits: readonly number[];
  /** Light and dark of a square piece, from 0 to 1, row by row, gathered over squares of threads as the eye does. */
  readonly picture: Float64Array;
}

/** Threads that are gathered into one square, squares on a side of the piece, and of the part that is laid on it. */
const GATHERED = 3;
const PIECE = 32;
const PART = 16;

/** A draft's portrait. */
export function portraitOf(draft: Draft): Portrait {
  const { across, along } = spacing(draft.sett);
  const face = colourFace(drawdown(draft), draft.warp, draft.weft);
  const light = values(draft.yarns);
  const contrast = contrastMeter(across / along).measure(face, light);
  const { symmetry } = symmetryOf(face, isSquareSett(draft.sett));
  return { traits: traitsOf(face, contrast, symmetry), picture: gathered(face, light) };
}

/**
 * How unlike two cloths are, from 0 to 1: the mean of the difference of their traits (tone, line, figure, symmetry,
 * dark share, runs) and of how little their pictures agree: 1 less the largest correlation, of either sign, of a part
 * of one laid anywhere on the other, mirrored or not. The same both ways.
 */
export function unlikeness(a: Portrait, b: Portrait): number {
  const traits = a.traits.reduce((sum, trait, t) => sum + Math.abs(trait - b.traits[t]!), 0) / a.traits.length;
  const agreement = (bestAgreement(a.picture, b.picture) + bestAgreement(b.picture, a.picture)) / 2;
  return (traits + 1 - agreement) / 2;
}

function gathered(face: Face, light: Float64Array): Float64Array {
  const picture = new Float64Array(PIECE * PIECE);
  for (let j = 0; j < PIECE * GATHERED; j++) {
    for (let i = 0; i < PIECE * GATHERED; i++) {
      const at = Math.floor(j / GATHERED) * PIECE + Math.floor(i / GATHERED);
      picture[at] = picture[at]! + light[colourAt(face, j % face.picks, i % face.ends)]! / GATHERED ** 2;
    }
  }
  return picture;
}

/** The largest correlation, of either sign, of the corner of one picture with any part of the other. */
function bestAgreement(corner: Float64Array, whole: Float64Array): number {
  let best = 0;
  for (const [flipX, flipY] of [
    [false, false],
    [true, false],
    [false, true],
    [true, true],
  ] as const) {
    const part = new Float64Array(PART * PART);
    for (let y = 0; y < PART; y++) {
      for (let x = 0; x < PART; x++) {
        part[y * PART + x] = corner[(flipY ? PART - 1 - y : y) * PIECE + (flipX ? PART - 1 - x : x)]!;
      }
    }
    for (let top = 0; top <= PIECE - PART; top++) {
      for (let left = 0; left <= PIECE - PART; left++) best = Math.max(best, correlation(part, whole, top, left));
    }
  }
  return best;
}

/** Size of the correlation of a part with the place of the other picture on which it lies; 1 where both are even. */
function correlation(part: Float64Array, whole: Float64Array, top: number, left: number): number {
  const count = PART * PART;
  let [a, b, aa, bb, ab] = [0, 0, 0, 0, 0];
  for (let y = 0; y < PART; y++) {
    for (let x = 0; x < PART; x++) {
      const p = part[y * PART + x]!;
      const w = whole[(top + y) * PIECE + left + x]!;
      a += p;
      b += w;
      aa += p * p;
      bb += w * w;
      ab += p * w;
    }
  }
  const [va, vb] = [aa / count - (a / count) ** 2, bb / count - (b / count) ** 2];
  if (va < 1e-9 || vb < 1e-9) return va < 1e-9 && vb < 1e-9 ? 1 : 0;
  return Math.min(1, Math.abs(ab / count - (a * b) / count ** 2) / Math.sqrt(va * vb));
}
