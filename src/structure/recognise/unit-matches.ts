import { TABBY, type Unit, type Units } from '../model/unit.js';
import { type Alike, alikeBlocks, isRepetition } from './same-unit.js';

/** One unit found in a ring of strands, as it would be laid: incidental strands that come first, then its own. */
export interface FoundUnit<S> {
  readonly block: string;
  readonly first: readonly S[];
  readonly own: readonly S[];
}

/** A ring of strands read as units. */
export interface FoundUnits<S> {
  readonly units: readonly FoundUnit<S>[];
  /** Strand of the ring on which the first unit's own strands begin; no other unit begins before it. */
  readonly from: number;
  /** What each strand name was found to be; for names that are bound in finding. */
  readonly bound: ReadonlyMap<S, number>;
}

/** What is observed on the ring, and what a strand's name may stand for there. */
export interface Observed<S> {
  /** A number for each strand of the ring; equal strands have equal numbers. */
  readonly ring: readonly number[];
  /** The number that each name stands for; a name that is absent may stand for any number that no other has. */
  readonly names: ReadonlyMap<S, number>;
  /** Whether a name that is absent may be bound at all. */
  readonly binds: boolean;
}

/** More states than any of our structures needs; a search that grows beyond is given up. */
const MOST_STATES = 60_000;
/** An incidental strand costs more than any number of units: units without incidentals are found first. */
const INCIDENTAL = 10_000;

/** The ring and the units that are looked for on it. */
interface Ring<S extends number | string> {
  readonly units: Units<S>;
  readonly blocks: readonly (readonly [string, Unit<S>])[];
  /** Strands after which some block lays something else. */
  readonly heeded: readonly S[];
  readonly observed: Observed<S>;
  readonly alike: ReadonlyMap<string, Alike<S>>;
}

/** Where a reading stands: what was laid last, whose turn the tabby is, what the names stand for. */
interface State<S> {
  readonly last: S | undefined;
  readonly turn: 0 | 1;
  readonly bound: ReadonlyMap<S, number>;
  /** The names bound on the way, in words. */
  readonly binding: string;
  readonly cost: number;
  readonly unit?: FoundUnit<S>;
  readonly before?: State<S>;
}

/**
 * Reads a ring as units laid one after another, each joined to the one before it as the structure asks, so that the
 * reading closes: the inverse of laying a closed profile. For each way of binding the names one reading is given, that
 * with the fewest incidental strands, then the fewest units; the best binding comes first. Nothing here knows any
 * structure.
 */
export function findUnits<S extends number | string>(units: Units<S>, observed: Observed<S>): FoundUnits<S>[] {
  const size = observed.ring.length;
  const blocks = Object.entries(units.blocks);
  const heeded = namesOf(units).filter((name) => blocks.some(([, unit]) => unit.after?.[name] !== undefined));
  const alternates = blocks.some(([, unit]) => [unit.lay, ...formsOf(unit)].flat().some((name) => name === TABBY));
  const alike = observed.binds ? alikeBlocks(blocks) : new Map<string, Alike<S>>();
  const lasts = [undefined, ...heeded];
  const longest = Math.max(...blocks.map(([, unit]) => longestOf(unit)));
  let budget = MOST_STATES;
  const best = new Map<string, { readonly found: FoundUnits<S>; readonly cost: number }>();
  const sorted = (): FoundUnits<S>[] => [...best.values()].sort((a, b) => a.cost - b.cost).map(({ found }) => found);
  for (let from = 0; from < Math.min(size, longest); from++) {
    for (const last of lasts) {
      // Without tabby between, the strand laid last is the one that lies there.
      const there = last === undefined || alternates ? undefined : observed.names.get(last);
      if (there !== undefined && there !== observed.ring.at(from - 1)) continue;
      for (const turn of alternates ? ([0, 1] as const) : ([0] as const)) {
        const start = { last, turn, bound: observed.names, binding: '', cost: 0 };
        const round = walk({ units, blocks, heeded, observed, alike }, from, start, budget);
        budget -= round.states;
        if (budget <= 0) return sorted();
        for (const closed of round.closed) {
          const known = best.get(closed.binding);
          if (known !== undefined && known.cost <= closed.cost) continue;
          const found = { ...fromTheStart(pathOf(closed), from, size), bound: closed.bound };
          best.set(closed.binding, { found, cost: closed.cost });
        }
      }
    }
  }
  return sorted();
}

