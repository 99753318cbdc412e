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

/** Groups of places for warps (wefts) as laid, and places in each, both powers of two: enough for the lists of most strata. */
const GROUPS = 256;
const IN_GROUP = 4;

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
export function laidOnce(): (lay: Lay) => Lay {
  const places: Place[] = [];
  let chance = 0;
  return (lay) => (order, start) => {
    let sign = start;
    for (let e = 0; e < order.length; e++) sign = Math.imul(sign ^ order[e]!, 0x01000193) + 1;
    const first = ((sign ^ (sign >>> 15)) & (GROUPS - 1)) * IN_GROUP;
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
