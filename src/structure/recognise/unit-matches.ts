import { TABBY, type Unit, type Units } from '../model/unit.js';
import { type Alike, alikeBlocks, isRepetition } from './same-unit.js';

/** One unit found in a ring of strands, as it would be laid: incidental strands that come first, then its own. */
interface FoundUnit<S> {
  readonly block: string;
  readonly first: readonly S[];
  readonly own: readonly S[];
}

/** A cyclic list of strands read as units. */
export interface FoundUnits<S> {
  readonly units: readonly FoundUnit<S>[];
  /** Index at which the first unit's own strands begin; no other unit begins before it. */
  readonly from: number;
  /** The number of each strand name that was bound by the search. */
  readonly bound: ReadonlyMap<S, number>;
}

/** What is observed on the ring, and what a strand's name may stand for there. */
interface Observed<S> {
  /** A number for each strand of the ring; equal strands have equal numbers. */
  readonly ring: readonly number[];
  /** Numbers of names that are fixed; an absent name may be bound to any number that no other name has. */
  readonly names: ReadonlyMap<S, number>;
  /** Whether absent names may be bound at all. */
  readonly binds: boolean;
}

/** Most states of a search, more than any structure here needs; a larger search is given up. */
const MOST_STATES = 60_000;
/** So many blocks are tried under every letter, since sheds may tell blocks apart that are threaded alike. */
const FEW_BLOCKS = 4;
/** Cost of an incidental strand, more than any number of units: readings without incidentals are found first. */
const INCIDENTAL = 10_000;

/** The cyclic list, and the units to find in it. */
interface Ring<S extends number | string> {
  readonly units: Units<S>;
  readonly blocks: readonly (readonly [string, Unit<S>])[];
  /** Strands after which some block has an exception. */
  readonly heeded: readonly S[];
  readonly observed: Observed<S>;
  readonly alike: ReadonlyMap<string, Alike<S>>;
}

/** The state of a reading: the strand laid last, the next tabby strand, the binding of names. */
interface State<S> {
  readonly last: S | undefined;
  readonly turn: 0 | 1;
  readonly bound: ReadonlyMap<S, number>;
  /** The binding as text, for comparison. */
  readonly binding: string;
  readonly cost: number;
  readonly unit?: FoundUnit<S>;
  readonly before?: State<S>;
}

/**
 * Reads a cyclic list as a closed sequence of units, joined as the structure requires: the inverse of {@link
 * layClosed}. For each binding of the names, returns one reading: the one with the fewest incidental strands, then the
 * fewest units. The best binding comes first. The code is independent of any particular structure.
 */
export function findUnits<S extends number | string>(units: Units<S>, observed: Observed<S>): FoundUnits<S>[] {
  const size = observed.ring.length;
  const blocks = Object.entries(units.blocks);
  const heeded = namesOf(units).filter((name) => blocks.some(([, unit]) => unit.after?.[name] !== undefined));
  const alternates = blocks.some(([, unit]) => [unit.lay, ...formsOf(unit)].flat().some((name) => name === TABBY));
  const alike = observed.binds && blocks.length > FEW_BLOCKS ? alikeBlocks(blocks) : new Map<string, Alike<S>>();
  const lasts = [undefined, ...heeded];
  const longest = Math.max(...blocks.map(([, unit]) => longestOf(unit)));
  let budget = MOST_STATES;
  const best = new Map<string, { readonly found: FoundUnits<S>; readonly cost: number }>();
  const sorted = (): FoundUnits<S>[] => [...best.values()].sort((a, b) => a.cost - b.cost).map(({ found }) => found);
  for (let from = 0; from < Math.min(size, longest); from++) {
    for (const last of lasts) {
      // Without tabby between, the strand laid last is the observed one.
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

/**
 * Walks once round the list from a state, by the cheapest way to each state; a reading closes if it returns to its
 * state.
 */
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

/** Lays one unit on the list; undefined if a strand differs from the observed one. */
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

/** The same units, rotated to begin with the one whose own strands begin first in the list. */
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
