/**
 * The cloth at each crossing of a warp order (row) with a weft order (column), by name; null if it is no good cloth.
 */
export type SectionCrossings = readonly (readonly (string | null)[])[];

/** A choice of warp and weft orders that weave many different good cloths. */
export interface Choice {
  /** Indices of the warp orders, and of the weft orders, ascending. */
  readonly warps: readonly number[];
  readonly wefts: readonly number[];
  /** Number of different cloths woven. */
  readonly cloths: number;
  /** Upper bound for any choice; equal to `cloths` if the choice is exact. */
  readonly atMost: number;
  readonly exact: boolean;
}

/** Most crossings that the exact search may look at; beyond that the choice is greedy. */
const MOST_CROSSED = 5_000_000;

/**
 * Chooses the warp and weft sections of a gamp (maximum coverage). Small cases are solved exactly, large ones greedily
 * in two steps: first warp orders, each adding the most cloths over all weft orders; then weft orders, each adding the
 * most cloths on the chosen warps. Each step reaches at least 1 − 1/e (63 %) of its own optimum (Nemhauser, Wolsey and
 * Fisher 1978); `atMost` bounds both steps together for the case at hand.
 */
export function chooseSections(crossings: SectionCrossings, warps: number, wefts: number): Choice {
  const columns = crossings[0]?.length ?? 0;
  const k = Math.min(warps, crossings.length);
  const m = Math.min(wefts, columns);
  const crossed = binomial(crossings.length, k) * binomial(columns, m) * k * m;
  return crossed <= MOST_CROSSED ? exactly(crossings, k, m) : greedily(crossings, k, m);
}

/** The number of different good cloths that these orders weave when every warp order crosses every weft order. */
export function clothsOf(crossings: SectionCrossings, warps: readonly number[], wefts: readonly number[]): number {
  const found = new Set<string>();
  for (const w of warps) {
    for (const f of wefts) {
      const cloth = crossings[w]![f]!;
      if (cloth !== null) found.add(cloth);
    }
  }
  return found.size;
}

function exactly(crossings: SectionCrossings, k: number, m: number): Choice {
  let best: { warps: readonly number[]; wefts: readonly number[]; cloths: number } = {
    warps: [],
    wefts: [],
    cloths: -1,
  };
  for (const warps of subsets(crossings.length, k)) {
    for (const wefts of subsets(crossings[0]?.length ?? 0, m)) {
      const cloths = clothsOf(crossings, warps, wefts);
      if (cloths > best.cloths) best = { warps, wefts, cloths };
    }
  }
  return { ...best, atMost: best.cloths, exact: true };
}

function greedily(crossings: SectionCrossings, k: number, m: number): Choice {
  const columns = crossings[0]!.length;
  const all = Array.from({ length: columns }, (_, f) => f);
  const ofWarp = crossings.map((row) => new Set(row.filter((cloth) => cloth !== null)));
  const warps = cover(ofWarp, k);
  const ofWeft = all.map((f) => new Set(warps.chosen.map((w) => crossings[w]![f]!).filter((cloth) => cloth !== null)));
  const wefts = cover(ofWeft, m);
  const cloths = clothsOf(crossings, warps.chosen, wefts.chosen);
  // A warp order gives at most one cloth per weft order.
  const perWarp = ofWarp.map((own) => Math.min(own.size, m)).sort((a, b) => b - a);
  const atMost = Math.min(warps.atMost, sum(perWarp.slice(0, k)));
  return { warps: warps.chosen, wefts: wefts.chosen, cloths, atMost, exact: cloths === atMost };
}

/**
 * Greedy maximum coverage. Gains only shrink, so at any step no choice can cover more than is covered then plus the
 * `count` largest gains available then; `atMost` is the least such bound.
 */
function cover(sets: readonly ReadonlySet<string>[], count: number): { chosen: number[]; atMost: number } {
  const covered = new Set<string>();
  const chosen: number[] = [];
  let atMost = Number.POSITIVE_INFINITY;
  const gains = (): number[] => sets.map((own) => [...own].filter((cloth) => !covered.has(cloth)).length);
  for (;;) {
    const gain = gains();
    const largest = [...gain].sort((a, b) => b - a).slice(0, count);
    atMost = Math.min(atMost, covered.size + sum(largest));
    if (chosen.length === count) return { chosen: chosen.sort((a, b) => a - b), atMost };
    let next = -1;
    gain.forEach((adds, at) => {
      if (!chosen.includes(at) && (next < 0 || adds > gain[next]!)) next = at;
    });
    chosen.push(next);
    for (const cloth of sets[next]!) covered.add(cloth);
  }
}

/** All subsets of `count` of the numbers below `of`, in lexicographic order. */
function* subsets(of: number, count: number, from = 0): Generator<number[]> {
  if (count === 0) {
    yield [];
    return;
  }
  for (let first = from; first <= of - count; first++) {
    for (const rest of subsets(of, count - 1, first + 1)) yield [first, ...rest];
  }
}

function binomial(n: number, k: number): number {
  let ways = 1;
  for (let j = 1; j <= k; j++) ways = (ways * (n - k + j)) / j;
  return Math.round(ways);
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, each) => total + each, 0);
}
