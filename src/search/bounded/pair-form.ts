import type { Drawdown } from '../../cloth/drawdown.js';
import { blurWeights, overlapWeights, SIGMA } from '../../score/contrast/blur.js';
import type { Ground, Side } from './bound-ground.js';

/**
 * A figure of the face as a quadratic form in what the slots of the two orders show: x'Ax + y'By + 2x'Cy. A slot is an
 * element of an order, or its companion, or the tabby; x holds the values of the warp's slots, y those of the weft's.
 * The matrices depend on weave, layout, starts and lengths alone. See BOUNDS.md.
 */
export interface PairForm {
  readonly A: Float64Array;
  readonly B: Float64Array;
  readonly C: Float64Array;
}

/** The mean of the face is linear in the values: m'x + k'y. */
export interface MeanForm {
  readonly warp: Float64Array;
  readonly weft: Float64Array;
}

/** Makes the forms of one ground. */
export function pairForms(ground: Ground) {
  const { cloth, ends, picks } = ground;
  const { endKinds, pickKinds } = cloth;
  const isUp = (pick: number, end: number): number => cloth.up[pick * endKinds + end]!;
  const [P, Q] = [ends.length, picks.length];
  const mean: MeanForm = { warp: new Float64Array(ends.slots), weft: new Float64Array(picks.slots) };
  const upShare = Float64Array.from({ length: endKinds }, (_, end) =>
    shareOf(cloth.pickKind, (pick) => isUp(pick, end)),
  );
  const coverShare = Float64Array.from({ length: pickKinds }, (_, pick) =>
    shareOf(cloth.endKind, (end) => 1 - isUp(pick, end)),
  );
  for (let i = 0; i < P; i++) add(mean.warp, ends.slot[i]!, upShare[ends.kind[i]!]! / P);
  for (let j = 0; j < Q; j++) add(mean.weft, picks.slot[j]!, coverShare[picks.kind[j]!]! / Q);

  const withoutMean = (form: PairForm): PairForm => {
    takeProduct(form.A, mean.warp, mean.warp);
    takeProduct(form.B, mean.weft, mean.weft);
    takeProduct(form.C, mean.warp, mean.weft);
    return form;
  };
  const correlation = correlations(ground);
  const blurs = (sigma: number, squareness: number): readonly [Float64Array, Float64Array] => [
    overlapWeights(blurWeights(P, sigma)),
    overlapWeights(blurWeights(Q, sigma * squareness)),
  ];

  return {
    mean,
    /** Variance of the blurred face. */
    variance: (sigma: number, squareness: number): PairForm => withoutMean(correlation(...blurs(sigma, squareness))),
    /** Variance of the row means, and of the column means, of the blurred face. */
    rows: (sigma: number, squareness: number): PairForm =>
      withoutMean(correlation(even(P), blurs(sigma, squareness)[1])),
    columns: (sigma: number, squareness: number): PairForm =>
      withoutMean(correlation(blurs(sigma, squareness)[0], even(Q))),
    /** Mean product of a cell and the next across, and of a cell and the next down. */
    across: (): PairForm => correlation(besides(P), alone(Q)),
    down: (): PairForm => correlation(alone(P), besides(Q)),
  };
}

/** The sum of weight(i − i')·weight(j − j')·value·value over all pairs of cells, as a mean over cells. */
function correlations({ cloth, ends, picks }: Ground): (across: Float64Array, along: Float64Array) => PairForm {
  const { endKinds, pickKinds } = cloth;
  const [p0, q0] = [cloth.ends, cloth.picks];
  const [P, Q] = [ends.length, picks.length];
  const [S, T] = [ends.slots, picks.slots];
  // How many threads of each slot fall on each place of the weave.
  const endPlaces = placesOf(ends, p0);
  const pickPlaces = placesOf(picks, q0);
  return (across, along) => {
    const form = { A: new Float64Array(S * S), B: new Float64Array(T * T), C: new Float64Array(S * T) };
    const { upAlong, coverAcross, bothUp, bothCover } = near(cloth, across, along);
    for (const [d, weight] of nonZero(across)) {
      for (let i = 0, other = d; i < P; i++, other = other + 1 === P ? 0 : other + 1) {
        add(
          form.A,
          ends.slot[i]! * S + ends.slot[other]!,
          (weight * bothUp[ends.kind[i]! * endKinds + ends.kind[other]!]!) / P,
        );
      }
    }
    for (const [d, weight] of nonZero(along)) {
      for (let j = 0, other = d; j < Q; j++, other = other + 1 === Q ? 0 : other + 1) {
        add(
          form.B,
          picks.slot[j]! * T + picks.slot[other]!,
          (weight * bothCover[picks.kind[j]! * pickKinds + picks.kind[other]!]!) / Q,
        );
      }
    }
    // A warp slot against every pick of the weave, then against the weft's slots.
    const scale = 1 / (P * Q);
    for (let s = 0; s < S; s++) {
      for (let j = 0; j < q0; j++) {
        const pick = cloth.pickKind[j]!;
        let sum = 0;
        for (let i = 0; i < p0; i++) {
          const count = endPlaces[s * p0 + i]!;
          if (count !== 0)
            sum += count * upAlong[j * endKinds + cloth.endKind[i]!]! * coverAcross[i * pickKinds + pick]!;
        }
        if (sum === 0) continue;
        for (let t = 0; t < T; t++) {
          const count = pickPlaces[t * q0 + j]!;
          if (count !== 0) add(form.C, s * T + t, scale * count * sum);
        }
      }
    }
    return form;
  };
}

/**
 * Of each place of the weave: weights of the picks (ends) near it at which a kind of end (pick) shows. Of each two kinds:
 * the weights of the places at which both show, as a mean.
 */
