/** The three ways of winding a warp of several colours. */
export type Way = 'a separate chain per colour' | 'several ends together' | 'in order, changing at the pegs';

/** Neighbouring ends of one colour. */
export interface Run {
  /** Index of the yarn. */
  readonly yarn: number;
  readonly ends: number;
}

/** A run as it is wound in order. Peg 1 is where winding begins, peg 2 the far one. */
export interface RunLine extends Run {
  /** Ends wound so far, this run included. */
  readonly running: number;
  /** The peg where the colour changes after this run. */
  readonly peg: 1 | 2;
  /** A counting tie goes in after this run. */
  readonly tie: boolean;
}

/** One chain of one colour: how many ends, in how many rounds, and after how many ends a counting tie goes in. */
export interface Chain {
  readonly yarn: number;
  readonly ends: number;
  /** Out and back: two ends. */
  readonly rounds: number;
  /** One more end, out and not back, where the number is odd. */
  readonly oneMore: boolean;
  readonly tieEvery: number;
  /** Running totals at the counting ties, the last one the whole chain. */
  readonly ties: readonly number[];
}

/** What one way of winding takes. */
export interface WayCost {
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
  /** Runs of the first repeats, up to the first counting tie; of one repeat at the least. */
  readonly stretch: readonly RunLine[];
  /** Ends from one counting tie to the next. */
  readonly tieEvery: number;
  /** Every run is even, so that all changes fall at one peg. */
  readonly even: boolean;
}

/** Longest order wound with one thread of each package held together (common practice, no source). */
const TOGETHER_AT_MOST = 8;
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
 * The list of winding in order. Each walk lays one end, so after an even number of ends the hand is back at peg 1.
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

/** One chain a colour, in the order in which the colours first come, with its counting ties. */
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
 * How a warp is best wound.
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

/** The ways there are for this warp, fewest knots first; of equals the one that leaves the order free at threading. */
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

/** A counting tie every whole repeat, every few of a small one, or by twenties where a repeat is too long to count. */
function tieAfter(repeat: number): number {
  return repeat > TIE_AT_MOST ? TIE_LONG : repeat * Math.ceil(TIE_AT_LEAST / repeat);
}