/** Goes once round the ring from a state, by the shortest way to each state; closed where it comes back to itself. */
function walk<S extends number | string>(
  { blocks, alike, ...ring }: Ring<S>,
  from: number,
  start: State<S>,
  budget: number,
): { closed: State<S>[]; states: number } {
  const size = ring.observed.ring.length;
  const reached: (Map<string, State<S>> | undefined)[] = Array.from({ length: size + 1 });
  reached[0] = new Map([['', start]]);
  let states = 0;
  for (let at = 0; at < size; at++) {
    for (const state of reached[at]?.values() ?? []) {
      if (++states > budget) return { closed: [], states };
      for (const [block, unit] of blocks) {
        if (isRepetition(block, state.bound, alike)) continue;
        for (const form of formsAfter(unit, state.last)) {
          const next = laid(ring, from + at, state, block, form);
          if (next === undefined) continue;
          const to = at + next.unit!.first.length + next.unit!.own.length;
          if (to > size || to === at) continue;
          const sign = `${next.last} ${next.turn} ${next.binding}`;
          const there = reached[to] ?? new Map<string, State<S>>();
          reached[to] = there;
          const known = there.get(sign);
          if (known === undefined || next.cost < known.cost) there.set(sign, next);
        }
      }
    }
    reached[at] = undefined;
  }
  const closed = [...(reached[size]?.values() ?? [])].filter(
    (state) => state.last === start.last && state.turn === start.turn,
  );
  return { closed, states };
}

/** Lays one unit on the ring; undefined where a strand is another than the one that is there. */
function laid<S extends number | string>(
  { units, heeded, observed }: Omit<Ring<S>, 'blocks' | 'alike'>,
  from: number,
  state: State<S>,
  block: string,
  form: { readonly first: readonly S[]; readonly lay: readonly S[] },
): State<S> | undefined {
  const size = observed.ring.length;
  let { last, turn, bound, binding } = state;
  const names: S[] = [];
  for (const wanted of [...form.first, ...form.lay]) {
    let name = wanted;
    if (wanted === TABBY) {
      name = units.tabby![turn];
      turn = turn === 0 ? 1 : 0;
    } else {
      last = heeded.includes(wanted) ? wanted : undefined;
    }
    const there = observed.ring[(from + names.length) % size]!;
    const known = bound.get(name);
    if (known === undefined) {
      if (!observed.binds || [...bound.values()].includes(there)) return undefined;
      bound = new Map(bound).set(name, there);
      binding = [...bound].sort().join(' ');
    } else if (known !== there) {
      return undefined;
    }
    names.push(name);
  }
  const first = names.slice(0, form.first.length);
  const unit = { block, first, own: names.slice(form.first.length) };
  return { last, turn, bound, binding, unit, before: state, cost: state.cost + 1 + first.length * INCIDENTAL };
}

function formsAfter<S extends number | string>(
  unit: Unit<S>,
  last: S | undefined,
): { readonly first: readonly S[]; readonly lay: readonly S[] }[] {
  const after = last === undefined ? undefined : unit.after?.[last];
  if (after === undefined) return [{ first: [], lay: unit.lay }];
  if ('never' in after) return [];
  const { lay = unit.lay, first = [[]] } = after;
  return first.map((strands) => ({ first: strands, lay }));
}

function formsOf<S extends number | string>(unit: Unit<S>): readonly (readonly S[])[] {
  return (Object.values(unit.after ?? {}) as NonNullable<Unit<S>['after']>[S][]).flatMap((after) =>
    after === undefined || 'never' in after ? [] : [after.lay ?? [], ...(after.first ?? [])],
  );
}

function longestOf<S extends number | string>(unit: Unit<S>): number {
  const forms = formsOf(unit).map((strands) => strands.length);
  return unit.lay.length + Math.max(0, ...forms);
}

function namesOf<S extends number | string>(units: Units<S>): S[] {
  const names = Object.values(units.blocks).flatMap((unit) => [unit.lay, ...formsOf(unit)].flat());
  return [...new Set(names)].filter((name) => name !== TABBY);
}

function pathOf<S>(end: State<S>): FoundUnit<S>[] {
  const path: FoundUnit<S>[] = [];
  for (let state: State<S> | undefined = end; state?.unit !== undefined; state = state.before) path.push(state.unit);
  return path.reverse();
}

/** The same units, begun with the one whose own strands begin first on the ring. */
function fromTheStart<S>(units: readonly FoundUnit<S>[], from: number, size: number): Omit<FoundUnits<S>, 'bound'> {
  let at = from;
  let first = { unit: 0, from: size };
  units.forEach((each, unit) => {
    const own = (at + each.first.length) % size;
    if (own < first.from) first = { unit, from: own };
    at += each.first.length + each.own.length;
  });
  return { units: [...units.slice(first.unit), ...units.slice(0, first.unit)], from: first.from };
}
