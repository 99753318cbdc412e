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
  return share(groupOf(analysis, squareCells && analysis.rows.length === analysis.columns.length) - 1, analysis);
}

/**
 * How many operations hold, the identity counted. They make a group, so that for some it follows from others whether they
 * hold: a half turn after a mirror is the other mirror, a quarter turn done twice a half turn, and a diagonal after a
 * mirror a quarter turn.
 */
function groupOf(analysis: FaceAnalysis, turns: boolean): number {
  const half = holds(analysis, 'half-turn');
  const mirror = holds(analysis, 'mirror-left-right') || (!half && holds(analysis, 'mirror-up-down'));
  const held = (half ? 2 : 1) * (mirror ? 2 : 1);
  if (!turns || (mirror && !half)) return held;
  const isTurned = holds(analysis, 'diagonal') || (!mirror && holds(analysis, half ? 'quarter-turn' : 'antidiagonal'));
  return isTurned ? 2 * held : held;
}

const holds = (analysis: FaceAnalysis, op: Operation): boolean =>
  findTranslation(analysis, ISOMETRIES[op]) !== undefined;

/** S = (log2 h + x)/4, h being one more than the operations that hold: with none they make a group of 1, 2, 4 or 8. */
function share(operations: number, { exchange }: FaceAnalysis): number {
  return (31 - Math.clz32(1 + operations) + (exchange === undefined ? 0 : 1)) / 4;
}

const WITHOUT_TURNS: readonly Operation[] = OPERATIONS.filter((op) => !ISOMETRIES[op].turned);

/** The point operations to examine, in their listed order. */
export function allowedOperations(analysis: FaceAnalysis, squareCells: boolean): readonly Operation[] {
  return squareCells && analysis.rows.length === analysis.columns.length ? OPERATIONS : WITHOUT_TURNS;
}
