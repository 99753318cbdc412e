import { scratch } from '../../cloth/scratch.js';
import { type LocalLight, rangeOf } from './local-light.js';
import { medianRoot } from './median-root.js';
import { type Tones, tonesOf } from './tones.js';

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
 * @param light values from 0 (dark) to 1 (light), gathered over two ends
 * @param squareness picks per centimetre over ends per centimetre: a slope for each pick, times this, is one for each
 * length of an end
 */
export function outlineOf(light: LocalLight, squareness: number): Outline {
  const { ends, picks } = light;
  const { least, most } = rangeOf(light);
  const middle = (least + most) / 2;
  const tones = tonesOf(light, middle - ON_THE_LINE, middle + ON_THE_LINE);
  const { words } = tones;
  const upright = uprightEdges(tones, ends, picks);
  const level = levelEdges(tones, picks);
  const slopes = roomForSlopes(ends * picks);
  const times = roomForTimes(ends * picks);
  const meter = new SlopeMeter(light, squareness);
  let count = 0;
  for (let j = 0, at = 0; j < picks; j++) {
    const row = at;
    meter.turnTo(j);
    const below = j + 1 === picks ? 0 : row + words;
    for (let w = 0; w < words; w++, at++) {
      const before = upright[at]!;
      const last = w + 1 === words;
      const after = (before >>> 1) | (last ? (upright[row]! & 1) << ((ends - 1) & 31) : upright[at + 1]! << 31);
      const [under, over] = [level[at]!, level[below + w]!];
      for (let left = before | after | under | over; left !== 0; left &= left - 1) {
        const bit = 31 - Math.clz32(left & -left);
        times[count] = ((before >>> bit) & 1) + ((after >>> bit) & 1) + ((under >>> bit) & 1) + ((over >>> bit) & 1);
        slopes[count++] = meter.at(32 * w + bit);
      }
    }
  }
  const slope = count === 0 ? 0 : Math.min(1, medianRoot(slopes, times, count) / CLEAN_STEP);
  return { range: most - least, slope };
}

const roomForUpright = scratch(Int32Array);
const roomForLevel = scratch(Int32Array);
const roomForSlopes = scratch(Float64Array);
const roomForTimes = scratch(Uint8Array);

/** Whether the line runs between an end and the one before it, pick by pick. */
function uprightEdges({ words, dark, light }: Tones, ends: number, picks: number): Int32Array {
  const edges = roomForUpright(words * picks);
  const last = (ends - 1) & 31;
  for (let row = 0; row < words * picks; row += words) {
    let darkBefore = dark[row + words - 1]! >>> last;
    let lightBefore = light[row + words - 1]! >>> last;
    for (let at = row; at < row + words; at++) {
      const [isDark, isLight] = [dark[at]!, light[at]!];
      edges[at] = (isDark ^ ((isDark << 1) | darkBefore)) | (isLight ^ ((isLight << 1) | lightBefore));
      darkBefore = isDark >>> 31;
      lightBefore = isLight >>> 31;
    }
    const beyond = row + words - 1;
    edges[beyond] = edges[beyond]! & (-1 >>> (31 - last));
  }
  return edges;
}

/** Whether the line runs between a pick and the one before it, pick by pick. */
function levelEdges({ words, dark, light }: Tones, picks: number): Int32Array {
  const edges = roomForLevel(words * picks);
  for (let at = 0, before = words * (picks - 1); at < edges.length; at++, before++) {
    if (before === edges.length) before = 0;
    edges[at] = (dark[at]! ^ dark[before]!) | (light[at]! ^ light[before]!);
  }
  return edges;
}

/** Measures the square of the slope at a cell, from its neighbours on all four sides. */
class SlopeMeter {
  private readonly light: LocalLight;
  private readonly squareness: number;
  /** The place of each end in the weave. */
  private readonly place: Int32Array;
  /** In hand: where the ends of a pick begin, and of its two neighbours; and what the picks themselves bring. */
  private ends = 0;
  private endsUnder = 0;
  private endsOver = 0;
  private pick = 0;
  private pickUnder = 0;
  private pickOver = 0;

  constructor(light: LocalLight, squareness: number) {
    this.light = light;
    this.squareness = squareness;
    this.place = roomForPlaces(light.ends);
    for (let i = 0; i < light.ends; i++) this.place[i] = i % light.everyEnd;
  }

  /** Takes a pick in hand. */
  turnTo(j: number): void {
    const { ends, picks, everyEnd, everyPick } = this.light;
    const under = j === 0 ? picks - 1 : j - 1;
    const over = j + 1 === picks ? 0 : j + 1;
    this.ends = (j % everyPick) * ends;
    this.endsUnder = (under % everyPick) * ends;
    this.endsOver = (over % everyPick) * ends;
    this.pick = j * everyEnd;
    this.pickUnder = under * everyEnd;
    this.pickOver = over * everyEnd;
  }

  /** The square of the slope at an end. */
  at(i: number): number {
    const { place, squareness } = this;
    const { ends, byEnds, byPicks } = this.light;
    const before = i === 0 ? ends - 1 : i - 1;
    const after = i + 1 === ends ? 0 : i + 1;
    const across =
      byEnds[this.ends + after]! -
      byEnds[this.ends + before]! +
      (byPicks[this.pick + place[after]!]! - byPicks[this.pick + place[before]!]!);
    const along =
      byEnds[this.endsOver + i]! -
      byEnds[this.endsUnder + i]! +
      (byPicks[this.pickOver + place[i]!]! - byPicks[this.pickUnder + place[i]!]!);
    return (across * across + along * along * squareness * squareness) / 4;
  }
}

const roomForPlaces = scratch(Int32Array);
