import { type Drawdown, drawdown } from '../../cloth/drawdown.js';
import { endStrands, type Layout, layout, pickStrands } from '../../order/lay.js';
import { lcm } from '../../order/necklace.js';
import { type Family, layingOf } from '../space/family.js';

/**
 * The ends, or the picks, of all candidates that share a block and a start. It covers the length after which weave and
 * layout both begin again. A thread shows `sign` times the value of its element, which is +1 (light) or −1 (dark).
 * Threads in the tabby's colour have the element number `elements`, one after the last of the order.
 */
export interface Side {
  readonly length: number;
  readonly elements: number;
  readonly element: Int16Array;
  readonly sign: Int8Array;
  /** Kind of interlacement of each thread. */
  readonly kind: Uint16Array;
  readonly kinds: number;
  /** Slot of each thread: threads of one slot show one colour in every order. */
  readonly slot: Uint16Array;
  readonly slots: number;
  /** Element of each slot, and 1 where it shows the companion of the element's colour. */
  readonly slotElement: readonly number[];
  readonly slotCompanion: readonly number[];
}

/**
 * What all candidates of one block and one pair of starts share: the interlacement and which element each thread takes.
 */
export interface Ground {
  readonly cloth: Drawdown;
  readonly ends: Side;
  readonly picks: Side;
}

/** Builds the ground of orders that lay n and m elements in one family, for one pair of starts (warp, weft). */
export function groundAt(
  family: Family,
  n: number,
  m: number,
  [warpStart, weftStart]: readonly [number, number],
): Ground {
  const weave = family.weave([0], [0]);
  const cloth = drawdown(weave);
  const ends = layout(endStrands(weave), n, layingOf(family, warpStart));
  const picks = layout(pickStrands(weave), m, layingOf(family, weftStart));
  return {
    cloth,
    ends: sideOf(ends, n, cloth.endKind, cloth.endKinds),
    picks: sideOf(picks, m, cloth.pickKind, cloth.pickKinds),
  };
}

function sideOf(plan: Layout, elements: number, kind: Uint16Array, kinds: number): Side {
  const length = lcm(plan.element.length, kind.length);
  const laid = plan.element.length;
  const element = Int16Array.from({ length }, (_, s) => {
    const own = plan.element[s % laid]!;
    return own < 0 ? elements : own;
  });
  const sign = Int8Array.from({ length }, (_, s) => (plan.companion[s % laid] === 1 ? -1 : 1));
  const known = new Map<number, number>();
  const slot = Uint16Array.from({ length }, (_, s) => {
    const name = 2 * element[s]! + (sign[s]! < 0 ? 1 : 0);
    const number = known.get(name) ?? known.size;
    known.set(name, number);
    return number;
  });
  return {
    length,
    elements,
    element,
    sign,
    kind: Uint16Array.from({ length }, (_, s) => kind[s % kind.length]!),
    kinds,
    slot,
    slots: known.size,
    slotElement: [...known.keys()].map((name) => name >> 1),
    slotCompanion: [...known.keys()].map((name) => name & 1),
  };
}

/** Threads sorted by type: threads of one type have the same slot and interlacement. `of` is each thread's type. */
interface Types {
  readonly of: Uint16Array;
  readonly slot: number[];
  readonly kind: number[];
  readonly count: number[];
}

/** Sorts the threads of a side by slot and interlacement. */
export function typesOf({ slot, kind, kinds, length }: Side): Types {
  const known = new Map<number, number>();
  const types: Omit<Types, 'of'> = { slot: [], kind: [], count: [] };
  const of = Uint16Array.from({ length }, (_, s) => {
    const name = slot[s]! * kinds + kind[s]!;
    let number = known.get(name);
    if (number === undefined) {
      number = known.size;
      known.set(name, number);
      types.slot.push(slot[s]!);
      types.kind.push(kind[s]!);
      types.count.push(0);
    }
    types.count[number]!++;
    return number;
  });
  return { of, ...types };
}
