import type { Drawdown } from '../../cloth/drawdown.js';
import type { Threads } from '../../cloth/face.js';
import { roomy, scratch } from '../../cloth/scratch.js';
import { blurWeights } from '../contrast/blur.js';

/**
 * What the threads of one system bring to the light of a cloth: a line along them for each place of the weave. Arrays may
 * be longer than what they hold.
 */
export class LightLines {
  /** `lines[place of the crossing threads in the weave * threads + thread]` */
  lines = new Float64Array(0);
  /** The same, thread by thread; of picks alone. */
  turned = new Float64Array(0);
  /** The least and the largest of the threads at one place; of ends alone. */
  least = new Float64Array(0);
  most = new Float64Array(0);
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

  /** Turns the lines, of which there are so many. */
  turn(count: number): void {
    const n = this.threads!.kind.length;
    this.turned = roomy(this.turned, n * count);
    for (let s = 0, to = 0; s < n; s++) {
      for (let at = s; at < n * count; at += n) this.turned[to++] = this.lines[at]!;
    }
  }

  /** Takes the least and the largest numbers, the weave repeating after so many of the threads and of the crossing ones. */
  takeRange(every: number, everyCrossing: number): void {
    const n = this.threads!.kind.length;
    this.least = roomy(this.least, every * everyCrossing).fill(Number.POSITIVE_INFINITY);
    this.most = roomy(this.most, every * everyCrossing).fill(Number.NEGATIVE_INFINITY);
    for (let line = 0, at = 0; line < everyCrossing * every; line += every) {
      for (let s = 0, place = line; s < n; s++, at++) {
        const light = this.lines[at]!;
        if (light < this.least[place]!) this.least[place] = light;
        if (light > this.most[place]!) this.most[place] = light;
        if (++place === line + every) place = line;
      }
    }
  }
}

const roomForKinds = scratch(Float64Array);
const roomForTwice = scratch(Float64Array);
const roomForNear = scratch(Float64Array);
const roomForOffsets = scratch(Int32Array);

/** The distances at which a blur has a weight at all round a length, and their weights. */
export interface Taps {
  readonly length: number;
  readonly places: Int32Array;
  readonly weights: Float64Array;
}

/** The taps of a blur for every length, computed once each. */
export function tapsOf(sigma: number): (length: number) => Taps {
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
