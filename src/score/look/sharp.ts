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
  const { ends, picks, everyEnd, everyPick, slopesOfEnds, slopesOfPicks } = light;
  const { least, most } = rangeOf(light);
  const middle = (least + most) / 2;
  const tones = tonesOf(light, middle - ON_THE_LINE, middle + ON_THE_LINE);
  const { groups, words } = tones;
  const upright = uprightEdges(tones, ends, picks);
  const level = levelEdges(tones, picks);
  const slopes = roomForSlopes(ends * picks);
  const times = roomForTimes(ends * picks);
  const ofLine = squareness * squareness;
  /** Where each end finds what a pick brings. */
  const place = roomForPlaces(ends);
  for (let i = 0, x = 0; i < ends; i++, x = x + 2 === 2 * everyEnd ? 0 : x + 2) place[i] = x;
  const last = (ends / groups - 1) & 31;
  let count = 0;
  for (let j = 0, at = 0; j < picks; j++) {
    const row = at;
    const ofEnds = 2 * (j % everyPick) * ends;
    const ofPick = 2 * j * everyEnd;
    const next = j + 1 === picks ? 0 : row + groups * words;
    for (let group = 0; group < groups; group++) {
      for (let w = 0; w < words; w++, at++) {
        const before = upright[at]!;
        let after = upright[at + words]!;
        if (group + 1 === groups) {
          // The ends after those of the last group are those of the first, one place on.
          const over = w + 1 === words ? (upright[row]! & 1) << last : upright[row + w + 1]! << 31;
          after = (upright[row + w]! >>> 1) | over;
        }
        const [under, over] = [level[at]!, level[next + at - row]!];
        for (let left = before | after | under | over; left !== 0; left &= left - 1) {
          const bit = 31 - Math.clz32(left & -left);
          times[count] = ((before >>> bit) & 1) + ((after >>> bit) & 1) + ((under >>> bit) & 1) + ((over >>> bit) & 1);
          const i = (32 * w + bit) * groups + group;
          const end = ofEnds + 2 * i;
          const pick = ofPick + place[i]!;
          const across = slopesOfEnds[end]! + slopesOfPicks[pick]!;
          const along = slopesOfEnds[end + 1]! + slopesOfPicks[pick + 1]!;
          slopes[count++] = (across * across + along * along * ofLine) / 4;
        }
      }
    }
  }
  const slope = count === 0 ? 0 : Math.min(1, medianRoot(slopes, times, count) / CLEAN_STEP);
  return { range: most - least, slope };
}

const roomForPlaces = scratch(Int32Array);
const roomForUpright = scratch(Int32Array);
const roomForLevel = scratch(Int32Array);
const roomForSlopes = scratch(Float64Array);
const roomForTimes = scratch(Uint8Array);

/** Whether the line runs between an end and the one before it, pick by pick. */
function uprightEdges({ groups, words, dark, light }: Tones, ends: number, picks: number): Int32Array {
  const edges = roomForUpright(groups * words * picks);
  const last = (ends / groups - 1) & 31;
  for (let j = 0, at = 0; j < picks; j++) {
    // The ends before those of the first group are those of the last, one place back.
    const end = at + (groups - 1) * words;
    let darkBefore = dark[end + words - 1]! >>> last;
    let lightBefore = light[end + words - 1]! >>> last;
    for (let w = 0; w < words; w++, at++) {
      const [beforeDark, beforeLight] = [dark[end + w]!, light[end + w]!];
      edges[at] = (dark[at]! ^ ((beforeDark << 1) | darkBefore)) | (light[at]! ^ ((beforeLight << 1) | lightBefore));
      darkBefore = beforeDark >>> 31;
      lightBefore = beforeLight >>> 31;
    }
    edges[at - 1] = edges[at - 1]! & (-1 >>> (31 - last));
    for (; at < end + words; at++) edges[at] = (dark[at]! ^ dark[at - words]!) | (light[at]! ^ light[at - words]!);
  }
  return edges;
}

/** Whether the line runs between a pick and the one before it, pick by pick. */
function levelEdges({ groups, words, dark, light }: Tones, picks: number): Int32Array {
  const edges = roomForLevel(groups * words * picks);
  for (let at = 0, before = groups * words * (picks - 1); at < edges.length; at++, before++) {
    if (before === edges.length) before = 0;
    edges[at] = (dark[at]! ^ dark[before]!) | (light[at]! ^ light[before]!);
  }
  return edges;
}
