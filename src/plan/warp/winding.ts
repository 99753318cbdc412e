import { TOGETHER_AT_MOST } from '../../score/ease.js';

/** The three ways of winding a warp of several colours. */
type Way = 'a separate chain per colour' | 'several ends together' | 'in order, changing at the pegs';

/** Neighbouring ends of one colour. */
export interface Run {
  /** Index of the yarn. */
  readonly yarn: number;
  readonly ends: number;
}

/** A part of a warp as it is wound in order; the runs of repeats are those of one repeat. */
export interface WindingPart {
  readonly what: 'first border' | 'repeats' | 'rest of a repeat' | 'last border';
  readonly times: number;
  readonly runs: readonly Run[];
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
  /** The whole warp in order, part by part, and the running totals of ends at its counting ties. */
  readonly parts: readonly WindingPart[];
  readonly ties: readonly number[];
  /** Ends from one counting tie to the next. */
  readonly tieEvery: number;
  /** True if every run has an even number of ends, so that all changes fall at one peg. */
  readonly even: boolean;
}

/** The winding of a warp that is on the loom. */
export const NO_WINDING: Winding = { ways: [], chains: [], parts: [], ties: [], tieEvery: 0, even: true };

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

/** Ends of one colour, or of all: in each border, in one repeat, between the borders, and in all. */
interface Count {
  readonly first: number;
  readonly repeat: number;
  readonly field: number;
  readonly all: number;
}

/**
 * Running totals of ends at the counting ties: after the first border, then at whole repeats, so that every tie is at
 * the same place of the order and at the same peg; after the last repeat, and at the end. In a repeat too long for one
 * tie, ties begin anew with each repeat.
 */
function tiesOf({ first, repeat, field, all }: Count): number[] {
  const ties = new Set<number>(first > 0 ? [first] : []);
  const step = tieAfter(repeat);
  if (repeat > TIE_AT_MOST) {
    for (let from = 0; from < field; from += repeat) {
      const length = Math.min(repeat, field - from);
      for (let at = step; length - at >= TIE_AT_LEAST; at += step) ties.add(first + from + at);
      ties.add(first + from + length);
    }
  } else for (let at = step; at <= field; at += step) ties.add(first + at);
  if (field > 0) ties.add(first + field);
  ties.add(all);
  return [...ties];
}

/** One chain per colour, in order of first appearance, with counting ties. */
function chainsOf(warp: readonly number[], repeat: number, border: number): Chain[] {
  const field = warp.slice(border, warp.length - border);
  return [...new Set(warp)].map((yarn) => {
    const count = (ends: readonly number[]): number => ends.filter((end) => end === yarn).length;
    const ends = count(warp);
    const inRepeat = count(field.slice(0, repeat));
    const ties = tiesOf({
      first: count(warp.slice(0, border)),
      repeat: inRepeat === 0 ? ends : inRepeat,
      field: count(field),
      all: ends,
    });
    const tieEvery = tieAfter(inRepeat === 0 ? ends : inRepeat);
    return { yarn, ends, rounds: Math.floor(ends / 2), oneMore: ends % 2 === 1, tieEvery, ties };
  });
}

/** A warp in order: first border, repeats, the rest of a repeat, last border; empty parts are left out. */
function partsOf(warp: readonly number[], repeat: number, border: number): WindingPart[] {
  const field = warp.slice(border, warp.length - border);
  const times = Math.floor(field.length / repeat);
  const parts: WindingPart[] = [
    { what: 'first border', times: 1, runs: runsOf(warp.slice(0, border)) },
    { what: 'repeats', times, runs: times === 0 ? [] : runsOf(field.slice(0, repeat)) },
    { what: 'rest of a repeat', times: 1, runs: runsOf(field.slice(times * repeat)) },
    { what: 'last border', times: 1, runs: runsOf(warp.slice(warp.length - border)) },
  ];
  return parts.filter(({ runs }) => runs.length > 0);
}

/**
 * Compares the ways of winding a warp.
 *
 * @param ends yarn of each end, floating selvedges left out
 * @param repeat ends after which the colours recur
 * @param border ends of each of two borders, wound before the first repeat and after the last
 */
export function windingOf(ends: ArrayLike<number>, repeat: number, border = 0): Winding {
  const warp = Array.from(ends);
  const chains = chainsOf(warp, repeat, border);
  return {
    ways: waysOf(warp, repeat, chains, border),
    chains,
    parts: partsOf(warp, repeat, border),
    ties: tiesOf({ first: border, repeat, field: warp.length - 2 * border, all: warp.length }),
    tieEvery: tieAfter(repeat),
    even: runsOf(warp).every((run) => run.ends % 2 === 0),
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
  return fits ? [apart, together, inOrder] : [apart, inOrder];
}

/**
 * Ends between counting ties: one repeat, an even number of ends in short repeats, so that all ties are at one peg, or
 * a fixed number if a repeat is too long to count.
 */
function tieAfter(repeat: number): number {
  if (repeat > TIE_AT_MOST) return TIE_LONG;
  const ends = repeat * Math.ceil(TIE_AT_LEAST / repeat);
  return ends % 2 === 0 ? ends : ends + repeat;
}
