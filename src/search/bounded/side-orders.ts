import { values } from '../../colour/yarn.js';
import { spacing } from '../../draft/draft.js';
import { shuttleCount } from '../../draft/shuttles.js';
import { threadingPeriod, treadlingPeriod } from '../../order/lay.js';
import { lcm } from '../../order/necklace.js';
import { type Order, smallestPeriod } from '../../order/order.js';
import { changes } from '../../score/ease.js';
import { isBeyond } from '../evaluate/weave-limits.js';
import type { Question } from '../question/question.js';
import type { Family } from '../space/family.js';
import type { Ground, Side } from './bound-ground.js';
import { type LineBound, lineBounds } from './line-bound.js';
import { Repeats } from './niche-bound.js';

/** What all orders of one side lay from one start, with the numbers that follow from one order alone. */
export interface SideOrders {
  readonly side: Side;
  /** Palette index that every slot shows, order after order. */
  readonly shown: Uint8Array;
  /** Threads of one whole repeat, changes of colour and shuttles in it. */
  readonly repeat: Int32Array;
  readonly changes: Int32Array;
  readonly shuttles: Int32Array;
  /** How strong its lines can be: the deviation of its blurred boundaries, at the most. */
  readonly lines: Float64Array;
  /** 1 where a thread that crosses them may show one colour all along. */
  readonly even: Uint8Array;
  /** How soon the face repeats along them, where niches are asked for. */
  readonly repeats: Repeats | undefined;
}

type Asked = Pick<Question, 'yarns' | 'tabby' | 'sett' | 'limits' | 'loom' | 'oneOfEachKind'>;

/** Lays every warp order of a list on a ground. */
export function warpsOn(ground: Ground, orders: readonly Order[], question: Asked, family: Family): SideOrders {
  const palette = values(question.yarns);
  const { warp } = lineBounds(ground, squareness(question), palette);
  const { up, endKinds, pickKinds } = ground.cloth;
  return ordersOn(ground.ends, orders, question, palette, warp, {
    period: threadingPeriod(family.weave([0], [0])),
    others: pickKinds,
    shows: (end, pick) => up[pick * endKinds + end] === 1,
  });
}

/** Lays every weft order of a list on a ground. */
export function weftsOn(ground: Ground, orders: readonly Order[], question: Asked, family: Family): SideOrders {
  const palette = values(question.yarns);
  const weave = family.weave([0], [0]);
  const { weft } = lineBounds(ground, squareness(question), palette);
  const { up, endKinds } = ground.cloth;
  return ordersOn(ground.picks, orders, question, palette, weft, {
    period: treadlingPeriod(weave),
    others: endKinds,
    shows: (pick, end) => up[pick * endKinds + end] !== 1,
    pickKinds: weave.pickKinds,
  });
}

/**
 * What the slots show, order after order, with a number for each colour. It is eight times as large, so it is made only
 * where it is used.
 */
export function shownAs({ shown }: SideOrders, numbers: Float64Array): Float64Array {
  const all = new Float64Array(shown.length);
  for (let at = 0; at < all.length; at++) all[at] = numbers[shown[at]!]!;
  return all;
}

/** The orders of one side of a block: their family, their list, which other blocks share, and where they start. */
interface SideOfBlock {
  readonly family: Family;
  readonly list: readonly Order[];
  readonly start: number;
}

/**
 * Lays the orders of blocks, once for all blocks that share them: what an order lays, and its line bound, depend on the
 * other side's weave alone, and not on the other side's length or start.
 */
export class LaidSides {
  private readonly ends = new Map<Family, Map<readonly Order[], Map<number, SideOrders>>>();
  private readonly picks: typeof this.ends = new Map();
  private readonly question: Asked;

  constructor(question: Asked) {
    this.question = question;
  }

  /** The warp orders of a block on its ground; `orders`: the list as its family lays it. */
  warps(of: SideOfBlock, ground: Ground, orders = of.list): SideOrders {
    return once(this.ends, of, () => warpsOn(ground, orders, this.question, of.family));
  }

  /** The weft orders likewise; where the weft has none of its own, the list is that of the warp. */
  wefts(of: SideOfBlock, ground: Ground, orders = of.list): SideOrders {
    return once(this.picks, of, () => weftsOn(ground, orders, this.question, of.family));
  }
}

function once(known: LaidSides['ends'], { family, list, start }: SideOfBlock, lay: () => SideOrders): SideOrders {
  const ofFamily = known.get(family) ?? new Map<readonly Order[], Map<number, SideOrders>>();
  const ofList = ofFamily.get(list) ?? new Map<number, SideOrders>();
  const laid = ofList.get(start) ?? lay();
  known.set(family, ofFamily);
  ofFamily.set(list, ofList);
  ofList.set(start, laid);
  return laid;
}

function squareness({ sett }: Asked): number {
  const { across, along } = spacing(sett);
  return across / along;
}

/** The side of a weave that orders are laid on. */
interface OfWeave {
  /** Threads after which it begins again. */
  readonly period: number;
  /** Kinds of threads of the other side, and whether a kind of this side lies over one of them on the face. */
  readonly others: number;
  readonly shows: (own: number, other: number) => boolean;
  /** What the picks are for, if these are picks. */
  readonly pickKinds?: Parameters<typeof shuttleCount>[0];
}

function ordersOn(
  side: Side,
  orders: readonly Order[],
  question: Asked,
  value: Float64Array,
  bound: LineBound,
  { period, others, shows, pickKinds }: OfWeave,
): SideOrders {
  const { yarns, tabby } = question;
  const { slot, slots, slotElement, slotCompanion, elements, length } = side;
  const all = orders.length;
  const made = {
    side,
    shown: new Uint8Array(all * slots),
    repeat: new Int32Array(all),
    changes: new Int32Array(all),
    shuttles: new Int32Array(all).fill(1),
    lines: new Float64Array(all),
    even: new Uint8Array(all),
    repeats: question.oneOfEachKind ? new Repeats(side, others, shows, yarns.length, all) : undefined,
  };
  const values = new Float64Array(slots);
  const laid = new Uint8Array(length);
  orders.forEach((order, at) => {
    for (let s = 0; s < slots; s++) {
      const element = slotElement[s]!;
      const shown = element === elements ? tabby : (order[element]! + slotCompanion[s]!) % yarns.length;
      made.shown[at * slots + s] = shown;
      values[s] = value[shown]!;
    }
    for (let thread = 0; thread < length; thread++) laid[thread] = made.shown[at * slots + slot[thread]!]!;
    const repeat = lcm(period, smallestPeriod(laid));
    made.repeat[at] = repeat;
    made.changes[at] = (changes(laid) * repeat) / length;
    made.repeats?.take(at, laid);
    if (pickKinds !== undefined) made.shuttles[at] = shuttleCount(pickKinds, laid);
    // No pair of an order that is over a limit by itself is held against a bound.
    if (isBeyond(question, repeat, { warpChanges: 0, weftChanges: 0, shuttles: made.shuttles[at]! })) return;
    made.lines[at] = bound.of(values);
    made.even[at] = bound.isEven ? 1 : 0;
  });
  return made;
}
