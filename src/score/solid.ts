import type { Face } from '../cloth/face.js';
import { blurWeights } from './blur.js';

/** Blur in which a solid area is judged, in ends. */
const SIGMA = 2;
/** A place is solid where what the eye gathers is darker, or lighter, than this. */
const DARKER = 0.15;
const LIGHTER = 0.85;

/**
 * Share of the face that is clearly dark or clearly light, against what blends to half-tones. Motifs under about ten
 * ends have none.
 *
 * @param values 0 (dark) to 1 (light) of each palette index
 * @param squareness picks per centimetre over ends per centimetre: the blur down the warp is this times that across
 */
export function solidShare(face: Face, values: ArrayLike<number>, squareness: number): number {
  const { ends, picks, row, column, rowKinds, columnKinds, colour } = face;
  const across = reached(blurWeights(ends, SIGMA));
  const along = reached(blurWeights(picks, SIGMA * squareness));
  // Every kind of row blurred across; then, cell by cell, these blurred along.
  const byRow = new Float64Array(rowKinds * ends);
  for (let r = 0; r < rowKinds; r++) {
    for (let i = 0; i < ends; i++) {
      let sum = 0;
      for (const [d, weight] of across) sum += weight * values[colour[r * columnKinds + column[(i + d) % ends]!]!]!;
      byRow[r * ends + i] = sum;
    }
  }
  let solid = 0;
  const light = new Float64Array(ends);
  for (let j = 0; j < picks; j++) {
    light.fill(0);
    for (const [d, weight] of along) {
      for (let i = 0, from = row[(j + d) % picks]! * ends; i < ends; i++, from++) {
        light[i] = light[i]! + weight * byRow[from]!;
      }
    }
    for (const place of light) if (place < DARKER || place > LIGHTER) solid++;
  }
  return solid / (ends * picks);
}

/** The distances that have a weight at all. */
function reached(weights: Float64Array): (readonly [number, number])[] {
  return Array.from(weights, (weight, d) => [d, weight] as const).filter(([, weight]) => weight > 0);
}
