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
  const cells = light.length;
  let least = Infinity;
  let most = -Infinity;
  for (let at = 0; at < cells; at++) {
    const place = light[at]!;
    if (place < least) least = place;
    if (place > most) most = place;
  }
  const middle = (least + most) / 2;
  const last = cells - ends;
  const sides = roomForSides(ends);
  for (let i = 0; i < ends; i++) sides[i] = sideOf(light[last + i]! - middle);
  // Rows by their first cells: this one, the one before it, and so on. `sides` are those of the row before.
  const slopes = roomForSlopes(4 * cells);
  let count = 0;
  for (let row = 0, before = last, earlier = Math.max(0, last - ends); row < cells; row += ends) {
    const after = row === last ? 0 : row + ends;
    let side = sideOf(light[row + ends - 1]! - middle);
    for (let i = 0; i < ends; i++) {
      const here = sideOf(light[row + i]! - middle);
      // Where the line runs between two neighbours, both of them count.
      if (here !== side) {
        slopes[count++] = slopeSquared(light, before, row, after, i, ends, squareness);
        slopes[count++] = slopeSquared(light, before, row, after, i === 0 ? ends - 1 : i - 1, ends, squareness);
      }
      if (here !== sides[i]) {
        slopes[count++] = slopeSquared(light, before, row, after, i, ends, squareness);
        slopes[count++] = slopeSquared(light, earlier, before, row, i, ends, squareness);
      }
      sides[i] = here;
      side = here;
    }
    earlier = before;
    before = row;
  }
  const slope = count === 0 ? 0 : Math.min(1, medianRoot(slopes, count) / CLEAN_STEP);
  return { range: most - least, slope };
}

const roomForSides = scratch(Uint8Array);
const roomForSlopes = scratch(Float64Array);

/** Below the line, on it, above it. */
const sideOf = (above: number): 0 | 1 | 2 => (above <= -ON_THE_LINE ? 0 : above < ON_THE_LINE ? 1 : 2);

/** The square of the slope at a cell, from its neighbours on all four sides. */
function slopeSquared(
  light: Float64Array,
  before: number,
  row: number,
  after: number,
  i: number,
  ends: number,
  squareness: number,
): number {
  const across = (light[row + (i + 1 === ends ? 0 : i + 1)]! - light[row + (i === 0 ? ends : i) - 1]!) / 2;
  const along = ((light[after + i]! - light[before + i]!) / 2) * squareness;
  return across * across + along * along;
}

/** Classes of size into which numbers are counted. */
const CLASSES = 1024;
const counts = new Int32Array(CLASSES);

/**
 * The median of the square roots of the first `count` numbers from 0, an even count: the mean of the middle two. They
 * are counted by size first, so that only those of the middle class need be put in order. They are overwritten.
 */
function medianRoot(numbers: Float64Array, count: number): number {
  let most = 0;
  for (let at = 0; at < count; at++) if (numbers[at]! > most) most = numbers[at]!;
  if (most === 0) return 0;
  const scale = (CLASSES - 1) / most;
  counts.fill(0);
  for (let at = 0; at < count; at++) {
    const size = Math.trunc(numbers[at]! * scale);
    counts[size] = counts[size]! + 1;
  }
  const half = count / 2;
  let middle = 0;
  let smaller = 0;
  while (smaller + counts[middle]! <= half) smaller += counts[middle++]!;
  let inClass = 0;
  let lower = 0;
  for (let at = 0; at < count; at++) {
    const number = numbers[at]!;
    const size = Math.trunc(number * scale);
    if (size === middle) numbers[inClass++] = number;
    else if (size < middle && number > lower) lower = number;
  }
  const upper = partition(numbers, inClass, half - smaller);
  for (let at = 0; at < half - smaller; at++) if (numbers[at]! > lower) lower = numbers[at]!;
  return (Math.sqrt(lower) + Math.sqrt(upper)) / 2;
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
