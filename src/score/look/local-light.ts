import type { Drawdown } from '../../cloth/drawdown.js';
import type { Threads, Woven } from '../../cloth/face.js';
import { roomIn, roomy, scratch } from '../../cloth/scratch.js';
import { smallestPeriod } from '../../order/order.js';
import { blurWeights } from '../contrast/blur.js';

/**
 * Gathers the light of cloths as the eye does: the values of the face blurred by a Gaussian, cell by cell, first pick
 * first. Each cloth is overwritten by the next.
 *
 * A cell shows either its end or its pick. So its light is what the ends bring where they lie on the face, blurred, plus
 * what the picks bring where they do, blurred. From pick to pick, what the ends bring repeats with the weave, whatever
 * the colours: a few lines hold all of it. They depend on the warp alone and stay in its rooms, as those of the picks
 * do with the weft. One addition is left for each cell.
 *
 * @param values 0 (dark) to 1 (light) of each palette index
 * @param across, along σ of the blur in ends and in picks
 */
export function lightGatherer(
  values: ArrayLike<number>,
  across: number,
  along: number,
): (woven: Woven) => Float64Array {
  const linesOfEnds = roomIn(() => new Lines());
  const linesOfPicks = roomIn(() => new Lines());
  const wide = tapsOf(across);
  const high = tapsOf(along);
  const room = scratch(Float64Array);
  return ({ cloth, ends, picks }) => {
    const [width, height] = [ends.kind.length, picks.kind.length];
    const [everyEnd, everyPick] = periodsOf(cloth);
    const byEnds = linesOfEnds(everyPick * width > MOST_KEPT ? undefined : ends.rooms);
    const byPicks = linesOfPicks(everyEnd * height > MOST_KEPT ? undefined : picks.rooms);
    if (!byEnds.hold(cloth, ends)) {
      const step = cloth.endKinds;
      const shown = (end: number, pick: number): boolean => cloth.up[pick * step + end] === 1;
      byEnds.fill(values, shown, wide(width), high(everyPick), cloth.pickKind, cloth.pickKinds);
    }
    if (!byPicks.hold(cloth, picks)) {
      const step = cloth.endKinds;
      const shown = (pick: number, end: number): boolean => cloth.up[pick * step + end] === 0;
      byPicks.fill(values, shown, high(height), wide(everyEnd), cloth.endKind, cloth.endKinds);
    }
    const light = room(width * height);
    for (let j = 0, row = 0, from = 0; j < height; j++, row += width, from += width) {
      if (from === everyPick * width) from = 0;
      for (let x = 0; x < everyEnd; x++) {
        const ofPick = byPicks.lines[x * height + j]!;
        for (let i = x; i < width; i += everyEnd) light[row + i] = byEnds.lines[from + i]! + ofPick;
      }
    }
    return light;
  };
}

/** Most numbers that are kept with one warp or weft; longer weaves keep only the last. */
const MOST_KEPT = 2048;

/** What the threads of one system bring to the light of a cloth: a line along them for each place of the weave. */
class Lines {
  /** `lines[place of the crossing threads in the weave * threads + thread]` */
  lines = new Float64Array(0);
  private cloth: Drawdown | undefined;
  private threads: Threads | undefined;

  /** Whether they are those of these threads already; from now on they will be. */
  hold(cloth: Drawdown, threads: Threads): boolean {
    if (this.cloth === cloth && this.threads === threads) return true;
    this.cloth = cloth;
    this.threads = threads;
    return false;
  }

  /**
   * @param shown whether a kind of thread lies over a kind of crossing thread
   * @param own the blur along these threads, round all of them
   * @param crossing the blur along the crossing threads, round one repeat of the weave
   */
  fill(
    values: ArrayLike<number>,
    shown: (kind: number, crossing: number) => boolean,
    own: Taps,
    crossing: Taps,
    crossingKind: Uint16Array,
    crossingKinds: number,
  ): void {
    const { kind, weave, colour } = this.threads!;
    const n = kind.length;
    const period = crossing.length;
    // Under a crossing thread of each kind, blurred along these threads.
    const along = roomForKinds(crossingKinds * n);
    const twice = roomForTwice(2 * n);
    const offsets = roomForOffsets(crossingKinds);
    for (let c = 0; c < crossingKinds; c++) {
      offsets[c] = c * n;
      for (let s = 0; s < n; s++) {
        const k = kind[s]!;
        twice[s] = twice[s + n] = shown(weave[k]!, c) ? values[colour[k]!]! : 0;
      }
      weigh(twice, own.places, own.weights, along, c * n, n);
    }
    // And from there across, by how much of each kind is near.
    this.lines = roomy(this.lines, period * n);
    const near = roomForNear(crossingKinds);
    for (let place = 0; place < period; place++) {
      near.fill(0);
      for (let t = 0; t < crossing.places.length; t++) {
        const c = crossingKind[(place + crossing.places[t]!) % period]!;
        near[c] = near[c]! + crossing.weights[t]!;
      }
      weigh(along, offsets, near, this.lines, place * n, n);
    }
  }
}

const roomForKinds = scratch(Float64Array);
const roomForTwice = scratch(Float64Array);
const roomForNear = scratch(Float64Array);
const roomForOffsets = scratch(Int32Array);

/** The distances at which a blur has a weight at all round a length, and their weights. */
interface Taps {
  readonly length: number;
  readonly places: Int32Array;
  readonly weights: Float64Array;
}

/** The taps of a blur for every length, computed once each. */
function tapsOf(sigma: number): (length: number) => Taps {
  const known = new Map<number, Taps>();
  return (length) => {
    let taps = known.get(length);
    if (taps === undefined) {
      const all = blurWeights(length, sigma);
      const places = Int32Array.from(all.keys()).filter((place) => all[place]! > 0);
      taps = { length, places, weights: Float64Array.from(places, (place) => all[place]!) };
      known.set(length, taps);
    }
    return taps;
  };
}

const known = new WeakMap<Drawdown, readonly [ends: number, picks: number]>();

/** After how many ends, and picks, the weave repeats. */
function periodsOf(cloth: Drawdown): readonly [ends: number, picks: number] {
  let periods = known.get(cloth);
  if (periods === undefined) {
    periods = [smallestPeriod(cloth.endKind), smallestPeriod(cloth.pickKind)];
    known.set(cloth, periods);
  }
  return periods;
}

/** Writes from `at` on `count` weighted sums, each of the places one after the last; four are summed side by side. */
function weigh(
  from: Float64Array,
  offsets: Int32Array,
  weights: Float64Array,
  to: Float64Array,
  at: number,
  count: number,
): void {
  let i = 0;
  for (; i + 4 <= count; i += 4) {
    let a = 0;
    let b = 0;
    let c = 0;
    let d = 0;
    for (let t = 0; t < weights.length; t++) {
      const weight = weights[t]!;
      const place = offsets[t]! + i;
      a += weight * from[place]!;
      b += weight * from[place + 1]!;
      c += weight * from[place + 2]!;
      d += weight * from[place + 3]!;
    }
    to[at + i] = a;
    to[at + i + 1] = b;
    to[at + i + 2] = c;
    to[at + i + 3] = d;
  }
  for (; i < count; i++) {
    let sum = 0;
    for (let t = 0; t < weights.length; t++) sum += weights[t]! * from[offsets[t]! + i]!;
    to[at + i] = sum;
  }
}
