import { TOGETHER_AT_MOST } from '../../score/ease.js';

/** The three ways of winding a warp of several colours. */
type Way = 'a separate chain per colour' | 'several ends together' | 'in order, changing at the pegs';

/** Neighbouring ends of one colour. */
interface Run {
  /** Index of the yarn. */
  readonly yarn: number;
  readonly ends: number;
}

/** A run as it is wound in order. Peg 1 is where winding begins, peg 2 the far one. */
interface RunLine extends Run {
  /** Ends wound so far, this run included. */
  readonly running: number;
  /** The peg where the colour changes after this run. */
  readonly peg: 1 | 2;
  /** True if a counting tie follows this run. */
  readonly tie: boolean;
}

/** One chain of one colour: how many ends, in how many rounds, and after how many ends a counting tie goes in. */
interface Chain {
  readonly yarn: number;
  readonly ends: number;
  /** Rounds out and back, two ends each. */
  readonly rounds: number;
  /** True if one more end is wound out and not back, because the number of ends is odd. */
  readonly oneMore: boolean;
  readonly tieEvery: number;
  /** Running totals of ends at the counting ties; the last is the whole chain. */
  readonly ties: readonly number[];
}

/** What one way of winding takes. */
interface WayCost {
  readonly way: Way;
  /** Ties from one colour to the next, between the first end and the last. */
  readonly knots: number;
  /** Walks from peg to peg. */
  readonly passes: number;
  readonly chains: number;
}

/** Everything about the winding of one warp. */
export interface Winding {
  /** Least work first. */
  readonly ways: readonly WayCost[];
  readonly chains: readonly Chain[];
  /** Runs of the first repeats, up to the first counting tie; at least one repeat. */
  readonly stretch: readonly RunLine[];
  /** Ends from one counting tie to the next. */
  readonly tieEvery: number;
  /** True if every run has an even number of ends, so that all changes fall at one peg. */
  readonly even: boolean;
}

/** Fewest and most ends between counting ties, and what is taken beyond that (common practice, no source). */
const TIE_AT_LEAST = 10;
const TIE_AT_MOST = 80;
const TIE_LONG = 20;

/** Runs of one colour along a warp, not round it. */
function runsOf(warp: ArrayLike<number>): Run[] {
  const runs: { yarn: number; ends: number }[] = [];
  for (let i = 0; i < warp.length; i++) {
    const last = runs.at(-1);
    if (last !== undefined && last.yarn === warp[i]) last.ends++;
    else runs.push({ yarn: warp[i]!, ends: 1 });
  }
  return runs;
}

/** Changes of colour inside a warp: the knots of winding it in order. */
export function changesIn(warp: ArrayLike<number>): number {
  return Math.max(0, runsOf(warp).length - 1);
}

/**
 * Lists the runs for winding in order. Each pass lays one end, so after an even number of ends the hand is at peg 1.
 *
 * @param tieEvery ends from one counting tie to the next, after the first border
 */
export function windInOrder(warp: ArrayLike<number>, tieEvery: number, border = 0): RunLine[] {
  let running = 0;
  return runsOf(warp).map((run) => {
    running += run.ends;
    return {
      ...run,
      running,
      peg: running % 2 === 0 ? 1 : 2,
      tie: running > border && (running - border) % tieEvery === 0,
    };
  });
}

/** One chain per colour, in order of first appearance, with counting ties. */
function chainsOf(warp: ArrayLike<number>, repeat: number, border = 0): Chain[] {
  const counts = new Map<number, number>();
  const inRepeat = new Map<number, number>();
  for (let i = 0; i < warp.length; i++) {
    counts.set(warp[i]!, (counts.get(warp[i]!) ?? 0) + 1);
    if (i >= border && i < border + repeat) inRepeat.set(warp[i]!, (inRepeat.get(warp[i]!) ?? 0) + 1);
  }
  return [...counts].map(([yarn, ends]) => {
    const tieEvery = tieAfter(inRepeat.get(yarn) ?? ends);
    const whole = Array.from({ length: Math.floor(ends / tieEvery) }, (_, k) => (k + 1) * tieEvery);
    const ties = whole.at(-1) === ends ? whole : [...whole, ends];
    return { yarn, ends, rounds: Math.floor(ends / 2), oneMore: ends % 2 === 1, tieEvery, ties };
  });
}

/**
 * Compares the ways of winding a warp.
 *
 * @param warp yarn of each end, floating selvedges left out
 * @param repeat ends after which the colours recur
 * @param border ends of each of two borders, wound before the first repeat and after the last
 */
export function windingOf(warp: ArrayLike<number>, repeat: number, border = 0): Winding {
  const tieEvery = tieAfter(repeat);
  const list = windInOrder(warp, tieEvery, border);
  const chains = chainsOf(warp, repeat, border);
  const first = list.findIndex(({ running }) => running - border >= Math.max(tieEvery, repeat));
  return {
    ways: waysOf(warp, repeat, chains, border),
    chains,
    stretch: first < 0 ? list : list.slice(0, first + 1),
    tieEvery,
    even: list.every((run) => run.ends % 2 === 0),
  };
}

/** The possible ways for this warp, fewest knots first; ties go to the way that leaves the order free at threading. */
function waysOf(warp: ArrayLike<number>, repeat: number, chains: readonly Chain[], border: number): WayCost[] {
  const apart: WayCost = { way: 'a separate chain per colour', knots: 0, passes: warp.length, chains: chains.length };
  if (chains.length === 1) return [apart];
  const inOrder: WayCost = {
    way: 'in order, changing at the pegs',
    knots: changesIn(warp),
    passes: warp.length,
    chains: 1,
  };
  const left = warp.length % repeat;
  const fits = border === 0 && repeat <= TOGETHER_AT_MOST && warp.length >= repeat;
  const together: WayCost = {
    way: 'several ends together',
    // Ends beyond the last whole repeat are wound singly, in order.
    knots: left === 0 ? 0 : 1 + changesIn(Array.from(warp).slice(warp.length - left)),
    passes: Math.floor(warp.length / repeat) + left,
    chains: 1,
  };
  return (fits ? [apart, together, inOrder] : [apart, inOrder]).sort((a, b) => a.knots - b.knots);
}

/**
 * Ends between counting ties: one repeat, several short repeats, or a fixed number if a repeat is too long to count.
 */
function tieAfter(repeat: number): number {
  return repeat > TIE_AT_MOST ? TIE_LONG : repeat * Math.ceil(TIE_AT_LEAST / repeat);
}
