import type { Drawdown } from '../../cloth/drawdown.js';
import type { Threads } from '../../cloth/face.js';
import { roomy, scratch } from '../../cloth/scratch.js';
import { blurWeights } from '../contrast/blur.js';
import { LightOrder } from './light-order.js';

/**
 * What the threads of one system bring to the light of a cloth: a line along them for each place of the weave. Arrays may
 * be longer than what they hold.
 */
export class LightLines {
  /** Of ends `lines[place of the pick in the weave * ends + end]`; of picks `lines[pick * everyEnd + place of the end]`. */
  lines = new Float64Array(0);
  /** The least and the largest of the threads at one place; of ends alone. */
  least = new Float64Array(0);
  most = new Float64Array(0);
  /** Twice their slopes, as `slopesOf` has them, where they are asked for. */
  slopes = new Float64Array(0);
  private readonly order = new LightOrder();
  private isSorted = false;
  private cloth: Drawdown | undefined;
  private threads: Threads | undefined;

  /** Whether they are those of these threads already; from now on they will be. */
  hold(cloth: Drawdown, threads: Threads): boolean {
    if (this.cloth === cloth && this.threads === threads) return true;
    this.cloth = cloth;
    this.threads = threads;
    this.isSorted = false;
    return false;
  }

  /**
   * @param shown whether a kind of thread lies over a kind of crossing thread
   * @param own the blur along these threads, round all of them
   * @param crossing the blur along the crossing threads, round one repeat of the weave
   * @param isTurned whether lines are then turned, thread by thread
   */
  fill(
    values: ArrayLike<number>,
    shown: (kind: number, crossing: number) => boolean,
    own: Taps,
    crossing: Taps,
    crossingKind: Uint16Array,
    crossingKinds: number,
    isTurned: boolean,
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
    const lines = isTurned ? roomForLines(period * n) : roomy(this.lines, period * n);
    const near = roomForNear(crossingKinds);
    for (let place = 0; place < period; place++) {
      near.fill(0);
      for (let t = 0; t < crossing.places.length; t++) {
        const c = crossingKind[(place + crossing.places[t]!) % period]!;
        near[c] = near[c]! + crossing.weights[t]!;
      }
      weigh(along, offsets, near, lines, place * n, n);
    }
    this.lines = isTurned ? turned(lines, n, period, roomy(this.lines, period * n)) : lines;
  }

  /** The same in order of light, as `LightOrder` takes them. */
  sorted(...grid: [every: number, everyCrossing: number, threadStep: number, crossingStep: number]): LightOrder {
    if (!this.isSorted) this.order.fill(this.lines, this.threads!.kind.length, ...grid);
    this.isSorted = true;
    return this.order;
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

const roomForLines = scratch(Float64Array);
const roomForKinds = scratch(Float64Array);
const roomForTwice = scratch(Float64Array);
const roomForNear = scratch(Float64Array);
const roomForOffsets = scratch(Int32Array);

/** Lines of `count` numbers each, number by number of all lines. */
function turned(lines: Float64Array, count: number, all: number, room: Float64Array<ArrayBuffer>) {
  for (let s = 0, to = 0; s < count; s++) {
    for (let at = s; at < count * all; at += count) room[to++] = lines[at]!;
  }
  return room;
}

/**
 * The difference between the neighbours on both sides of each place of a grid that repeats, across and then along, two
 * numbers a place. They are written into `room` if it is large enough.
 */
export function slopesOf<T extends Float64Array>(grid: Float64Array, rows: number, columns: number, room: T): T {
  const slopes = roomy(room, 2 * rows * columns);
  for (let row = 0, at = 0; row < rows; row++) {
    const from = row * columns;
    const before = (row === 0 ? rows - 1 : row - 1) * columns;
    const after = (row + 1 === rows ? 0 : row + 1) * columns;
    for (let c = 0; c < columns; c++) {
      slopes[at++] = grid[from + (c + 1 === columns ? 0 : c + 1)]! - grid[from + (c === 0 ? columns - 1 : c - 1)]!;
      slopes[at++] = grid[after + c]! - grid[before + c]!;
    }
  }
  return slopes;
}

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
