import { liftAt, shaftCount, type Weave } from '../../draft/draft.js';

/** Shafts raised together, ascending. */
export type Lift = readonly number[];

/** Treadles tied so that every lift is one treadle, or two pressed with two feet. */
interface TwoFootTieUp {
  /** Shafts raised by each treadle. */
  readonly tieUp: readonly Lift[];
  /** For each lift that was asked for, its treadles, numbered from 1. */
  readonly presses: readonly (readonly number[])[];
}

/** For each treadle, the shafts that it raises and the shafts that it sinks. */
interface CountermarchTreadle {
  readonly rise: Lift;
  readonly sink: Lift;
}

/** The different lifts of a weave, in order of first use. With one foot, each needs a treadle of its own. */
export function liftsUsed(weave: Pick<Weave, 'tieUp' | 'treadling'>): Lift[] {
  const lifts = new Map<string, Lift>();
  for (let pick = 0; pick < weave.treadling.length; pick++) {
    const lift = liftAt(weave, pick);
    if (!lifts.has(lift.join())) lifts.set(lift.join(), lift);
  }
  return [...lifts.values()];
}

/** Number of heddles on each shaft for one repeat, shaft 1 first. */
export function heddles(weave: Pick<Weave, 'threading' | 'tieUp'>): number[] {
  const counts = new Array<number>(shaftCount(weave)).fill(0);
  for (const shaft of weave.threading.flat()) counts[shaft - 1]!++;
  return counts;
}

/**
 * The two plain-weave sheds of a threading: the shafts of the odd ends, and the shafts of the even ends. Undefined if
 * the number of ends is odd, or a shaft carries an odd and an even end.
 */
export function tabbySheds(threading: Weave['threading']): readonly [Lift, Lift] | undefined {
  if (threading.length % 2 === 1) return undefined;
  const [odd, even] = [0, 1].map((parity) => new Set(threading.filter((_, end) => end % 2 === parity).flat()));
  if ([...odd!].some((shaft) => even!.has(shaft))) return undefined;
  return [ascending(odd!), ascending(even!)];
}

/** The same tie-up for a sinking shed: the shafts that each treadle lowers, the rest of them all. */
export function sinkingTieUp(tieUp: readonly Lift[], shafts: number): Lift[] {
  return countermarchTieUp(tieUp, shafts).map((treadle) => treadle.sink);
}

/** The same tie-up for a countermarch, where every shaft is tied to every treadle, to rise or to sink. */
export function countermarchTieUp(tieUp: readonly Lift[], shafts: number): CountermarchTreadle[] {
  const all = Array.from({ length: shafts }, (_, index) => index + 1);
  return tieUp.map((rise) => ({ rise: ascending(rise), sink: all.filter((shaft) => !rise.includes(shaft)) }));
}

/** Most lifts for which a two-foot tie-up is sought; more are woven from a lift plan. */
const MOST_LIFTS = 16;
/** Most sets of treadles tried for each number of treadles: far more than four shafts can need. */
const SETS_TRIED = 20_000;

/**
 * Ties lifts to as few treadles as possible, at most `treadles`, with one or two treadles pressed for each lift.
 * Without loss, a treadle raises the intersection of the lifts that use it, so only intersections are tried. The search
 * is exact unless it is given up, which takes many different lifts on eight shafts or more.
 *
 * @returns undefined if there is no such tie-up, the search was given up, or there are more than {@link MOST_LIFTS}
 *   lifts
 */
