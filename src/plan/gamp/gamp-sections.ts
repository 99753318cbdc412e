/** What each crossing of a warp order (row) with a weft order (column) weaves: the cloth's name, or null if not good. */
export type Crossings = readonly (readonly (string | null)[])[];

/** Warp and weft orders chosen so that they weave as many different good cloths as can be. */
export interface Choice {
  /** Indices of the warp orders, and of the weft orders, ascending. */
  readonly warps: readonly number[];
  readonly wefts: readonly number[];
  /** Different cloths woven. */
  readonly cloths: number;
  /** No choice weaves more than this. Equal to `cloths` where the choice is exact. */
  readonly atMost: number;
  readonly exact: boolean;
}

/** Crossings that are looked at, choice by choice; where it would take more the choice is greedy. */
const MOST_CROSSED = 5_000_000;

/**
 * Chooses warp sections and weft sections of a gamp (maximum coverage). Small cases are solved exactly. Large ones
 * greedily: each warp order in turn adds the most cloths that any weft order gives, then each weft order the most on
 * those warps. Of either step the result is at least 1 − 1/e (63 %) of that step's best (Nemhauser, Wolsey and Fisher
 * 1978); `atMost` bounds the two together for the case in hand.
 */
export function chooseSections(crossings: Crossings, warps: number, wefts: number): Choice {
  const columns = crossings[0]?.length ?? 0;
  const k = Math.min(warps, crossings.length);
  const m = Math.min(wefts, columns);
  const crossed = binomial(crossings.length, k) * binomial(columns, m) * k * m;
  return crossed <= MOST_CROSSED ? exactly(crossings, k, m) : greedily(crossings, k, m);
}

/** Different good cloths that these orders weave when all are crossed with all. */
export function clothsOf(crossings: Crossings, warps: readonly number[], wefts: readonly number[]): number {
  const found = new Set<string>();
  for (const w of warps) {
    for (const f of wefts) {
      const cloth = crossings[w]![f]!;
      if (cloth !== null) found.add(cloth);
    }
  }
  return found.size;
}

function exactly(crossings: Crossings, k: number, m: number): Choice {
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

function greedily(crossings: Crossings, k: number, m: number): Choice {
  const columns = crossings[0]!.length;
  const all = Array.from({ length: columns }, (_, f) => f);
  const ofWarp = crossings.map((row) => new Set(row.filter((cloth) => cloth !== null)));
  const warps = cover(ofWarp, k);
  const ofWeft = all.map((f) => new Set(warps.chosen.map((w) => crossings[w]![f]!).filter((cloth) => cloth !== null)));
  const wefts = cover(ofWeft, m);
  const cloths = clothsOf(crossings, warps.chosen, wefts.chosen);
  // A warp order gives no more than one cloth a weft order, whatever the others are.
  const perWarp = ofWarp.map((own) => Math.min(own.size, m)).sort((a, b) => b - a);
  const atMost = Math.min(warps.atMost, sum(perWarp.slice(0, k)));
  return { warps: warps.chosen, wefts: wefts.chosen, cloths, atMost, exact: cloths === atMost };
}

/**
 * Greedy maximum coverage. The best choice covers no more than what is covered at any step plus the largest `count`
 * gains that are then on offer, because gains only shrink.
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

/** All ways of taking `count` of the first `of` numbers, in dictionary order. */
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
