import { scratch } from '../../cloth/scratch.js';

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
  const side = roomForSides(light.length);
  for (let at = 0; at < light.length; at++) {
    const above = light[at]! - middle;
    side[at] = Math.abs(above) < ON_THE_LINE ? 1 : above < 0 ? 0 : 2;
  }
  const slopes = roomForSlopes(4 * light.length);
  let count = 0;
  for (let j = 0; j < picks; j++) {
    const row = j * ends;
    const above = (j === 0 ? picks - 1 : j - 1) * ends;
    const below = (j + 1 === picks ? 0 : j + 1) * ends;
    for (let i = 0; i < ends; i++) {
      const left = row + (i === 0 ? ends - 1 : i - 1);
      const right = row + (i + 1 === ends ? 0 : i + 1);
      const here = side[row + i]!;
      const beyond =
        (side[left] === here ? 0 : 1) +
        (side[right] === here ? 0 : 1) +
        (side[above + i] === here ? 0 : 1) +
        (side[below + i] === here ? 0 : 1);
      if (beyond === 0) continue;
      const across = (light[right]! - light[left]!) / 2;
      const along = ((light[below + i]! - light[above + i]!) / 2) * squareness;
      slopes.fill(Math.hypot(across, along), count, count + beyond);
      count += beyond;
    }
  }
  const slope = count === 0 ? 0 : Math.min(1, median(slopes, count) / CLEAN_STEP);
  return { range: most - least, slope };
}

const roomForSides = scratch(Uint8Array);
const roomForSlopes = scratch(Float64Array);

/** The middle of the first `count` numbers, which it puts in another order; of an even count, the mean of the middle two. */
function median(numbers: Float64Array, count: number): number {
  const half = count >> 1;
  const upper = partition(numbers, count, half);
  if (count % 2 === 1) return upper;
  let lower = numbers[0]!;
  for (let at = 1; at < half; at++) if (numbers[at]! > lower) lower = numbers[at]!;
  return (lower + upper) / 2;
}

/**
 * Moves the number that is at place `k` when they are sorted to this place, with none larger before it, and returns it
 * (C. A. R. Hoare, Algorithm 65, Comm. ACM 4, 1961).
 */
function partition(numbers: Float64Array, count: number, k: number): number {
  let from = 0;
  let to = count - 1;
  while (from < to) {
    const pivot = numbers[(from + to) >> 1]!;
    let i = from;
    let j = to;
    while (i <= j) {
      while (numbers[i]! < pivot) i++;
      while (numbers[j]! > pivot) j--;
      if (i > j) break;
      const moved = numbers[i]!;
      numbers[i++] = numbers[j]!;
      numbers[j--] = moved;
    }
    if (k <= j) to = j;
    else if (k >= i) from = i;
    else break;
  }
  return numbers[k]!;
}
