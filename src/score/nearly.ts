import type { Face } from '../cloth/face.js';
import { analyse, type FaceAnalysis } from './analysis.js';
import type { Nearly, Symmetry } from './figures.js';
import { ISOMETRIES, type Isometry } from './isometry.js';
import { allowedOperations } from './symmetry.js';

/** Below this share of agreeing cells an operation is not near. */
const NEAR = 0.8;

/**
 * The allowed operation that does not hold with the largest share of agreeing cells at its best shift, colours kept
 * or exchanged; the first listed of equals. Undefined where that share is below 0.8 (or all hold). For shown cloths:
 * tries every shift.
 */
export function nearlyOf(
  face: Face,
  squareCells: boolean,
  symmetry: Symmetry,
  analysis: FaceAnalysis = analyse(face),
): Nearly | undefined {
  let nearest: Nearly | undefined;
  for (const op of allowedOperations(analysis, squareCells)) {
    if (symmetry.operations.some((held) => held.op === op)) continue;
    const agreement = bestAgreement(analysis, ISOMETRIES[op]);
    if (agreement >= NEAR && agreement > (nearest?.agreement ?? 0)) nearest = { op, agreement };
  }
  return nearest;
}

/** The largest share, over all shifts, of cells that agree, colours kept or (of two) exchanged. */
export function bestAgreement(face: FaceAnalysis, isometry: Isometry): number {
  const { rows, columns, lattice } = face;
  const source = isometry.turned ? columns : rows;
  const whole = rows.length * columns.length;
  let best = 0;
  for (let x = 0; x < columns.length; x++) {
    const along = strandAgreement(face, isometry, x);
    const offset = isometry.along === 1 ? 0 : rows.length;
    // Shifts that differ by a translation of the lattice agree equally, so a part of the picks is enough.
    for (let y = 0; y < lattice.height; y++) {
      let agreeing = 0;
      for (let at = 0; at < source.length; at++) {
        agreeing += along[source.word[at]! * rows.kinds + rows.word[offset + y + isometry.along * at]!]!;
      }
      best = Math.max(best, agreeing, face.shown === 2 ? whole - agreeing : 0);
    }
  }
  return best / whole;
}

/**
 * For each kind of row (of column, where turned) beside each kind of row: on how many cells the first, carried by
 * the isometry and shifted by x ends, shows the colour of the second.
 */
function strandAgreement(face: FaceAnalysis, { turned, across }: Isometry, x: number): Int32Array {
  const { rows, columns, cells } = face;
  const strands = turned ? columns : rows;
  const crossed = turned ? rows : columns;
  const own = turned ? face.turned : cells;
  const offset = across === 1 ? x : x + columns.length;
  const agreeing = new Int32Array(strands.kinds * rows.kinds);
  for (let s = 0; s < strands.kinds; s++) {
    for (let r = 0; r < rows.kinds; r++) {
      let sum = 0;
      for (let at = 0; at < crossed.length; at++) {
        const there = columns.word[offset + across * at]!;
        if (own[s * crossed.kinds + crossed.word[at]!] === cells[r * columns.kinds + there]) sum++;
      }
      agreeing[s * rows.kinds + r] = sum;
    }
  }
  return agreeing;
}
