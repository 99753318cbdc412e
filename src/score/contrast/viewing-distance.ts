import type { Face } from '../../cloth/face.js';
import { lightness } from '../../colour/yarn.js';
import { blurWeights } from './blur.js';

/** One minute of arc, in radians. */
export const ARC_MINUTE = Math.PI / 10800;
/** Viewing distances in metres: in the hand, on a table, across the room. */
export const DISTANCES = ['0.6', '2', '6'] as const;
/** Standard deviation of L* from which a motif reads, and below which it melts (common practice, no source). */
export const READS = 12;
export const MELTS = 6;

/**
 * Standard deviation of L* (0–100) of the face seen from each distance: luminance blurred by a Gaussian of one minute
 * of arc, in linear light, and only then turned into lightness.
 *
 * @param luminances Y (0–1) of each yarn
 * @param across, along millimetres from end to end and from pick to pick
 */
export function readsOf(
  face: Face,
  luminances: ArrayLike<number>,
  across: number,
  along: number,
): Record<(typeof DISTANCES)[number], number> {
  const at = (metres: string): number => {
    const sigma = ARC_MINUTE * Number(metres) * 1000;
    return spreadOfLightness(face, luminances, sigma / across, sigma / along);
  };
  return { '0.6': at('0.6'), '2': at('2'), '6': at('6') };
}

/** The farthest of the viewing distances from which a cloth reads; null if it reads from none. */
export function readsTo(
  reads: Readonly<Record<(typeof DISTANCES)[number], number>>,
): (typeof DISTANCES)[number] | null {
  return DISTANCES.findLast((metres) => reads[metres] >= READS) ?? null;
}

/** Metres at which the motif has 4 cycles a degree (contrast is seen best), and 30 (contrast is gone). */
export function viewingLimits(ends: number, across: number): { easyTo: number; goneBy: number } {
  const perCycle = (ends * across * 180) / Math.PI / 1000;
  return { easyTo: 4 * perCycle, goneBy: 30 * perCycle };
}

function spreadOfLightness(face: Face, luminances: ArrayLike<number>, across: number, along: number): number {
  const { ends, picks, rowKinds, row } = face;
  const wy = blurWeights(picks, along);
  const byRow = blurredRows(face, luminances, blurWeights(ends, across));
  const y = new Float64Array(ends);
  let sum = 0;
  let squares = 0;
  for (let j = 0; j < picks; j++) {
    const share = new Float64Array(rowKinds);
    for (let d = 0, pick = j; d < picks; d++) {
      const kind = row[pick]!;
      share[kind] = share[kind]! + wy[d]!;
      pick = pick + 1 === picks ? 0 : pick + 1;
    }
    y.fill(0);
    for (let kind = 0; kind < rowKinds; kind++) {
      const part = share[kind]!;
      if (part === 0) continue;
      for (let i = 0, at = kind * ends; i < ends; i++, at++) y[i] = y[i]! + part * byRow[at]!;
    }
    for (const seen of y) {
      const l = lightness(seen);
      sum += l;
      squares += l * l;
    }
  }
  const cells = ends * picks;
  return Math.sqrt(Math.max(0, squares / cells - (sum / cells) ** 2));
}

/** Luminance of one row of each kind, blurred along the row. */
function blurredRows(face: Face, luminances: ArrayLike<number>, weights: Float64Array): Float64Array {
  const { ends, rowKinds, columnKinds, column, colour } = face;
  const blurred = new Float64Array(rowKinds * ends);
  const light = new Float64Array(2 * ends);
  for (let kind = 0; kind < rowKinds; kind++) {
    // Written twice, so that it can be read round.
    for (let i = 0; i < ends; i++) {
      light[i] = light[i + ends] = luminances[colour[kind * columnKinds + column[i]!]!]!;
    }
    for (let d = 0; d < ends; d++) {
      const weight = weights[d]!;
      if (weight === 0) continue;
      for (let i = 0, at = kind * ends; i < ends; i++, at++) blurred[at] = blurred[at]! + weight * light[i + d]!;
    }
  }
  return blurred;
}
