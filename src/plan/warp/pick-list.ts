import { type Draft, liftAt } from '../../draft/draft.js';
import { shuttleOfPick } from '../../draft/shuttles.js';

/** The side of the cloth on which a shuttle lies. */
export type ShuttleSide = 'left' | 'right';

/** A shuttle: one yarn for one kind of pick. */
export interface Shuttle {
  /** `D`, or `D pattern` and `L tabby` if there are two kinds of weft. */
  readonly name: string;
  readonly yarn: number;
  readonly kind: Draft['pickKinds'][number];
}

/** One pick as it is thrown. */
export interface Throw {
  /** Numbered from 1. */
  readonly pick: number;
  /** Index into the shuttles. */
  readonly shuttle: number;
  readonly from: ShuttleSide;
  readonly to: ShuttleSide;
  /** Picks of other shuttles since this shuttle's last pick; its weft is carried past them. */
  readonly carry: number;
  /** Treadles pressed, and shafts raised. */
  readonly treadles: readonly number[];
  readonly lift: readonly number[];
}

/** How well the outermost ends are caught by the turns of the wefts. */
interface Caught {
  /** Turns at each edge, and how many of them catch the outer end. */
  readonly left: { readonly turns: number; readonly caught: number };
  readonly right: { readonly turns: number; readonly caught: number };
}

/** The sides from which the shuttles start, and how well the edges are then caught. */
export interface Starts {
  readonly sides: readonly ShuttleSide[];
  readonly caught: Caught;
  /** Every turn catches its outer end. */
  readonly allCaught: boolean;
}

/** The shuttles of a draft in the order in which they are first thrown. */
export function shuttlesOf(draft: Draft): Shuttle[] {
  const several = new Set(draft.pickKinds).size > 1;
  const found: Shuttle[] = [];
  shuttleOfPick(draft.pickKinds, draft.weft).forEach((shuttle, pick) => {
    const [yarn, kind] = [draft.weft[pick]!, draft.pickKinds[pick]!];
    const { letter } = draft.yarns[yarn]!;
    found[shuttle] ??= { name: several ? `${letter} ${kind}` : letter, yarn, kind };
  });
  return found;
}

/**
 * Makes the pick list. Every shuttle starts on its side and changes side with each throw; a carry counts the picks
 * strictly between two throws of one shuttle.
 */
export function pickList(draft: Draft, picks: number, sides: readonly ShuttleSide[]): Throw[] {
  const of = shuttleOfPick(draft.pickKinds, draft.weft);
  const at = [...sides];
  const last: (number | undefined)[] = sides.map(() => undefined);
  return Array.from({ length: picks }, (_, pick) => {
    const row = pick % draft.weft.length;
    const shuttle = of[row]!;
    const from = at[shuttle]!;
    const to: ShuttleSide = from === 'left' ? 'right' : 'left';
    const before = last[shuttle];
    at[shuttle] = to;
    last[shuttle] = pick;
    const carry = before === undefined ? 0 : pick - before - 1;
    return { pick: pick + 1, shuttle, from, to, carry, treadles: draft.treadling[row]!, lift: liftAt(draft, row) };
  });
}

/** The side on which each shuttle rests after `picks` picks. */
export function restingSides(draft: Draft, picks: number, sides: readonly ShuttleSide[]): ShuttleSide[] {
  const at = [...sides];
  for (const { shuttle, to } of pickList(draft, picks, sides)) at[shuttle] = to;
  return at;
}

/**
 * Counts the turns that catch their outermost end: the two picks joined by the turn pass on different sides of it. Each
 * shuttle is counted by itself.
 *
 * @param first, last indices, in the threading, of the outermost ends
 */
export function caughtEnds(
  draft: Draft,
  picks: number,
  sides: readonly ShuttleSide[],
  first: number,
  last: number,
): Caught {
  return together(caughtByEach(draft, picks, sides, first, last));
}

function caughtByEach(
  draft: Draft,
  picks: number,
  sides: readonly ShuttleSide[],
  first: number,
  last: number,
): Caught[] {
  const up = (end: number, lift: readonly number[]): boolean => draft.threading[end]!.some((s) => lift.includes(s));
  const edges = sides.map(() => ({ left: { turns: 0, caught: 0 }, right: { turns: 0, caught: 0 } }));
  const before: (Throw | undefined)[] = sides.map(() => undefined);
  for (const thrown of pickList(draft, picks, sides)) {
    const turned = before[thrown.shuttle];
    if (turned !== undefined) {
      const end = turned.to === 'left' ? first : last;
      const edge = edges[thrown.shuttle]![turned.to];
      edge.turns++;
      if (up(end, turned.lift) !== up(end, thrown.lift)) edge.caught++;
    }
    before[thrown.shuttle] = thrown;
  }
  return edges;
}

function together(each: readonly Caught[]): Caught {
  const sum = (edge: ShuttleSide) => ({
    turns: each.reduce((turns, caught) => turns + caught[edge].turns, 0),
    caught: each.reduce((count, caught) => count + caught[edge].caught, 0),
  });
  return { left: sum('left'), right: sum('right') };
}

/**
 * Finds the starting sides with which most turns catch the edges; ties go to the left. The turns of a shuttle depend on
 * its own side alone, so each side is found separately, over the picks after which weave, colours and sides recur.
 *
 * @param border ends before the first of the repeat, on which the threading runs on
 */
export function startingSides(draft: Draft, ends: number, border = 0): Starts {
  const shuttles = shuttlesOf(draft);
  // After two repeats every shuttle is back on its side; two more take in every turn between repeats.
  const picks = 4 * draft.weft.length;
  const threads = draft.threading.length;
  const first = (threads - (border % threads)) % threads;
  const last = (first + ends - 1) % threads;
  const all = (side: ShuttleSide): Caught[] =>
    caughtByEach(
      draft,
      picks,
      shuttles.map(() => side),
      first,
      last,
    );
  const [left, right] = [all('left'), all('right')];
  const sides = shuttles.map((_, s): ShuttleSide => (lost(right[s]!) < lost(left[s]!) ? 'right' : 'left'));
  const caught = caughtEnds(draft, picks, sides, first, last);
  return { sides, caught, allCaught: lost(caught) === 0 };
}

/** Number of turns that catch nothing. */
function lost({ left, right }: Caught): number {
  return left.turns - left.caught + right.turns - right.caught;
}
