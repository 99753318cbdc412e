import { modulo } from '../../draft/repeat.js';
import { gcd } from '../../order/necklace.js';
import type { Vector } from './isometry.js';

/**
 * All translations that carry a pattern to itself: every whole multiple of (width, 0) plus every whole multiple of
 * (shift, height), with 0 ≤ shift < width. One cell of the pattern holds width·height cells of cloth.
 */
export interface Lattice {
  readonly width: number;
  readonly shift: number;
  readonly height: number;
}

/** The lattice with one more translation; twice this translation must be in the lattice already. */
export function withHalf({ width, shift, height }: Lattice, extra: Vector): Lattice {
  const rows = Math.floor(extra.y / height);
  const x = extra.x - rows * shift;
  if (extra.y % height !== 0) return { width, shift: modulo(x, width), height: extra.y - rows * height };
  const narrow = gcd(width, modulo(x, width));
  return { width: narrow, shift: shift % narrow, height };
}

/** The smallest positive value of x·(steps across) + y·(steps along) over the lattice: the distance of its rows. */
export function rowSpacing({ width, shift, height }: Lattice, { x, y }: Vector): number {
  return gcd(width * Math.abs(x), Math.abs(shift * x + height * y));
}
