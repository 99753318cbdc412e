/** A choice of one cloth for each weaver, as unlike as can be. */
export interface Unlike {
  /** Index of each weaver's cloth. */
  readonly dealt: readonly number[];
  /** Least distance of any two of them; 1 for a single cloth. */
  readonly least: number;
  /** No choice has a greater least distance than this; equal to `least` if the choice is exact. */
  readonly atMost: number;
}

/** Steps of the exact search for one distance, each about one look at a pair of cloths, before it is given up. */
const MOST_STEPS = 100_000_000;
/** Cloths with which a first choice is begun. */
const MOST_BEGUN = 60;

/** Which cloths fit each weaver's loom: a row a weaver, a column a cloth. */
export type Fits = readonly (readonly boolean[])[];

/**
 * Chooses a different cloth for each weaver so that the least distance of any two is as great as can be. A good choice
 * is found first, from every cloth in turn, and bettered by exchanges. Then ever greater distances are tried: cloths
 * that far apart are sought by branch and bound, until no more are found or the steps are used up.
 *
 * @param apart distances of all pairs of cloths
 * @returns undefined if not every weaver can have a cloth of their own
 */
export function mostUnlikeDeal(fits: Fits, apart: readonly (readonly number[])[]): Unlike | undefined {
  const room = new Room(fits, apart);
  let best = room.greedy();
  if (best === undefined) return undefined;
  const all = new Set(apart.flatMap((row, a) => row.filter((_, b) => a < b)));
  const steps = [...all].filter((distance) => distance > room.least(best!)).sort((a, b) => a - b);
  let [from, to, steady] = [0, steps.length, true];
  while (from < to) {
    const middle = (from + to) >> 1;
    const found = room.apartBy(steps[middle]!);
    if (found === 'given up') steady = false;
    if (typeof found === 'string') to = middle;
    else {
      best = found;
      from = steps.findIndex((distance) => distance > room.least(found));
      if (from < 0) from = to;
    }
  }
  const least = room.least(best);
  const dealt = room.matched(best)!;
  return { dealt, least, atMost: steady ? least : room.bound(steps, least) };
}

/** Cloths, weavers and distances, among which sets of cloths are sought. */
class Room {
  private readonly fits: Fits;
  private readonly apart: readonly (readonly number[])[];
  private readonly cloths: number;
  private readonly weavers: number;
  /** Whether the same cloths fit every loom. */
  private readonly alike: boolean;
  private steps = 0;
  /** The least distance at which it is certain that there is no choice. */
  private impossible = Number.POSITIVE_INFINITY;

  constructor(fits: Fits, apart: readonly (readonly number[])[]) {
    this.fits = fits;
    this.apart = apart;
    this.weavers = fits.length;
    this.cloths = apart.length;
    this.alike = fits.every((row) => row.every((fit, c) => fit === fits[0]![c]));
  }

  /** Least distance of any two of a set. */
  least(set: readonly number[]): number {
    let least = 1;
    set.forEach((a, at) => {
      for (const b of set.slice(at + 1)) least = Math.min(least, this.apart[a]![b]!);
    });
    return least;
  }

  /** The cloth of each weaver, if every cloth of the set can have a weaver of its own (augmenting paths). */
  matched(set: readonly number[]): readonly number[] | undefined {
    if (this.alike) return set.every((c) => this.fits[0]![c]) ? set : undefined;
    const cloth = new Array<number>(this.weavers).fill(-1);
    const place = (c: number, seen: Set<number>): boolean => {
      for (let w = 0; w < this.weavers; w++) {
        if (!this.fits[w]![c] || seen.has(w)) continue;
        seen.add(w);
        if (cloth[w]! < 0 || place(cloth[w]!, seen)) {
          cloth[w] = c;
          return true;
        }
      }
      return false;
    };
    return set.every((c) => place(c, new Set())) ? cloth : undefined;
  }

