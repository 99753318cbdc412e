import { type Rooms, roomIn, roomy, scratch } from '../../cloth/scratch.js';
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

const NONE = new Float64Array(0);
const NO_KINDS = new Uint16Array(0);

/**
 * The weights of the blurs, summed by the kinds of a word of threads. Not all are asked for of every word. Arrays may be
 * longer than what they hold.
 */
export class Gathered {
  /** How many threads there are of each kind. */
  counts: Float64Array = NONE;
  kinds = 0;
  private tones: Float64Array = NONE;
  private smalls: Float64Array = NONE;
  private readonly between = new Boundaries();
  private word: Uint16Array = NO_KINDS;
  private reach: Reach | undefined;
  private has = { tone: false, small: false, boundaries: false };

  /** Turns to another word. */
  turnTo(word: Uint16Array, kinds: number, reachOf: (length: number) => Reach): void {
    if (word === this.word) return;
    this.word = word;
    this.kinds = kinds;
    this.reach = reachOf(word.length);
    this.counts = counted(word, kinds, this.counts);
    this.has.tone = this.has.small = this.has.boundaries = false;
  }

  /** Weights between kinds of threads under B. */
  get tone(): Float64Array {
    if (!this.has.tone) this.tones = this.gathered(this.reach!.tone, this.tones);
    this.has.tone = true;
    return this.tones;
  }

  /** Weights between kinds of threads under the small blur. */
  get small(): Float64Array {
    if (!this.has.small) this.smalls = this.gathered(this.reach!.small, this.smalls);
    this.has.small = true;
    return this.smalls;
  }

  get boundaries(): Boundaries {
    if (!this.has.boundaries) this.between.turnTo(this.reach!, this.word, this.kinds);
    this.has.boundaries = true;
    return this.between;
  }

  private gathered(weights: Float64Array, room: Float64Array): Float64Array {
    return gatherEven(weights, this.word, this.kinds, roomy(room, this.kinds ** 2));
  }
}

/** Boundaries between neighbouring threads, by the kinds of the two. */
export class Boundaries {
  kinds = 0;
  /** Of each kind, the kind of the thread before it and of the one after it. */
  before: Uint16Array = NO_KINDS;
  after: Uint16Array = NO_KINDS;
  /** How many there are of each kind. */
  counts: Float64Array = NONE;
  /** Weights between kinds of boundaries, and between a kind of boundary (row) and a kind of thread. */
  edges: Float64Array = NONE;
  cross: Float64Array = NONE;

  turnTo(reach: Reach, word: Uint16Array, kinds: number): void {
    const n = word.length;
    const known = roomForKnown(kinds * kinds).fill(-1);
    const ofBoundary = roomForBoundaries(n);
    this.before = roomy(this.before, n);
    this.after = roomy(this.after, n);
    this.kinds = 0;
    for (let s = 0; s < n; s++) {
      const a = word[s === 0 ? n - 1 : s - 1]!;
      const b = word[s]!;
      let number = known[a * kinds + b]!;
      if (number < 0) {
        number = this.kinds++;
        known[a * kinds + b] = number;
        this.before[number] = a;
        this.after[number] = b;
      }
      ofBoundary[s] = number;
    }
    this.counts = counted(ofBoundary, this.kinds, this.counts);
    this.edges = gatherEven(reach.edges, ofBoundary, this.kinds, roomy(this.edges, this.kinds ** 2));
    this.cross = gather(reach.cross, ofBoundary, this.kinds, word, kinds, roomy(this.cross, this.kinds * kinds));
  }
}

const roomForKnown = scratch(Int32Array);
const roomForBoundaries = scratch(Uint16Array);

/** Gathers the weights for a word of threads, of so many kinds. */
export type Gather = (word: Uint16Array, kinds: number, rooms: Rooms | undefined) => Gathered;

/**
 * Gathers the weights for words of one system of threads. Many candidates have the same warp, or the same weft, and the
 * weights depend on the one word alone: they are kept in the rooms of the word.
 *
 * @param scale σ along this system of threads, as a multiple of σ across the ends
 */
export function gatherer(scale: number): Gather {
  const reachOf = reaches(scale);
  const gatheredIn = roomIn(() => new Gathered());
  return (word, kinds, rooms) => {
    const gathered = gatheredIn(rooms);
    gathered.turnTo(word, kinds, reachOf);
    return gathered;
  };
}

/** How many threads there are of each kind. */
function counted(word: Uint16Array, kinds: number, room: Float64Array): Float64Array {
  const count = roomy(room, kinds).fill(0, 0, kinds);
  for (let s = 0; s < word.length; s++) count[word[s]!] = count[word[s]!]! + 1;
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
