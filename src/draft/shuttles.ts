import type { PickKind } from './draft.js';

const KINDS: readonly PickKind[] = ['ground', 'pattern', 'tabby'];

/**
 * The shuttle of each pick, numbered from 0 in order of first use. Picks of the same kind and yarn share a shuttle.
 *
 * @param kinds kind of each pick; repeated if the weft is longer
 * @param weft palette index of each pick
 */
export function shuttleOfPick(kinds: readonly PickKind[], weft: ArrayLike<number>): number[] {
  const numbers = new Map<number, number>();
  return Array.from(weft, (_, pick) => {
    const shuttle = shuttleKey(kinds, weft, pick);
    if (!numbers.has(shuttle)) numbers.set(shuttle, numbers.size);
    return numbers.get(shuttle)!;
  });
}

/** How many shuttles a weft takes; see {@link shuttleOfPick}. */
export function shuttleCount(kinds: readonly PickKind[], weft: ArrayLike<number>): number {
  const seen = new Set<number>();
  for (let pick = 0; pick < weft.length; pick++) seen.add(shuttleKey(kinds, weft, pick));
  return seen.size;
}

function shuttleKey(kinds: readonly PickKind[], weft: ArrayLike<number>, pick: number): number {
  return weft[pick]! * KINDS.length + KINDS.indexOf(kinds[pick % kinds.length]!);
}