  /**
   * The best of the sets that begin with each cloth and always take the farthest next, bettered by exchanges. Any set
   * whose cloths all have weavers can be filled up, if there is a choice at all.
   */
  greedy(): number[] | undefined {
    let best: number[] | undefined;
    for (let first = 0; first < Math.min(this.cloths, MOST_BEGUN); first++) {
      const set = this.filledUp([first]);
      if (set === undefined) continue;
      const better = this.exchanged(set);
      if (best === undefined || this.least(better) > this.least(best)) best = better;
    }
    return best;
  }

  private filledUp(begun: readonly number[]): number[] | undefined {
    if (this.matched(begun) === undefined) return undefined;
    const set = [...begun];
    while (set.length < this.weavers) {
      const others = this.all()
        .filter((c) => !set.includes(c))
        .map((c) => ({ c, far: Math.min(...set.map((own) => this.apart[own]![c]!)) }))
        .sort((a, b) => b.far - a.far || a.c - b.c);
      const next = others.find(({ c }) => this.matched([...set, c]) !== undefined);
      if (next === undefined) return undefined;
      set.push(next.c);
    }
    return set;
  }

  /** Exchanges one of the nearest two for another cloth, as long as that sets the nearest farther apart. */
  private exchanged(begun: readonly number[]): number[] {
    let set = [...begun];
    for (let least = this.least(set); ; ) {
      const near = set.filter((a) => set.some((b) => a !== b && this.apart[a]![b]! <= least));
      const better = near
        .flatMap((gone) =>
          this.all().map((c) => (set.includes(c) ? undefined : set.map((own) => (own === gone ? c : own)))),
        )
        .find((other) => other !== undefined && this.least(other) > least && this.matched(other) !== undefined);
      if (better === undefined) return set;
      set = better;
      least = this.least(set);
    }
  }

  /** A set whose cloths are all at least `distance` apart; or that there is none; or that the search was given up. */
  apartBy(distance: number): number[] | 'none' | 'given up' {
    const far = (a: number, b: number): boolean => a !== b && this.apart[a]![b]! >= distance;
    const extend = (set: readonly number[], candidates: readonly number[]): number[] | undefined => {
      if (set.length === this.weavers) return [...set];
      this.steps += 1 + (candidates.length * candidates.length) / 4;
      if (this.steps > MOST_STEPS) return undefined;
      const { order, colours } = coloured(candidates, far);
      // A colour's cloths are too near to one another for two of them.
      for (let at = order.length - 1; at >= 0 && set.length + colours[at]! >= this.weavers; at--) {
        const next = [...set, order[at]!];
        if (this.matched(next) === undefined) continue;
        const found = extend(
          next,
          order.slice(0, at).filter((c) => far(c, order[at]!)),
        );
        if (found !== undefined || this.steps > MOST_STEPS) return found;
      }
      return undefined;
    };
    this.steps = 0;
    const found = extend(
      [],
      this.all().sort((a, b) => this.degree(b, far) - this.degree(a, far) || a - b),
    );
    if (found !== undefined) return found;
    if (this.steps > MOST_STEPS) return 'given up';
    this.impossible = Math.min(this.impossible, distance);
    return 'none';
  }

  /** The greatest least distance that is not known to be impossible. */
  bound(steps: readonly number[], least: number): number {
    return steps.findLast((distance) => distance < this.impossible) ?? least;
  }

  private degree(cloth: number, far: (a: number, b: number) => boolean): number {
    return this.all().filter((other) => far(cloth, other)).length;
  }

  private all(): number[] {
    return Array.from({ length: this.cloths }, (_, c) => c);
  }
}

/** Cloths in colours, none of a colour far from another of it; in the order of the colours, which count from 1. */
function coloured(
  cloths: readonly number[],
  far: (a: number, b: number) => boolean,
): { order: number[]; colours: number[] } {
  const classes: number[][] = [];
  for (const cloth of cloths) {
    const own = classes.find((members) => !members.some((member) => far(cloth, member)));
    if (own === undefined) classes.push([cloth]);
    else own.push(cloth);
  }
  return { order: classes.flat(), colours: classes.flatMap((members, at) => members.map(() => at + 1)) };
}
