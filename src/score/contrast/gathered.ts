import { blurWeights, overlapWeights, SIGMA, SMALL_SIGMA } from './blur.js';
import { gather, gatherEven } from './line-samples.js';

/** Weights by distance along one system of threads. */
interface Reach {
  /** Cells of a field blurred by B. */
  readonly tone: Float64Array;
  /** Boundaries, each shared half and half between its two cells, blurred by B. */
  readonly edges: Float64Array;
  /** A boundary against a cell, blurred by B. */
  readonly cross: Float64Array;
  /** Cells of a field blurred by the small blur. */
  readonly small: Float64Array;
}

/** Boundaries between neighbouring threads, by the kinds of the two. */
interface Boundaries {
  readonly kinds: number;
  /** Of each kind, the kind of the thread before it and of the one after it. */
  readonly before: Uint16Array;
  readonly after: Uint16Array;
  /** How many there are of each kind. */
  readonly counts: Float64Array;
  /** Weights between kinds of boundaries, and between a kind of boundary (row) and a kind of thread. */
  readonly edges: Float64Array;
  readonly cross: Float64Array;
}

/** The weights of the blurs, summed by the kinds of a word of threads. Not all are asked for of every word. */
export interface Gathered {
  /** How many threads there are of each kind. */
  readonly counts: Float64Array;
  /** Weights between kinds of threads under B, and under the small blur. */
  readonly tone: Float64Array;
  readonly small: Float64Array;
  readonly boundaries: Boundaries;
}

/**
 * Gathers the weights for words of one system of threads. Many candidates have the same warp, or the same weft, and the
 * weights depend on the one word alone: they are kept for as long as the word itself is.
 *
 * @param scale σ along this system of threads, as a multiple of σ across the ends
 */
export function gatherer(scale: number): (kind: Uint16Array, kinds: number) => Gathered {
  const reachOf = reaches(scale);
  const known = new WeakMap<Uint16Array, Gathered>();
  return (kind, kinds) => {
    let found = known.get(kind);
    if (found === undefined) {
      found = gatheredOf(reachOf(kind.length), kind, kinds);
      known.set(kind, found);
    }
    return found;
  };
}

function gatheredOf(reach: Reach, kind: Uint16Array, kinds: number): Gathered {
  let small: Float64Array | undefined;
  let boundaries: Boundaries | undefined;
  return {
    counts: countsOf(kind, kinds),
    tone: gatherEven(reach.tone, kind, kinds),
    get small() {
      small ??= gatherEven(reach.small, kind, kinds);
      return small;
    },
    get boundaries() {
      boundaries ??= boundariesOf(reach, kind, kinds);
      return boundaries;
    },
  };
}

function boundariesOf(reach: Reach, kind: Uint16Array, kinds: number): Boundaries {
  const n = kind.length;
  const known = new Int32Array(kinds * kinds).fill(-1);
  const before: number[] = [];
  const after: number[] = [];
  const ofBoundary = new Uint16Array(n);
  for (let s = 0; s < n; s++) {
    const a = kind[s === 0 ? n - 1 : s - 1]!;
    const b = kind[s]!;
    let number = known[a * kinds + b]!;
    if (number < 0) {
      number = before.length;
      known[a * kinds + b] = number;
      before.push(a);
      after.push(b);
    }
    ofBoundary[s] = number;
  }
  return {
    kinds: before.length,
    before: Uint16Array.from(before),
    after: Uint16Array.from(after),
    counts: countsOf(ofBoundary, before.length),
    edges: gatherEven(reach.edges, ofBoundary, before.length),
    cross: gather(reach.cross, ofBoundary, before.length, kind, kinds),
  };
}

function countsOf(kind: Uint16Array, kinds: number): Float64Array {
  const count = new Float64Array(kinds);
  for (let s = 0; s < kind.length; s++) count[kind[s]!] = count[kind[s]!]! + 1;
  return count;
}

/** The weights by distance for every repeat length, computed once each. */
function reaches(scale: number): (length: number) => Reach {
  const known = new Map<number, Reach>();
  return (length) => {
    let reach = known.get(length);
    if (reach === undefined) {
      const tone = overlapWeights(blurWeights(length, SIGMA * scale));
      const before = (d: number): number => tone[(d + length - 1) % length]!;
      const after = (d: number): number => tone[(d + 1) % length]!;
      reach = {
        tone,
        edges: tone.map((weight, d) => weight / 2 + (before(d) + after(d)) / 4),
        // A boundary lies before its own cell and after the one before it.
        cross: tone.map((weight, d) => (weight + before(d)) / 2),
        small: overlapWeights(blurWeights(length, SMALL_SIGMA * scale)),
      };
      known.set(length, reach);
    }
    return reach;
  };
}
