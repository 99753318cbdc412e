import { FROM_BEFORE, ON_AFTER } from './crossings.js';
import type { DrawnStrands } from './strands.js';

/** Strength of the shading of round threads: 0 none (threads finer than a point), 1 full. */
export type Relief = number;

/**
 * Share of light lost at the edges of a thread, at the ends of a float, in the line between threads, and underneath.
 */
const EDGE = 0.35;
const DIVE = 0.35;
const LINE = 0.6;
const UNDER = 0.3;

/** Positions within a strand are compared to this fraction (1/FINE) of a point; equal points are drawn once. */
const FINE = 1e6;

/**
 * The light that the picture points of one axis receive from the strands across it: exact integrals, one entry for each
 * strand that a point touches. Equal points share their entries; the entries of point `x` run from `first[point[x]]` to
 * `first[point[x] + 1]`.
 */
export interface Cover {
  readonly point: Int32Array;
  readonly first: Int32Array;
  readonly strand: Int32Array;
  /** Share of the point covered by the room of the strand. */
  readonly room: Float64Array;
  /** Share of the point covered by the first half of that room. */
  readonly half: Float64Array;
  /** Light of the thread itself, brightest along its crown, darkest in the shadow line at its far edge. */
  readonly thread: Float64Array;
  /** Light of the threads underneath, seen in the gap. */
  readonly gap: Float64Array;
  /** Light of a thread that crosses over this strand, four entries by the state of the crossing. */
  readonly crossing: Float64Array;
}

interface Touch {
  readonly strand: number;
  readonly from: number;
  readonly to: number;
}

/**
 * Computes the cover of `points` picture points by endlessly repeated strands, the first of which begins at 0. `same`
 * gives for each strand the first one that looks the same, whose entries are used for both.
 */
export function coverOf(strands: DrawnStrands, points: number, relief: Relief, same: ArrayLike<number>): Cover {
  const point = new Int32Array(points);
  const first = [0];
  const touched: Touch[] = [];
  const known = new Map<string, number>();
  touches(strands, points).forEach((touches, x) => {
    const alike = touches
      .map((t) => `${same[t.strand]} ${Math.round(t.from * FINE)} ${Math.round(t.to * FINE)}`)
      .join();
    let number = known.get(alike);
    if (number === undefined) {
      number = known.size;
      known.set(alike, number);
      touched.push(...touches);
      first.push(touched.length);
    }
    point[x] = number;
  });
  const cover: Cover = {
    point,
    first: Int32Array.from(first),
    strand: Int32Array.from(touched, (t) => same[t.strand]!),
    room: Float64Array.from(touched, (t) => t.to - t.from),
    half: Float64Array.from(touched, ({ strand, from, to }) => {
      const middle = strands.pitch[strand]! / 2;
      return Math.min(to, middle) - Math.min(from, middle);
    }),
    thread: new Float64Array(touched.length),
    gap: new Float64Array(touched.length),
    crossing: new Float64Array(touched.length * 4),
  };
  touched.forEach(({ strand, from, to }, at) => {
    const light = lightOn(strands, strand, from, to, relief);
    cover.thread[at] = light.thread;
    cover.gap[at] = light.gap;
    cover.crossing.set(light.crossing, at * 4);
  });
  return cover;
}

/** For each point, the strands that it touches, and the part of their rooms that it covers. */
function touches({ pitch }: DrawnStrands, points: number): Touch[][] {
  const touched: Touch[][] = Array.from({ length: points }, () => []);
  for (let x = 0, strand = 0, start = 0; x < points; ) {
    const end = start + pitch[strand]!;
    const from = Math.max(x, start);
    const to = Math.min(x + 1, end);
    if (to - from > 1e-9) touched[x]!.push({ strand, from: from - start, to: to - start });
    const isLast = end >= x + 1;
    if (end <= x + 1) {
      strand = (strand + 1) % pitch.length;
      start = end;
    }
    if (isLast) x++;
  }
  return touched;
}

/** Integrates the light of one strand between two positions in its room. */
export function lightOn(
  { pitch, before, body, line }: DrawnStrands,
  strand: number,
  from: number,
  to: number,
  relief: Relief,
): { readonly thread: number; readonly gap: number; readonly crossing: readonly number[] } {
  const room = pitch[strand]!;
  const half = body[strand]! / 2;
  const crown = before[strand]! + half;
  const within = (low: number, high: number, place: number) => Math.max(low, Math.min(high, place));
  const a = within(-half, half, from - crown);
  const b = within(-half, half, to - crown);
  const far = crown + half;
  const shadow = within(far, far + line[strand]!, to) - within(far, far + line[strand]!, from);
  const rounded = (t: number) => t - (relief * EDGE * t ** 3) / (3 * half * half);
  const lostSince = (t: number) => {
    const reach = room / 2;
    return relief * DIVE * (reach / 3) * (1 - Math.max(0, 1 - t / reach) ** 3);
  };
  const rising = lostSince(to) - lostSince(from);
  const diving = lostSince(room - from) - lostSince(room - to);
  return {
    thread: rounded(b) - rounded(a) + shadow * (1 - relief * LINE),
    gap: (to - from - (b - a) - shadow) * (1 - relief * UNDER),
    crossing: [0, FROM_BEFORE, ON_AFTER, FROM_BEFORE | ON_AFTER].map(
      (state) => to - from - (state & FROM_BEFORE ? 0 : rising) - (state & ON_AFTER ? 0 : diving),
    ),
  };
}
