import { colourAt, type Face } from '../cloth/face.js';
import { lightness } from '../colour/yarn.js';
import { blurWeights } from './blur.js';

/** One minute of arc. */
const ARC_MINUTE = Math.PI / 10800;
/** Metres from which a cloth is looked at: in the hand, on a table, across the room. */
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

/** Farthest distance at which contrast is best (4 cycles a degree), and the one at which it is gone (30), in metres. */
export function viewingLimits(ends: number, across: number): { easyTo: number; goneBy: number } {
  const perCycle = (ends * across * 180) / Math.PI / 1000;
  return { easyTo: 4 * perCycle, goneBy: 30 * perCycle };
}

function spreadOfLightness(face: Face, luminances: ArrayLike<number>, across: number, along: number): number {
  const { ends, picks, rowKinds, row } = face;
  const wx = blurWeights(ends, across);
  const wy = blurWeights(picks, along);
  const firstOf = Array.from({ length: rowKinds }, (_, kind) => row.indexOf(kind));
  const byRow = firstOf.map((j) => {
    const light = Float64Array.from({ length: ends }, (_, i) => luminances[colourAt(face, j, i)]!);
    return light.map((_, i) => wx.reduce((sum, w, d) => sum + w * light[(i + d) % ends]!, 0));
  });
  let sum = 0;
  let squares = 0;
  for (let j = 0; j < picks; j++) {
    const share = new Float64Array(rowKinds);
    for (let d = 0; d < picks; d++) share[row[(j + d) % picks]!] = share[row[(j + d) % picks]!]! + wy[d]!;
    for (let i = 0; i < ends; i++) {
      let y = 0;
      for (let kind = 0; kind < rowKinds; kind++) y += share[kind]! * byRow[kind]![i]!;
      const l = lightness(y);
      sum += l;
      squares += l * l;
    }
  }
  const cells = ends * picks;
  return Math.sqrt(Math.max(0, squares / cells - (sum / cells) ** 2));
}
