import { type Drawdown, drawdown } from '../../cloth/drawdown.js';
import { endStrands, type Layout, layout, pickStrands } from '../../order/lay.js';
import { lcm } from '../../order/necklace.js';
import { layingOf } from '../space/family.js';
import type { Stratum } from '../space/stratum.js';

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
}

/**
 * What all candidates of one block and one pair of starts share: the interlacement and which element each thread takes.
 */
export interface Ground {
  readonly cloth: Drawdown;
  readonly ends: Side;
  readonly picks: Side;
}

/** Builds the ground of a block for one of its pairs of starts (warp, weft). */
export function groundAt(stratum: Stratum, [warpStart, weftStart]: readonly [number, number]): Ground {
  const { family, warps, wefts } = stratum;
  const weave = family.weave(warps[0]!, wefts[0]!);
  const cloth = drawdown(weave);
  const n = warps[0]!.length;
  const m = wefts[0]!.length;
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
  return {
    length,
    elements,
    element: Int16Array.from({ length }, (_, s) => (plan.element[s % laid]! < 0 ? elements : plan.element[s % laid]!)),
    sign: Int8Array.from({ length }, (_, s) => (plan.companion[s % laid] === 1 ? -1 : 1)),
    kind: Uint16Array.from({ length }, (_, s) => kind[s % kind.length]!),
    kinds,
  };
}

/**
 * Threads sorted by type: threads of one type have the same element, sign and interlacement. `of` is each thread's
 * type.
 */
interface Types {
  readonly of: Uint16Array;
  readonly element: number[];
  readonly sign: number[];
  readonly kind: number[];
  readonly count: number[];
}

/** Sorts the threads of a side by element, sign and interlacement. */
export function typesOf({ element, sign, kind, length }: Side): Types {
  const known = new Map<string, number>();
  const types: Omit<Types, 'of'> = { element: [], sign: [], kind: [], count: [] };
  const of = Uint16Array.from({ length }, (_, s) => {
    const name = `${element[s]} ${sign[s]} ${kind[s]}`;
    let number = known.get(name);
    if (number === undefined) {
      number = known.size;
      known.set(name, number);
      types.element.push(element[s]!);
      types.sign.push(sign[s]!);
      types.kind.push(kind[s]!);
      types.count.push(0);
    }
    types.count[number]!++;
    return number;
  });
  return { of, ...types };
}