function near(
  { ends, picks, endKind, pickKind, endKinds, pickKinds, up }: Drawdown,
  across: Float64Array,
  along: Float64Array,
) {
  const upAlong = new Float64Array(picks * endKinds);
  const bothUp = new Float64Array(endKinds * endKinds);
  const [close, wide] = [nonZero(wrapped(along, picks)), nonZero(wrapped(across, ends))];
  for (let j = 0; j < picks; j++) {
    for (const [d, weight] of close) {
      const row = pickKind[(j + d) % picks]! * endKinds;
      for (let k = 0; k < endKinds; k++) add(upAlong, j * endKinds + k, weight * up[row + k]!);
    }
    const row = pickKind[j]! * endKinds;
    for (let a = 0; a < endKinds; a++) {
      if (up[row + a] !== 1) continue;
      for (let b = 0; b < endKinds; b++) add(bothUp, a * endKinds + b, upAlong[j * endKinds + b]! / picks);
    }
  }
  const coverAcross = new Float64Array(ends * pickKinds);
  const bothCover = new Float64Array(pickKinds * pickKinds);
  for (let i = 0; i < ends; i++) {
    for (const [d, weight] of wide) {
      const end = endKind[(i + d) % ends]!;
      for (let k = 0; k < pickKinds; k++) add(coverAcross, i * pickKinds + k, weight * (1 - up[k * endKinds + end]!));
    }
    for (let a = 0; a < pickKinds; a++) {
      if (up[a * endKinds + endKind[i]!] === 1) continue;
      for (let b = 0; b < pickKinds; b++) add(bothCover, a * pickKinds + b, coverAcross[i * pickKinds + b]! / ends);
    }
  }
  return { upAlong, coverAcross, bothUp, bothCover };
}

/**
 * A form in the elements of two orders of two colours, each +1 (light) or −1 (dark): s'As + t'Bt + 2s'Ct. s holds the
 * elements of the warp order, t those of the weft order and after them the tabby's colour.
 */
export interface Form {
  /** Length of s, and of t. */
  readonly n: number;
  readonly m: number;
  readonly A: Float64Array;
  readonly B: Float64Array;
  readonly C: Float64Array;
}

/** T² in the elements of the two orders. `squareness`: picks per centimetre over ends per centimetre. */
export function toneForm(ground: Ground, squareness: number): Form {
  const { ends, picks } = ground;
  const { A, B, C } = pairForms(ground).variance(SIGMA, squareness);
  const [n, m] = [ends.elements, picks.elements + 1];
  const gathered = (matrix: Float64Array, rows: Side, columns: Side, width: number, size: number): Float64Array => {
    const sums = new Float64Array(size);
    for (let a = 0, at = 0; a < rows.slots; a++) {
      for (let b = 0; b < columns.slots; b++, at++) {
        const sign = rows.slotCompanion[a] === columns.slotCompanion[b] ? 1 : -1;
        add(sums, rows.slotElement[a]! * width + columns.slotElement[b]!, sign * matrix[at]!);
      }
    }
    return sums;
  };
  return {
    n,
    m,
    A: gathered(A, ends, ends, n, n * n),
    B: gathered(B, picks, picks, m, m * m),
    C: gathered(C, ends, picks, m, n * m),
  };
}

/** s'As for a square matrix. */
export function quadratic(A: Float64Array, s: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0, at = 0; i < s.length; i++) {
    let row = 0;
    for (let j = 0; j < s.length; j++, at++) row += A[at]! * s[j]!;
    sum += s[i]! * row;
  }
  return sum;
}

/** Weight 1/n at every distance: means over a whole line. */
const even = (n: number): Float64Array => new Float64Array(n).fill(1 / n);

/** Weight at no distance alone. */
function alone(n: number): Float64Array {
  const weights = new Float64Array(n);
  weights[0] = 1;
  return weights;
}

/** Half a weight to either side, so that a form of it is even. */
function besides(n: number): Float64Array {
  const weights = new Float64Array(n);
  add(weights, 1 % n, 0.5);
  add(weights, n - 1, 0.5);
  return weights;
}

/** Weights by distance, wrapped round a length that divides theirs. */
function wrapped(weights: Float64Array, length: number): Float64Array {
  const round = new Float64Array(length);
  for (let d = 0; d < weights.length; d++) add(round, d % length, weights[d]!);
  return round;
}

function nonZero(weights: Float64Array): (readonly [number, number])[] {
  return Array.from(weights, (weight, d) => [d, weight] as const).filter(([, weight]) => weight !== 0);
}

/** How many threads of each slot fall on each place of a weave's repeat. */
function placesOf({ slot, slots, length }: Side, repeat: number): Float64Array {
  const count = new Float64Array(slots * repeat);
  for (let s = 0; s < length; s++) add(count, slot[s]! * repeat + (s % repeat), 1);
  return count;
}

function shareOf(kinds: Uint16Array, say: (kind: number) => number): number {
  let sum = 0;
  for (const kind of kinds) sum += say(kind);
  return sum / kinds.length;
}

function add(sums: Float64Array, at: number, amount: number): void {
  sums[at] = sums[at]! + amount;
}

function takeProduct(matrix: Float64Array, rows: Float64Array, columns: Float64Array): void {
  for (let i = 0, at = 0; i < rows.length; i++) {
    for (let j = 0; j < columns.length; j++, at++) matrix[at] = matrix[at]! - rows[i]! * columns[j]!;
  }
}

/** The product of a vector with each of a list of vectors that lie one after the other. */
export function products(vector: Float64Array, list: Float64Array): Float64Array {
  const size = vector.length;
  return Float64Array.from({ length: list.length / size }, (_, at) => {
    let sum = 0;
    for (let k = 0; k < size; k++) sum += vector[k]! * list[at * size + k]!;
    return sum;
  });
}
