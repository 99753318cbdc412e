import { Problem } from '../../problem.js';

/**
 * The model of every structure. The strands that a block lays depend only on the block and on the strand just laid; so
 * a block is a unit of strands, with exceptions after certain strands. Warp and weft use the same model: strands are
 * shafts (numbers) in the warp, and names of treadles in the weft.
 */
export interface Unit<S extends number | string> {
  readonly lay: readonly S[];
  /** Exceptions, by the strand just laid. */
  readonly after?: Readonly<Partial<Record<S, After<S>>>>;
  /** 1 for each strand of `lay` that takes the companion of its element's colour. Absent: none. */
  readonly companions?: readonly (0 | 1)[];
}

/** An exception: incidental strands before the unit (the usual, then others in use), another form of it, or a ban. */
export type After<S> =
  | { readonly first?: readonly (readonly S[])[]; readonly lay?: readonly S[] }
  /** The block may not come here; the text gives the reason. */
  | { readonly never: string };

/** The blocks of the warp or of the weft, by letter. */
export interface Units<S extends number | string> {
  readonly blocks: Readonly<Record<string, Unit<S>>>;
  /** Strands that may be assumed just before the first; of several, the one that closes the repeat soonest is used. */
  readonly starts?: readonly S[];
  /** The two strands that the word {@link TABBY} means in turn. */
  readonly tabby?: readonly [S, S];
}

/** In a treadling, the next of the two tabby treadles. It does not count as the strand just laid. */
export const TABBY = 'tabby';

/** One strand of a closed repeat. */
export interface Strand<S> {
  readonly name: S;
  /** Letter of its block. An incidental strand belongs to the unit before it. */
  readonly block: string;
  /** Number of its unit, from 0. */
  readonly unit: number;
  readonly incidental: boolean;
  readonly companion: 0 | 1;
  /** Index among its unit's own strands, or among the incidental strands next to it, from 0. */
  readonly place: number;
}

/** The strands that one element of a profile lays. */
interface Group<S> {
  readonly block: string;
  readonly first: readonly S[];
  readonly own: readonly S[];
  readonly companions: readonly (0 | 1)[] | undefined;
}

interface State<S> {
  readonly last: S | undefined;
  readonly turn: 0 | 1;
}

/**
 * Lays a profile as one closed repeat. The profile is laid again and again, each round from the state in which the last
 * one ended, until the state at the seam recurs; so the seam is a join like any other. A profile that needs two rounds
 * (huck with an odd number of groups, an odd number of pattern picks between tabbies) is laid twice.
 *
 * @param profile letters of blocks, all of them known to `units`, at least one
 * @param choose which of several incidental strands to lay before the element of this index
 * @throws Problem if a block may not come after its neighbour, with a remedy
 */
export function layClosed<S extends number | string>(
  units: Units<S>,
  profile: readonly string[],
  choose: (element: number) => number = () => 0,
): Strand<S>[] {
  let shortest: Strand<S>[] | undefined;
  for (const last of units.starts ?? [undefined]) {
    const closed = strandsOf(closeFrom(units, profile, choose, { last, turn: 0 }));
    if (shortest === undefined || closed.length < shortest.length) shortest = closed;
  }
  return shortest!;
}

function closeFrom<S extends number | string>(
  units: Units<S>,
  profile: readonly string[],
  choose: (element: number) => number,
  start: State<S>,
): Group<S>[] {
  const heeded = new Set(Object.values(units.blocks).flatMap((unit) => Object.keys(unit.after ?? {})));
  const seen = new Map<string, number>();
  const rounds: Group<S>[][] = [];
  let state = start;
  for (;;) {
    const sign = `${heeded.has(String(state.last)) ? state.last : ''} ${state.turn}`;
    const from = seen.get(sign);
    if (from !== undefined) return rounds.slice(from).flat();
    seen.set(sign, rounds.length);
    const round: Group<S>[] = [];
    profile.forEach((block, element) => {
      const form = formOf(units, profile, element, state.last);
      const wanted = form.first?.[choose(element) % form.first.length] ?? [];
      const first = resolve(units, wanted, state);
      const own = resolve(units, form.lay, first.state);
      round.push({ block, first: first.names, own: own.names, companions: units.blocks[block]!.companions });
      state = own.state;
    });
    rounds.push(round);
  }
}

function formOf<S extends number | string>(
  units: Units<S>,
  profile: readonly string[],
  element: number,
  last: S | undefined,
): { lay: readonly S[]; first?: readonly (readonly S[])[] } {
  const unit = units.blocks[profile[element]!]!;
  const after = last === undefined ? undefined : unit.after?.[last];
  if (after === undefined) return unit.after === undefined ? unit : { lay: unit.lay };
  if ('never' in after) throw new Problem(refusal(units, profile, element, last!, after.never));
  return { lay: unit.lay, ...after };
}

/** The problem that one block may not follow another: where, why, and which block between the two would help. */
function refusal<S extends number | string>(
  units: Units<S>,
  profile: readonly string[],
  element: number,
  last: S,
  why: string,
): string {
  const block = profile[element]!;
  const before = profile[(element + profile.length - 1) % profile.length]!;
  const place =
    element === 0 ? 'at the seam, where the profile begins again' : `at elements ${element} and ${element + 1}`;
  const between = Object.entries(units.blocks)
    .filter(([, unit]) => {
      const joins = unit.after?.[last];
      const next = units.blocks[block]!.after?.[unit.lay.at(-1)!];
      return !(joins !== undefined && 'never' in joins) && !(next !== undefined && 'never' in next);
    })
    .map(([letter]) => letter);
  const mend = between.length === 0 ? '' : `; put ${between.join(' or ')} between them`;
  return `profile ${profile.join(' ')}: block ${block} cannot follow block ${before} ${place}: ${why}${mend}`;
}

/** Replaces each {@link TABBY} by the next tabby strand, and computes the state after the strands. */
function resolve<S extends number | string>(
  units: Units<S>,
  wanted: readonly S[],
  from: State<S>,
): { names: S[]; state: State<S> } {
  let { last, turn } = from;
  const names = wanted.map((name) => {
    if (name !== TABBY) {
      last = name;
      return name;
    }
    const tabby = units.tabby![turn];
    turn = turn === 0 ? 1 : 0;
    return tabby;
  });
  return { names, state: { last, turn } };
}

/** Assigns the incidental strands of each group to the unit before it, cyclically, and numbers the units. */
function strandsOf<S>(groups: readonly Group<S>[]): Strand<S>[] {
  const strands: Strand<S>[] = [];
  let unit = 0;
  groups.forEach((group, g) => {
    const next = groups[(g + 1) % groups.length]!;
    group.own.forEach((name, place) => {
      const companion = group.companions?.[place] ?? 0;
      strands.push({ name, block: group.block, unit, incidental: false, companion, place });
    });
    next.first.forEach((name, place) => {
      strands.push({ name, block: group.block, unit, incidental: true, companion: 0, place });
    });
    if (group.own.length + next.first.length > 0) unit++;
  });
  return strands;
}

/** Reads strands as a weaver writes them: `1-2-3-2`. */
export function shafts(text: string): number[] {
  return text.split('-').map(Number);
}

/** Reads the treadles of a unit in order: `PA tabby PA tabby`. */
export function picks(text: string): string[] {
  return text.split(' ').filter((word) => word !== '');
}

/** Makes an entry for each block from its letter and index (from 0). */
export function perBlock<T>(letters: readonly string[], make: (letter: string, index: number) => T): Record<string, T> {
  return Object.fromEntries(letters.map((letter, index) => [letter, make(letter, index)]));
}
