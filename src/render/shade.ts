import type { Strands } from './strands.js';

/** How strongly the roundness of threads is shown: 0 not at all (threads finer than a point), 1 in full. */
export type Relief = number;

/** Light lost at a thread's edges, where a float dives under, in the line between threads, and on what lies under. */
const EDGE = 0.35;
const DIVE = 0.35;
const LINE = 0.6;
const UNDER = 0.3;

/** Bits of a crossing's state: the thread on top was on top at the crossing before, is on top at the one after. */
export const FROM_BEFORE = 1;
export const ON_AFTER = 2;

/**
 * What each picture point of one axis takes in of the strands across it: exact integrals of light, one entry for
 * every strand that a point touches. The entries of point `x` run from `first[x]` to `first[x + 1]`.
 */
export interface Cover {
  readonly first: Int32Array;
  readonly strand: Int32Array;
  /** Share of the point that lies on the strand's room. */
  readonly room: Float64Array;
  /** Light of the thread itself, brightest along its crown, darkest in the shadow line at its far edge. */
  readonly thread: Float64Array;
  /** Light of what lies under it, seen in the gap. */
  readonly gap: Float64Array;
  /** Light of a thread that crosses this strand, four entries by the state of the crossing. */
  readonly crossing: Float64Array;
}

/** The cover of `points` picture points by strands that repeat for ever, the first one beginning at 0. */
export function coverOf(strands: Strands, points: number, relief: Relief): Cover {
  const first = new Int32Array(points + 1);
  const touched: { strand: number; from: number; to: number }[] = [];
  for (let x = 0, strand = 0, start = 0; x < points; ) {
    const end = start + strands.pitch[strand]!;
    const from = Math.max(x, start);
    const to = Math.min(x + 1, end);
    if (to - from > 1e-9) touched.push({ strand, from: from - start, to: to - start });
    if (end <= x + 1) {
      strand = (strand + 1) % strands.pitch.length;
      start = end;
    }
    if (end >= x + 1) first[++x] = touched.length;
  }
  const cover: Cover = {
    first,
    strand: Int32Array.from(touched, (t) => t.strand),
    room: Float64Array.from(touched, (t) => t.to - t.from),
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

/** The integrals of one strand between two places of its room. */
export function lightOn(
  { pitch, before, body, line }: Strands,
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
