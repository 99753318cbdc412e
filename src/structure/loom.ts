import { liftAt, shaftCount, type Weave } from '../draft/draft.js';

/** Shafts raised together, ascending. */
export type Lift = readonly number[];

/** Treadles tied so that every lift is one treadle, or two pressed with two feet. */
export interface TwoFootTieUp {
  /** Shafts raised by each treadle. */
  readonly tieUp: readonly Lift[];
  /** For each lift that was asked for, its treadles, numbered from 1. */
  readonly presses: readonly (readonly number[])[];
}

/** For each treadle, the shafts that it raises and the shafts that it sinks. */
export interface CountermarchTreadle {
  readonly rise: Lift;
  readonly sink: Lift;
}

/** The lifts of a weave, each once, in the order in which they are first used; as many treadles are needed, one foot. */
export function liftsUsed(weave: Pick<Weave, 'tieUp' | 'treadling'>): Lift[] {
  const lifts = new Map<string, Lift>();
  for (let pick = 0; pick < weave.treadling.length; pick++) {
    const lift = liftAt(weave, pick);
    if (!lifts.has(lift.join())) lifts.set(lift.join(), lift);
  }
  return [...lifts.values()];
}

/** Heddles on each shaft for one repeat, shaft 1 first. */
export function heddles(weave: Pick<Weave, 'threading' | 'tieUp'>): number[] {
  const counts = new Array<number>(shaftCount(weave)).fill(0);
  for (const shaft of weave.threading.flat()) counts[shaft - 1]!++;
  return counts;
}

/**
 * The two plain-weave sheds of a threading: shafts of the odd ends and shafts of the even ends. None where the
 * number of ends is odd or a shaft carries both an odd and an even end.
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

/**
 * Ties lifts to no more than so many treadles, pressing two at once where one will not do. The search is exact for
 * as many lifts as {@link MOST_LIFTS}: a treadle may be taken to raise just what the lifts that use it have in
 * common, so only those ties are tried, the fewest treadles first.
 *
 * @returns undefined where there is no such tie-up, or where there are more lifts than can be searched
 */
export function twoFootTieUp(lifts: readonly Lift[], treadles: number): TwoFootTieUp | undefined {
  if (lifts.length <= treadles) return { tieUp: lifts, presses: lifts.map((_, index) => [index + 1]) };
  if (lifts.length > MOST_LIFTS) return undefined;
  const wanted = lifts.map((lift) => lift.reduce((set, shaft) => set | (1 << (shaft - 1)), 0));
  const ties = commonParts(wanted);
  // One treadle gives one lift, two give at most three, n at most n + n(n − 1)/2.
  for (let count = 1; count <= treadles; count++) {
    if (count + (count * (count - 1)) / 2 < lifts.length) continue;
    const tied = cover(wanted, ties, [], count);
    if (tied !== undefined) return described(wanted, tied);
  }
  return undefined;
}

/** A loom for handweaving has fewer treadles than this; more lifts than so many are woven from a lift plan. */
export const MOST_LIFTS = 12;

/** Everything that one or more lifts have in common, as sets of bits: the lifts themselves first, for one foot alone. */
function commonParts(lifts: readonly number[]): number[] {
  const parts = new Set<number>();
  for (const lift of lifts) for (const part of [...parts, -1]) parts.add(part & lift);
  parts.delete(0);
  const isLift = (part: number): number => (lifts.includes(part) ? 1 : 0);
  return [...parts].sort((a, b) => isLift(b) - isLift(a) || size(b) - size(a) || a - b);
}

/** Adds treadles until every lift is one of them or two together; undefined where `count` are not enough. */
function cover(
  lifts: readonly number[],
  ties: readonly number[],
  tied: readonly number[],
  count: number,
): readonly number[] | undefined {
  const open = lifts.find((lift) => !pressesFor(lift, tied));
  if (open === undefined) return tied;
  const left = count - tied.length;
  if (left === 0) return undefined;
  const parts = ties.filter((tie) => (tie & ~open) === 0);
  for (const first of parts) {
    const single = first === open || tied.some((other) => (other & ~open) === 0 && (other | first) === open);
    if (single) {
      const found = tied.includes(first) ? undefined : cover(lifts, ties, [...tied, first], count);
      if (found !== undefined) return found;
    }
  }
  if (left === 1) return undefined;
  for (const [index, first] of parts.entries()) {
    for (const second of parts.slice(index + 1)) {
      if ((first | second) !== open || first === open || tied.includes(first) || tied.includes(second)) continue;
      const found = cover(lifts, ties, [...tied, first, second], count);
      if (found !== undefined) return found;
    }
  }
  return undefined;
}

/** Treadles, numbered from 1, that raise just this lift: one if one will do. */
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
