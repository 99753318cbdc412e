import type { Face } from '../../cloth/face.js';
import { OPERATIONS, type Operation, type Symmetry } from '../model/figures.js';
import { analyse, type FaceAnalysis, findTranslation } from './analysis.js';
import { ISOMETRIES, type Vector } from './isometry.js';
import { withHalf } from './lattice.js';
import { planeGroup } from './plane-group.js';

/**
 * The operations and translations that carry a face to itself, with colours kept or exchanged. `squareCells`: the sett
 * is equal both ways. Quarter turns and diagonals are examined only then, and only if the smallest rectangular repeat
 * is square. Pass the analysis of the face if there is one, to save computing it again.
 */
export function symmetryOf(face: Face, squareCells: boolean, analysis: FaceAnalysis = analyse(face)): Symmetry {
  const { lattice, exchange } = analysis;
  const operations: { op: Operation; counterchange: boolean }[] = [];
  const keeping: Partial<Record<Operation, Vector>> = {};
  const all: Partial<Record<Operation, Vector>> = {};
  let exchanges = exchange !== undefined;
  for (const op of allowedOperations(analysis, squareCells)) {
    const carry = findTranslation(analysis, ISOMETRIES[op]);
    if (carry === undefined) continue;
    all[op] = carry;
    // Exchanging twice keeps: where a shift exchanges, an operation that exchanges keeps after that shift.
    if (carry.keepsColours) keeping[op] = carry;
    else if (exchange !== undefined) keeping[op] = { x: carry.x + exchange.x, y: carry.y + exchange.y };
    else exchanges = true;
    operations.push({ op, counterchange: keeping[op] === undefined });
  }
  const group = planeGroup(lattice, keeping);
  const whole = exchange === undefined ? lattice : withHalf(lattice, exchange);
  return {
    symmetry: share(operations.length, analysis),
    operations,
    shiftExchange: exchange !== undefined,
    planeGroup: group,
    colourGroup: exchanges ? `${planeGroup(whole, all)}/${group}` : null,
  };
}

/** S alone, as `symmetryOf` gives it. */
export function symmetryShare(analysis: FaceAnalysis, squareCells: boolean): number {
  let held = 0;
  for (const op of allowedOperations(analysis, squareCells)) {
    if (findTranslation(analysis, ISOMETRIES[op]) !== undefined) held++;
  }
  return share(held, analysis);
}

/** S = (log2 h + x)/4, h being one more than the operations that hold. */
function share(operations: number, { exchange }: FaceAnalysis): number {
  return (Math.log2(1 + operations) + (exchange === undefined ? 0 : 1)) / 4;
}

const WITHOUT_TURNS: readonly Operation[] = OPERATIONS.filter((op) => !ISOMETRIES[op].turned);

/** The point operations to examine, in their listed order. */
export function allowedOperations(analysis: FaceAnalysis, squareCells: boolean): readonly Operation[] {
  return squareCells && analysis.rows.length === analysis.columns.length ? OPERATIONS : WITHOUT_TURNS;
}