export function twoFootTieUp(lifts: readonly Lift[], treadles: number): TwoFootTieUp | undefined {
  if (lifts.length <= treadles) return { tieUp: lifts, presses: lifts.map((_, index) => [index + 1]) };
  if (lifts.length > MOST_LIFTS) return undefined;
  const wanted = lifts.map((lift) => lift.reduce((set, shaft) => set | (1 << (shaft - 1)), 0));
  const ties = commonParts(wanted);
  // A lift that is no union of two other ties needs a treadle of its own.
  const others = (lift: number): number[] => ties.filter((tie) => tie !== lift);
  const alone = wanted.filter((lift) => pressesFor(lift, others(lift)) === undefined);
  for (let count = Math.max(1, alone.length); count <= treadles; count++) {
    const tied = cover({ lifts: wanted, ties, count, tried: new Set() }, alone);
    if (tied !== undefined) return described(wanted, tied);
  }
  return undefined;
}

/** All intersections of one or more lifts, as bit sets; the lifts themselves come first. */
function commonParts(lifts: readonly number[]): number[] {
  const parts = new Set<number>();
  for (const lift of lifts) for (const part of [...parts, -1]) parts.add(part & lift);
  parts.delete(0);
  const isLift = (part: number): number => (lifts.includes(part) ? 1 : 0);
  return [...parts].sort((a, b) => isLift(b) - isLift(a) || size(b) - size(a) || a - b);
}

interface Search {
  readonly lifts: readonly number[];
  readonly ties: readonly number[];
  /** Number of treadles. */
  readonly count: number;
  /** Sets of treadles that failed; most are reached in many orders. */
  readonly tried: Set<string>;
}

/** Adds treadles until one or two of them make every lift; undefined if the number of treadles is too small. */
function cover(search: Search, tied: readonly number[]): readonly number[] | undefined {
  const open = search.lifts.find((lift) => pressesFor(lift, tied) === undefined);
  if (open === undefined) return tied;
  const left = search.count - tied.length;
  const key = [...tied].sort((a, b) => a - b).join();
  if (left === 0 || search.tried.has(key) || search.tried.size >= SETS_TRIED) return undefined;
  search.tried.add(key);
  for (const added of waysTo(open, tied, search.ties)) {
    const found = added.length > left ? undefined : cover(search, [...tied, ...added]);
    if (found !== undefined) return found;
  }
  return undefined;
}

/** Sets of treadles that would make a lift possible: the lift itself, one that completes a tied treadle, or two. */
function waysTo(lift: number, tied: readonly number[], ties: readonly number[]): number[][] {
  const parts = ties.filter((tie) => (tie & ~lift) === 0 && !tied.includes(tie));
  const there = tied.filter((tie) => (tie & ~lift) === 0);
  const one = parts.filter((part) => part === lift || there.some((tie) => (tie | part) === lift));
  const rest = parts.filter((part) => part !== lift);
  const two = rest.flatMap((first, index) =>
    rest
      .slice(index + 1)
      .filter((second) => (first | second) === lift)
      .map((second) => [first, second]),
  );
  return [...one.map((part) => [part]), ...two];
}

/** Treadles, numbered from 1, that raise exactly this lift: one if possible, else two. */
function pressesFor(lift: number, tied: readonly number[]): number[] | undefined {
  const one = tied.indexOf(lift);
  if (one >= 0) return [one + 1];
  const within = tied.flatMap((tie, index) => ((tie & ~lift) === 0 ? [index] : []));
  for (const first of within) {
    const second = within.find((index) => (tied[first]! | tied[index]!) === lift);
    if (second !== undefined) return [first + 1, second + 1];
  }
  return undefined;
}

function described(lifts: readonly number[], tied: readonly number[]): TwoFootTieUp {
  const ordered = [...tied].sort((a, b) => size(a) - size(b) || a - b);
  return {
    tieUp: ordered.map((tie) => Array.from({ length: 32 }, (_, bit) => bit + 1).filter((s) => tie & (1 << (s - 1)))),
    presses: lifts.map((lift) => pressesFor(lift, ordered)!),
  };
}

function size(set: number): number {
  let count = 0;
  for (let rest = set; rest !== 0; rest &= rest - 1) count++;
  return count;
}

function ascending(shafts: Iterable<number>): number[] {
  return [...shafts].sort((a, b) => a - b);
}
