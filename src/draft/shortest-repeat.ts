import type { Draft } from './draft.js';

/** How a list of threads repeats. */
export interface Repetition {
  /** Threads in one repeat; all threads if nothing repeats. */
  readonly length: number;
  /** Threads after the last whole repeat, which balance a warp at its edge. */
  readonly balance: number;
}

/**
 * The smallest repeat of a list. The last repeat may be incomplete if at least two whole repeats precede it (the
 * failure function of Knuth, Morris and Pratt 1977; at most 2n comparisons).
 */
export function repetition(words: readonly (string | number)[]): Repetition {
  const { length } = words;
  const border = new Int32Array(length + 1);
  for (let i = 1, k = 0; i < length; i++) {
    while (k > 0 && words[i] !== words[k]) k = border[k]!;
    if (words[i] === words[k]) k++;
    border[i + 1] = k;
  }
  const period = length - border[length]!;
  if (period * 2 > length) return { length, balance: 0 };
  return { length: period, balance: length % period };
}

/** One repeat of a cyclic list; the whole list if its last repeat is incomplete. */
export function oneRepeat<T extends string | number>(ring: readonly T[]): readonly T[] {
  const { length, balance } = repetition(ring);
  return balance === 0 ? ring.slice(0, length) : ring;
}

/**
 * Reduces a draft to one repeat each way. Ends recur if their shafts, colours and units all recur; picks recur if their
 * treadles, colours, kinds and units all recur.
 */
export function toOneRepeat(draft: Draft): { draft: Draft; ends: Repetition; picks: Repetition } {
  const { companions } = draft;
  const endStarts = startsUnit(draft.endUnits);
  const pickStarts = startsUnit(draft.pickUnits);
  const ends = repetition(
    draft.threading.map((on, i) => [on, draft.warp[i], companions?.ends[i], endStarts.has(i)].join('|')),
  );
  const picks = repetition(
    draft.treadling.map((treadles, j) =>
      [treadles, draft.weft[j], draft.pickKinds[j], companions?.picks[j], pickStarts.has(j)].join('|'),
    ),
  );
  const across = ends.length;
  const along = picks.length;
  const reduced: Draft = {
    ...draft,
    threading: draft.threading.slice(0, across),
    warp: draft.warp.slice(0, across),
    endUnits: cut(draft.endUnits, across),
    treadling: draft.treadling.slice(0, along),
    weft: draft.weft.slice(0, along),
    pickKinds: draft.pickKinds.slice(0, along),
    pickUnits: cut(draft.pickUnits, along),
    ...(companions !== undefined && {
      companions: { ends: companions.ends.slice(0, across), picks: companions.picks.slice(0, along) },
    }),
  };
  return { draft: reduced, ends, picks };
}

/** The units of the first `total` threads. */
function cut(units: readonly number[], total: number): number[] {
  const left: number[] = [];
  for (let laid = 0, u = 0; laid < total; laid += left[u++]!) left.push(Math.min(units[u]!, total - laid));
  return left;
}

/** Indices of the threads on which a unit begins. */
function startsUnit(units: readonly number[]): ReadonlySet<number> {
  const starts = new Set<number>();
  let at = 0;
  for (const size of units) {
    starts.add(at);
    at += size;
  }
  return starts;
}
