import type { Weave } from '../../draft/draft.js';
import type { Wanted } from '../../order/bracelet.js';
import type { By, Fill } from '../../order/laid-order.js';
import type { Laying } from '../../order/lay.js';
import type { Order } from '../../order/order.js';

/** A block order of the threading, of the treadling, or both, as numbers of the elements that are tried. */
export interface Profiles {
  readonly threaded?: Order;
  readonly treadled?: Order;
}

/** The profiles that are tried for a family: each is laid by `family`. */
export interface ProfileSearch {
  readonly lengths: readonly number[];
  /** The words of the threading and of the treadling that are tried; absent: not searched. */
  readonly threaded?: Wanted;
  readonly treadled?: Wanted;
  /** The family with these profiles; undefined where the structure refuses them. */
  family(profiles: Profiles): Family | undefined;
}

/** One way of laying orders on one weave: all of a candidate but its orders and where they start. */
export interface Family {
  readonly structure: string;
  /** Manner of treadling, where the structure knows several. */
  readonly manner: string;
  readonly profile: readonly string[];
  /** What the profile is called where letters of blocks do not say it: the name that is drafted. */
  readonly called?: string;
  /** Block order of the treadling where it is not as drawn in. */
  readonly treadled?: readonly string[];
  /** Letters of the blocks for which the colours stand, where the orders choose the blocks. */
  readonly letters?: readonly string[];
  readonly by: By;
  readonly fill: Fill;
  readonly times: number;
  /** Set where block orders are searched: the family stands for one of each, and is itself none of them. */
  readonly search?: ProfileSearch;
  /** Of which family that is searched this is one, and its block orders. */
  readonly searched?: { readonly base: Family; readonly profiles: Profiles };
  /** The weave; where the orders choose the blocks, one for each pair of orders. */
  weave(warp: Order, weft: Order): Weave;
  /** Whether every pair of orders has the same weave. */
  readonly fixedWeave: boolean;
  /** The order of colours that an order lays on the ends (picks) of a weave. */
  laid(order: Order, system: 'ends' | 'picks', weave: Weave): Order;
}

/** How an order is laid in a family. By block it lies on whole units, as the blocks do. */
export function layingOf(family: Family, start: number): Laying {
  const { by, fill, times } = family;
  return { by: by === 'thread' ? 'thread' : 'unit', fill: fill === 'alternate' ? 'alternate' : 'solid', times, start };
}

/** How many elements an order of so many lays. */
export function elementsLaid(family: Family, length: number): number {
  return family.fill === 'nest' ? length ** 2 : length;
}

/** Whether tabby picks keep their own colour, whatever the orders are. */
export function hasTabby(family: Family): boolean {
  return family.weave([0], [0]).pickKinds.includes('tabby');
}
