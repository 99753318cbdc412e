import type { Face } from '../../cloth/face.js';
import { scratch } from '../../cloth/scratch.js';
import { blurWeights } from '../contrast/blur.js';

/**
 * The values of a face as the eye gathers them: blurred by a Gaussian, cell by cell, first pick first.
 *
 * @param values 0 (dark) to 1 (light) of each palette index
 * @param across, along σ of the blur in ends and in picks
 * @param light where they are written; of its own if none is given
 */
export function localLight(
  face: Face,
  values: ArrayLike<number>,
  across: number,
  along: number,
  light: Float64Array = new Float64Array(face.ends * face.picks),
): Float64Array {
  const { ends, picks, row, column, rowKinds, columnKinds, colour } = face;
  const overEnds = tapsFor(ends, across);
  const overPicks = tapsFor(picks, along);
  // Every kind of row blurred across, from the values of the row written twice; then, cell by cell, these along.
  const byRow = roomForRows(rowKinds * ends);
  const twice = roomForTwice(2 * ends);
  for (let r = 0; r < rowKinds; r++) {
    for (let i = 0; i < ends; i++) {
      twice[i] = twice[i + ends] = values[colour[r * columnKinds + column[i]!]!]!;
    }
    weigh(twice, overEnds.places, overEnds.weights, byRow, r * ends, ends);
  }
  const offsets = roomForOffsets(overPicks.places.length);
  for (let j = 0; j < picks; j++) {
    for (let t = 0; t < offsets.length; t++) {
      const pick = j + overPicks.places[t]!;
      offsets[t] = row[pick < picks ? pick : pick - picks]! * ends;
    }
    weigh(byRow, offsets, overPicks.weights, light, j * ends, ends);
  }
  return light;
}

const roomForRows = scratch(Float64Array);
const roomForTwice = scratch(Float64Array);
const roomForOffsets = scratch(Int32Array);

/** The distances at which a blur has a weight at all, and their weights. */
interface Taps {
  readonly places: Int32Array;
  readonly weights: Float64Array;
}

const known = new Map<number, Map<number, Taps>>();

/** The taps of a blur round a length, computed once each. */
function tapsFor(length: number, sigma: number): Taps {
  let lengths = known.get(sigma);
  if (lengths === undefined) {
    lengths = new Map();
    known.set(sigma, lengths);
  }
  let taps = lengths.get(length);
  if (taps === undefined) {
    const all = blurWeights(length, sigma);
    const places = Int32Array.from(all.keys()).filter((place) => all[place]! > 0);
    taps = { places, weights: Float64Array.from(places, (place) => all[place]!) };
    lengths.set(length, taps);
  }
  return taps;
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
