/** One filling: a number of whole repeats, and the ends round them. */
export interface Filling {
  readonly repeats: number;
  /** Ends of each border, for even borders. */
  readonly border?: number;
  /** All ends: borders, whole repeats and balance. */
  readonly ends: number;
  /** Ends more than were asked for; negative if fewer. */
  readonly over: number;
}

/** The turns of a mirrored order: on a single thread, or on a doubled one. */
export const TURNS = ['single', 'doubled'] as const;
export type Turn = (typeof TURNS)[number];

/** Fewest ends of a border; fewer are only an edge (common practice, no source). */
const LEAST_BORDER = 4;

/**
 * The three fillings nearest to a width, nearest first; ties go to the narrower.
 *
 * @param wanted ends asked for
 * @param repeat ends in one repeat
 * @param around ends that do not repeat: borders on both sides, and balance
 */
export function nearestFillings(wanted: number, repeat: number, around: number): Filling[] {
  const about = Math.floor((wanted - around) / repeat);
  const counts = [-1, 0, 1, 2].map((step) => about + step).filter((repeats) => repeats >= 1);
  const least = counts.length < 3 ? [1, 2, 3] : counts;
  return least
    .map((repeats) => ({ repeats, ends: repeats * repeat + around, over: repeats * repeat + around - wanted }))
    .sort((a, b) => Math.abs(a.over) - Math.abs(b.over) || a.over - b.over)
    .slice(0, 3);
}

/**
 * The three fillings with even borders nearest to a width, nearest first; ties go to the one with most repeats.
 *
 * @param around ends that do not repeat beside the borders: balance
 */
export function evenFillings(wanted: number, repeat: number, around: number): Filling[] {
  const most = Math.max(1, Math.floor((wanted - around - 2 * LEAST_BORDER) / repeat));
  return [most, most - 1, most - 2]
    .filter((repeats) => repeats >= 1)
    .map((repeats): Filling => {
      const border = Math.max(LEAST_BORDER, evenBorders(wanted, repeat, around, repeats));
      const ends = repeats * repeat + around + 2 * border;
      return { repeats, border, ends, over: ends - wanted };
    })
    .sort((a, b) => Math.abs(a.over) - Math.abs(b.over) || b.repeats - a.repeats);
}

/**
 * The widest even borders with which whole repeats stay within a width.
 *
 * @param around ends that do not repeat beside the borders: balance
 */
export function evenBorders(wanted: number, repeat: number, around: number, repeats: number): number {
  return Math.max(0, Math.floor((wanted - repeats * repeat - around) / 2));
}

/**
 * Mirrors an order of n threads: returns the order followed by its reverse as one repeat (2n − 2 threads with single
 * turns, 2n with doubled turns), and the threads that balance the last repeat (one, or none).
 */
export function mirrored<T>(
  order: readonly T[],
  turn: Turn,
): { readonly order: readonly T[]; readonly balance: number } {
  if (turn === 'doubled') return { order: [...order, ...order.toReversed()], balance: 0 };
  if (order.length < 2) return { order, balance: 0 };
  return { order: [...order, ...order.slice(1, -1).reverse()], balance: 1 };
}

/**
 * The least number of threads that, added after whole repeats, makes them read the same from both sides (AB AB AB A:
 * one); undefined if no number does.
 */
export function balanceOf<T>(repeat: readonly T[]): number | undefined {
  const n = repeat.length;
  for (let balance = 0; balance < n; balance++) {
    let same = true;
    for (let k = 0; same && k < n; k++) same = repeat[k] === repeat[(balance - 1 - k + 2 * n) % n];
    if (same) return balance;
  }
  return undefined;
}
