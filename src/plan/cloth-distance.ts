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
  /** Light and dark of a square piece, cell by cell from 0 to 1, as far as the eye gathers them. */
  readonly picture: Float64Array;
}

/** Ends and picks across the piece that is compared, and the squares that the eye gathers. */
const PIECE = 48;
const SQUARE = 3;

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
 * How unlike two cloths are, from 0 (the same in all that is compared) to 1: the mean of the difference of their
 * traits (tone, line, figure, symmetry, dark share, runs) and that of their pictures, both laid with end 1 and the
 * first pick in the corner, as two samples are laid side by side.
 */
export function unlikeness(a: Portrait, b: Portrait): number {
  return (mean(a.traits, b.traits) + mean(a.picture, b.picture)) / 2;
}

function gathered(face: Face, light: Float64Array): Float64Array {
  const side = PIECE / SQUARE;
  const picture = new Float64Array(side * side);
  for (let j = 0; j < PIECE; j++) {
    for (let i = 0; i < PIECE; i++) {
      const at = Math.floor(j / SQUARE) * side + Math.floor(i / SQUARE);
      picture[at] = picture[at]! + light[colourAt(face, j % face.picks, i % face.ends)]! / SQUARE ** 2;
    }
  }
  return picture;
}

function mean(a: ArrayLike<number>, b: ArrayLike<number>): number {
  let sum = 0;
  for (let k = 0; k < a.length; k++) sum += Math.abs(a[k]! - b[k]!);
  return sum / a.length;
}
