import { strandKinds, type Threads } from '../../cloth/face.js';
import type { Rooms } from '../../cloth/scratch.js';
import type { Weave } from '../../draft/draft.js';
import { shuttleCount } from '../../draft/shuttles.js';
import {
  colours,
  endStrands,
  type Layout,
  layout,
  pickStrands,
  repeated,
  threadingPeriod,
  treadlingPeriod,
} from '../../order/lay.js';
import type { Order } from '../../order/order.js';
import { changes } from '../../score/ease.js';
import type { Question } from '../question/question.js';
import { type Family, layingOf } from '../space/family.js';

/** The ends, or the picks, of a candidate in their colours over one whole repeat: what follows from one order alone. */
export interface Laid extends Threads {
  /** Neighbouring threads of different colour, round the repeat. */
  readonly changes: number;
  /** Shuttles that the picks take. */
  readonly shuttles: number;
}

type Lay = (order: Order, start: number) => Laid;

/** Places in a group, and the groups in which warps and wefts are kept as laid: powers of two. */
const IN_GROUP = 4;
const FEW_GROUPS = 256;
/**
 * Wefts come one after the other under each warp, and a list of them is often longer than all places together if these
 * are few. What is kept with each grows with the square of its kinds of threads; up to so many it is some ten kilobytes.
 */
const MANY_GROUPS = 1024;
const FEW_KINDS = 8;

/** A place for a warp (weft) as laid. */
interface Place {
  lay: Lay;
  order: Order;
  start: number;
  laid: Laid;
  readonly rooms: Rooms;
}

/**
 * Remembers warps (or wefts) as laid, on all weaves together. Every order has its group of places. Where the group is
 * full, one of its places is taken again, now this one and now that: in a list that is gone through again and again the
 * oldest would be the one that comes next. The rooms of a place are used again for whatever comes there.
 */
export function laidOnce(): (lay: Lay, groups: number) => Lay {
  const places: Place[] = [];
  let chance = 0;
  return (lay, groups) => (order, start) => {
    let sign = start;
    for (let e = 0; e < order.length; e++) sign = Math.imul(sign ^ order[e]!, 0x01000193) + 1;
    const first = ((sign ^ (sign >>> 15)) & (groups - 1)) * IN_GROUP;
    let at = first;
    for (; at < first + IN_GROUP; at++) {
      const place = places[at];
      if (place === undefined) break;
      if (place.lay === lay && place.start === start && isSame(place.order, order)) return place.laid;
    }
    if (at === first + IN_GROUP) {
      chance = Math.imul(chance, 0x9e3779b1) + 1;
      at = first + ((chance >>> 16) % IN_GROUP);
    }
    const rooms = places[at]?.rooms ?? [];
    const laid = { ...lay(order, start), rooms };
    places[at] = { lay, order, start, laid, rooms };
    return laid;
  };
}

function isSame(a: Order, b: Order): boolean {
  if (a === b) return true;
  if (a.length !== b.length) return false;
  for (let e = 0; e < a.length; e++) if (a[e] !== b[e]) return false;
  return true;
}

/** In how many groups the threads of one system are kept; `kinds` counts those of one colour. */
export function groupsFor(system: 'ends' | 'picks', kinds: number, { yarns }: Question): number {
  return system === 'picks' && kinds * yarns.length <= FEW_KINDS ? MANY_GROUPS : FEW_GROUPS;
}

/** Lays orders on the ends (picks) of a weave, of which the kinds are given. */
export function layer(
  family: Family,
  weave: Weave,
  kinds: Uint16Array,
  system: 'ends' | 'picks',
  { yarns, tabby }: Question,
): Lay {
  const strands = system === 'picks' ? pickStrands(weave) : endStrands(weave);
  const period = system === 'picks' ? treadlingPeriod(weave) : threadingPeriod(weave);
  const layouts = new Map<number, Layout[]>();
  return (asked, start) => {
    const order = family.laid(asked, system, weave);
    let plans = layouts.get(order.length);
    if (plans === undefined) {
      plans = [];
      layouts.set(order.length, plans);
    }
    plans[start] ??= layout(strands, order.length, layingOf(family, start));
    const laid = repeated(colours(plans[start], order, yarns.length, tabby), period);
    return {
      ...strandKinds(kinds, laid),
      changes: changes(laid),
      shuttles: system === 'picks' ? shuttleCount(weave.pickKinds, laid) : 0,
    };
  };
}
