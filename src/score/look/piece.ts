import type { Face } from '../../cloth/face.js';
import { analyser } from '../symmetry/analysis.js';

const analyse = analyser();

/** Crossings in the smallest piece from which shifts alone make the whole face: one cell of its lattice. */
export function pieceOf(face: Face): number {
  const { width, height } = analyse(face).lattice;
  return width * height;
}
