/** The steepest slope of a clean step from 0 to 1, blurred over two ends, for each end: 1/(σ√(2π)). */
const CLEAN_STEP = 1 / (2 * Math.sqrt(2 * Math.PI));
/** A value nearer to the middle than this counts as on the line; smaller differences are rounding errors. */
const ON_THE_LINE = 1e-9;

/** How light and dark stand against one another where they meet. */
export interface Outline {
  /** Difference of the darkest and the lightest place. */
  readonly range: number;
  /** Slope along the outline, as a share of the slope of a clean step from all dark to all light. */
  readonly slope: number;
}

/**
 * How crisp the outlines are. The outline is the line half way between the darkest and the lightest place. The measure
 * is the median slope at the cells on both sides of it; a cell counts once for each neighbour beyond the line, and its
 * slope is taken from its neighbours on both sides. Divided by the range from dark to light, it does not depend on
 * contrast: 1 is a clean step, and below 0.4 the outline is lost in half-tones (common practice).
 *
 * @param light values from 0 (dark) to 1 (light), gathered over two ends, cell by cell
 * @param squareness picks per centimetre over ends per centimetre: a slope for each pick, times this, is one for each
 * length of an end
 */
export function outlineOf(light: Float64Array, ends: number, squareness: number): Outline {
  const picks = light.length / ends;
  let least = Infinity;
  let most = -Infinity;
  for (const place of light) {
    if (place < least) least = place;
    if (place > most) most = place;
  }
  const middle = (least + most) / 2;
  const side = (place: number): number => (Math.abs(place - middle) < ON_THE_LINE ? 0 : Math.sign(place - middle));
  const slopes: number[] = [];
  for (let j = 0; j < picks; j++) {
    const row = j * ends;
    const above = (j === 0 ? picks - 1 : j - 1) * ends;
    const below = (j + 1 === picks ? 0 : j + 1) * ends;
    for (let i = 0; i < ends; i++) {
      const left = light[row + (i === 0 ? ends - 1 : i - 1)]!;
      const right = light[row + (i + 1 === ends ? 0 : i + 1)]!;
      const upper = light[above + i]!;
      const lower = light[below + i]!;
      const here = side(light[row + i]!);
      let slope = -1;
      for (const other of [left, right, upper, lower]) {
        if (side(other) === here) continue;
        if (slope < 0) slope = Math.hypot((right - left) / 2, ((lower - upper) / 2) * squareness);
        slopes.push(slope);
      }
    }
  }
  const slope = slopes.length === 0 ? 0 : Math.min(1, median(slopes) / CLEAN_STEP);
  return { range: most - least, slope };
}

/** The middle number; of an even count, the mean of the middle two. */
function median(numbers: number[]): number {
  const sorted = Float64Array.from(numbers).sort();
  const half = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2;
}
