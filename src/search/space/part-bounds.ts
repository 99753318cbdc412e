import { ofEachPart, type Part } from '../../score/parts/parts.js';

/**
 * What bounds a part of a score before an order is laid: the contrast or the symmetry that a pair of orders can have at
 * the most, or the floats, which are those of the weave. Other parts are taken as 1: they are measured on the face,
 * which a bound is to spare.
 */
type Bound = 'contrast' | 'symmetry' | 'floats' | 'one';

/** The bound of each part; `one` where none is named. See `../bounded/BOUNDS.md`. */
export const PART_BOUNDS: Readonly<Record<Part, Bound>> = {
  ...ofEachPart(() => 'one' as const),
  contrast: 'contrast',
  symmetry: 'symmetry',
  float: 'floats',
};
