import type { Face } from '../cloth/face.js';
import { analyse, type FaceAnalysis, type Side } from './analysis.js';
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
  const own = isometry.turned ? strands(face.turned, columns, rows) : strands(face.cells, rows, columns);
  const there = strands(face.cells, rows, columns);
  const whole = rows.length * columns.length;
  const offset = isometry.along === 1 ? 0 : rows.length;
  let best = 0;
  for (let x = 0; x < columns.length; x++) {
    const agreeing = strandAgreement(own, there, isometry.across, x, columns.length);
    // Shifts that differ by a translation of the lattice agree equally, so a part of the picks is enough.
    for (let y = 0; y < lattice.height; y++) {
      let sum = 0;
      for (let at = 0; at < source.length; at++) {
        sum += agreeing[source.word[at]! * rows.kinds + rows.word[offset + y + isometry.along * at]!]!;
      }
      best = Math.max(best, sum, face.shown === 2 ? whole - sum : 0);
    }
  }
  return best / whole;
}

/** The cells of one strand of each kind, place by place, written twice. */
function strands(cells: Uint8Array, side: Side, crossed: Side): Uint8Array[] {
  return Array.from({ length: side.kinds }, (_, kind) =>
    Uint8Array.from(crossed.word, (crossing) => cells[kind * crossed.kinds + crossing]!),
  );
}

/**
 * For each kind of own strand beside each kind of row: on how many cells the first, read forwards or backwards and
 * shifted by x ends, shows the colour of the second.
 */
function strandAgreement(
  own: readonly Uint8Array[],
  there: readonly Uint8Array[],
  across: 1 | -1,
  x: number,
  length: number,
): Int32Array {
  const agreeing = new Int32Array(own.length * there.length);
  const from = across === 1 ? x : x + length;
  for (let s = 0, pair = 0; s < own.length; s++) {
    const strand = own[s]!;
    for (let r = 0; r < there.length; r++, pair++) {
      const row = there[r]!;
      let sum = 0;
      // The sign bit of (difference − 1) is set only where there is none: twice as fast as a comparison.
      for (let at = 0; at < length; at++) sum += ((strand[at]! ^ row[from + across * at]!) - 1) >>> 31;
      agreeing[pair] = sum;
    }
  }
  return agreeing;
}
