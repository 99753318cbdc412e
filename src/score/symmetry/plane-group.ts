import type { Operation, PlaneGroup } from '../model/figures.js';
import type { Vector } from './isometry.js';
import { type Lattice, rowSpacing } from './lattice.js';

/** The translation with which each point operation carries the pattern to itself; absent where none does. */
type Held = Readonly<Partial<Record<Operation, Vector>>>;

/** Two mirror directions at right angles, and the coordinate along which each slides. */
interface MirrorPair {
  readonly operations: readonly [Operation, Operation];
  readonly slides: readonly [Vector, Vector];
  /** Area of the square on the two coordinates, in cells. */
  readonly area: number;
}

const AXES: MirrorPair = {
  operations: ['mirror-left-right', 'mirror-up-down'],
  slides: [
    { x: 0, y: 1 },
    { x: 1, y: 0 },
  ],
  area: 1,
};

const DIAGONALS: MirrorPair = {
  operations: ['diagonal', 'antidiagonal'],
  slides: [
    { x: 1, y: 1 },
    { x: 1, y: -1 },
  ],
  area: 2,
};

/**
 * The plane group with these translations and point operations, in short International Tables notation, by the
 * recognition chart (D. Schattschneider, “The plane symmetry groups”, Amer. Math. Monthly 85, 1978): turns first,
 * then mirrors (true ones beside glides), then whether the lattice is centred on them.
 */
export function planeGroup(lattice: Lattice, held: Held): PlaneGroup {
  const onAxes = mirrors(lattice, held, AXES);
  const onDiagonals = mirrors(lattice, held, DIAGONALS);
  if (held['quarter-turn'] !== undefined) {
    if (onAxes.directions === 0) return 'p4';
    return onAxes.mirrors > 0 && onDiagonals.mirrors > 0 ? 'p4m' : 'p4g';
  }
  const { directions, mirrors: count, centred } = onAxes.directions > 0 ? onAxes : onDiagonals;
  if (held['half-turn'] !== undefined) {
    if (directions === 0) return 'p2';
    if (count < 2) return count === 0 ? 'pgg' : 'pmg';
    return centred ? 'cmm' : 'pmm';
  }
  if (directions === 0) return 'p1';
  if (count === 0) return 'pg';
  return centred ? 'cm' : 'pm';
}

/**
 * Of a pair of directions at right angles, how many have reflections, and how many have true mirrors. A reflection is a
 * true mirror if a translation of the pattern cancels its slide; otherwise it is a glide. The lattice is centred if it
 * is not the product of its steps along and across the mirrors.
 */
function mirrors(lattice: Lattice, held: Held, pair: MirrorPair) {
  let directions = 0;
  let count = 0;
  pair.operations.forEach((op, m) => {
    const by = held[op];
    if (by === undefined) return;
    directions++;
    const slide = pair.slides[m]!;
    if ((by.x * slide.x + by.y * slide.y) % rowSpacing(lattice, slide) === 0) count++;
  });
  const product = rowSpacing(lattice, pair.slides[0]) * rowSpacing(lattice, pair.slides[1]);
  return { directions, mirrors: count, centred: product < pair.area * lattice.width * lattice.height };
}
