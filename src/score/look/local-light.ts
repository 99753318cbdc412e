import type { Face } from '../../cloth/face.js';
import { blurWeights } from '../contrast/blur.js';

/**
 * The values of a face as the eye gathers them: blurred by a Gaussian, cell by cell, first pick first.
 *
 * @param values 0 (dark) to 1 (light) of each palette index
 * @param across, along σ of the blur in ends and in picks
 */
export function localLight(face: Face, values: ArrayLike<number>, across: number, along: number): Float64Array {
  const { ends, picks, row, column, rowKinds, columnKinds, colour } = face;
  const overEnds = reached(blurWeights(ends, across));
  const overPicks = reached(blurWeights(picks, along));
  // Every kind of row blurred across; then, cell by cell, these blurred along.
  const byRow = new Float64Array(rowKinds * ends);
  for (let r = 0; r < rowKinds; r++) {
    for (let i = 0; i < ends; i++) {
      let sum = 0;
      for (const [d, weight] of overEnds) sum += weight * values[colour[r * columnKinds + column[(i + d) % ends]!]!]!;
      byRow[r * ends + i] = sum;
    }
  }
  const light = new Float64Array(ends * picks);
  for (let j = 0; j < picks; j++) {
    for (const [d, weight] of overPicks) {
      const from = row[(j + d) % picks]! * ends;
      for (let i = 0, to = j * ends; i < ends; i++, to++) light[to] = light[to]! + weight * byRow[from + i]!;
    }
  }
  return light;
}

/** The distances that have a weight at all. */
function reached(weights: Float64Array): (readonly [number, number])[] {
  return Array.from(weights, (weight, d) => [d, weight] as const).filter(([, weight]) => weight > 0);
}
