import { blurWeights, overlapWeights, SIGMA } from '../../score/contrast/blur.js';
import { gatherEven } from '../../score/contrast/line-samples.js';
import { type Ground, type Side, typesOf } from './bound-ground.js';

/**
 * The exact variance of the blurred boundaries of one direction, once the order of one system is fixed, as a quadratic
 * form in the order t of the crossing system: c + 2·l't + t'Mt. (With the warp order fixed, the upright boundaries in a
 * row depend on the row's interlacement and, linearly, on the ±1 of its one weft colour.) See BOUNDS.md.
 */
export interface LineForm {
  /** Length of t: the elements of the crossing order, and one for the tabby's colour. */
  readonly size: number;
  readonly c: number;
  readonly l: Float64Array;
  readonly M: Float64Array;
}

/** Makes line forms: of upright boundaries for a given warp order, of level boundaries for a given weft order. */
export interface LineForms {
  upright(warp: ArrayLike<number>): LineForm;
  level(weft: ArrayLike<number>): LineForm;
}

/** Makes line forms on one ground. Orders are lists of ±1; the last number is the tabby's colour. */
export function lineForms(ground: Ground, squareness: number): LineForms {
  const { cloth, ends, picks } = ground;
  const up = (pick: number, end: number): boolean => cloth.up[pick * cloth.endKinds + end] === 1;
  const across = { own: ends, crossing: picks, ownScale: 1, crossingScale: squareness };
  const along = { own: picks, crossing: ends, ownScale: squareness, crossingScale: 1 };
  return {
    upright: maker({ ...across, shows: (end, pick) => up(pick, end) }),
    level: maker({ ...along, shows: (pick, end) => !up(pick, end) }),
  };
}

interface Sides {
  /** The threads along which boundaries are counted, and those that cross them. */
  readonly own: Side;
  readonly crossing: Side;
  readonly ownScale: number;
  readonly crossingScale: number;
  /** Whether a kind of own thread lies over a kind of crossing thread. */
  readonly shows: (own: number, crossing: number) => boolean;
}

function maker({ own, crossing, ownScale, crossingScale, shows }: Sides): (order: ArrayLike<number>) => LineForm {
  const n = own.length;
  const kinds = crossing.kinds;
  const size = crossing.elements + 1;
  const blur = blurWeights(n, SIGMA * ownScale);
  const over = Array.from({ length: kinds }, (_, other) => own.kind.map((kind) => (shows(kind, other) ? 1 : 0)));
  const { of, element, sign, kind, count } = typesOf(crossing);
  const weights = gatherEven(overlapWeights(blurWeights(crossing.length, SIGMA * crossingScale)), of, element.length);
  for (let at = 0; at < weights.length; at++) weights[at] = weights[at]! / crossing.length;

  return (order) => {
    // For each kind of crossing thread, the boundaries along it when it is light and when it is dark: mean and half
    // difference.
    const even: Float64Array[] = [];
    const odd: Float64Array[] = [];
    for (let k = 0; k < kinds; k++) {
      const light = blurredBoundaries(own, order, over[k]!, 1, blur);
      const dark = blurredBoundaries(own, order, over[k]!, -1, blur);
      even.push(light.map((b, s) => (b + dark[s]!) / 2));
      odd.push(light.map((b, s) => (b - dark[s]!) / 2));
    }
    const gram = (a: Float64Array[], b: Float64Array[]): Float64Array => {
      const products = new Float64Array(kinds * kinds);
      for (let j = 0; j < kinds; j++) {
        for (let k = 0; k < kinds; k++) {
          let sum = 0;
          for (let s = 0; s < n; s++) sum += a[j]![s]! * b[k]![s]!;
          products[j * kinds + k] = sum / n;
        }
      }
      return products;
    };
    const evenEven = gram(even, even);
    const oddEven = gram(odd, even);
    const oddOdd = gram(odd, odd);
    const meanOf = (line: Float64Array): number => line.reduce((sum, b) => sum + b, 0) / n;
    const evenMean = even.map(meanOf);
    const oddMean = odd.map(meanOf);
    let c = 0;
    let mean = 0;
    const l = new Float64Array(size);
    const M = new Float64Array(size * size);
    const means = new Float64Array(size);
    const types = element.length;
    for (let a = 0; a < types; a++) {
      const share = count[a]! / crossing.length;
      mean += share * evenMean[kind[a]!]!;
      means[element[a]!] = means[element[a]!]! + share * sign[a]! * oddMean[kind[a]!]!;
      for (let b = 0; b < types; b++) {
        const weight = weights[a * types + b]!;
        const pair = kind[a]! * kinds + kind[b]!;
        c += weight * evenEven[pair]!;
        l[element[a]!] = l[element[a]!]! + weight * sign[a]! * oddEven[pair]!;
        const at = element[a]! * size + element[b]!;
        M[at] = M[at]! + weight * sign[a]! * sign[b]! * oddOdd[pair]!;
      }
    }
    // Less the square of the mean.
    for (let a = 0; a < size; a++) {
      l[a] = l[a]! - mean * means[a]!;
      for (let b = 0; b < size; b++) M[a * size + b] = M[a * size + b]! - means[a]! * means[b]!;
    }
    return { size, c: c - mean * mean, l, M };
  };
}

/** The standard deviation that a form gives for a crossing order of ±1; its last number is the tabby's colour. */
export function lineDeviation({ size, c, l, M }: LineForm, crossing: Float64Array): number {
  let variance = c;
  for (let i = 0, at = 0; i < size; i++) {
    let row = 2 * l[i]!;
    for (let j = 0; j < size; j++, at++) row += M[at]! * crossing[j]!;
    variance += row * crossing[i]!;
  }
  return Math.sqrt(Math.max(0, variance));
}

/** The blurred boundaries along one crossing thread; each boundary counts half for either of its two threads. */
function blurredBoundaries(
  side: Side,
  order: ArrayLike<number>,
  over: Uint16Array | Uint8Array,
  colour: number,
  blur: Float64Array,
): Float64Array {
  const n = side.length;
  const value = Int8Array.from(over, (shows, s) => (shows === 1 ? side.sign[s]! * order[side.element[s]!]! : colour));
  const shared = Float64Array.from(value, (here, s) => {
    const before = value[s === 0 ? n - 1 : s - 1];
    const after = value[s === n - 1 ? 0 : s + 1];
    return ((here === before ? 0 : 1) + (here === after ? 0 : 1)) / 2;
  });
  const blurred = new Float64Array(n);
  for (let d = 0; d < n; d++) {
    const w = blur[d]!;
    if (w === 0) continue;
    for (let s = 0, at = d; s < n; s++) {
      blurred[s] = blurred[s]! + w * shared[at]!;
      if (++at === n) at = 0;
    }
  }
  return blurred;
}
