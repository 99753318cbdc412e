import type { PickKind, Weave } from '../draft/draft.js';
import { listSign, modulo } from '../draft/repeat.js';
import { gcd, lcm } from './necklace.js';
import { type Order, smallestPeriod } from './order.js';

/** The threads of one system (ends or picks) in one repeat of a weave, over which an order is laid. */
export interface Strands {
  readonly count: number;
  /** Threads in each unit, in order. */
  readonly units: readonly number[];
  /** 1 for a thread that takes the companion of its element's colour. */
  readonly companion: readonly number[];
  /** Whether the order colours this thread; other threads (tabby) keep one colour. */
  readonly carries: readonly boolean[];
}

/** How an order of a given length is laid. */
export interface Laying {
  /** Over threads, or over whole units. */
  readonly by: 'thread' | 'unit';
  /** Every thread of an element in its colour, or colour and companion in turn. */
  readonly fill: 'solid' | 'alternate';
  /** Threads (units) that each element covers. */
  readonly times: number;
  /** Thread (unit) on which the order begins. */
  readonly start: number;
}

/**
 * The layout of an order, over the shortest stretch after which order and weave both begin again. For each thread: the
 * index of the element that colours it (−1 for tabby), and whether it takes the companion of that element's colour.
 */
export interface Layout {
  readonly element: Int16Array;
  readonly companion: Uint8Array;
}

/** The ends of a weave. */
export function endStrands(weave: Weave): Strands {
  const count = weave.threading.length;
  return {
    count,
    units: weave.endUnits,
    companion: weave.companions?.ends ?? new Array<number>(count).fill(0),
    carries: new Array<boolean>(count).fill(true),
  };
}

/** The picks of a weave: the order runs over all but the tabby picks (over all where there is nothing but tabby). */
export function pickStrands(weave: Weave): Strands {
  const count = weave.treadling.length;
  const runs = (kind: PickKind): boolean => kind !== 'tabby';
  const any = weave.pickKinds.some(runs);
  return {
    count,
    units: weave.pickUnits,
    companion: weave.companions?.picks ?? new Array<number>(count).fill(0),
    carries: weave.pickKinds.map((kind) => !any || runs(kind)),
  };
}

/** Number of places for elements in one repeat of the weave: threads that the order colours, or units. */
export function places(strands: Strands, by: Laying['by']): number {
  return by === 'unit' ? strands.units.length : strands.carries.filter(Boolean).length;
}

/** Number of threads, tabby included, from the first thread to the end of `count` places. */
export function spanOf(strands: Strands, count: number, by: Laying['by']): number {
  const { units, carries } = strands;
  if (by === 'unit')
    return Array.from({ length: count }, (_, place) => units[place % units.length]!).reduce((a, b) => a + b, 0);
  const each = places(strands, by);
  let span = Math.floor(count / each) * strands.count;
  for (let left = count % each, at = 0; left > 0; at++, span++) if (carries[at]) left--;
  return span;
}

/**
 * The number of starts that give different cloths. A start one weave repeat later only shifts the cloth, so an order of
 * a places on a weave repeat of b places has gcd(a, b) different starts: 0 … gcd − 1. One yarn begins nowhere.
 */
export function startCount(strands: Strands, length: number, laying: Pick<Laying, 'by' | 'times'>): number {
  if (length === 1) return 1;
  return gcd(length * laying.times, places(strands, laying.by));
}

/** Threads after which a weave and an order of `length` elements laid on it both begin again. */
export function threadsLaid(strands: Strands, length: number, { by, times }: Pick<Laying, 'by' | 'times'>): number {
  const perRepeat = places(strands, by);
  return (lcm(perRepeat, length * times) / perRepeat) * strands.count;
}

/**
 * Lays an order of `length` elements over the threads; the layout is the same for all colours of its elements. An order
 * of one element is one yarn, and does not alternate with another.
 */
export function layout(strands: Strands, length: number, laying: Laying): Layout {
  const { count, units, carries } = strands;
  const span = length * laying.times;
  const total = threadsLaid(strands, length, laying);
  const element = new Int16Array(total).fill(-1);
  const companion = new Uint8Array(total);
  const unitOf = units.flatMap((size, unit) => new Array<number>(size).fill(unit));
  const carriersIn = units.map((_, unit) => unitOf.filter((u, thread) => u === unit && carries[thread]).length);
  const alternates = laying.fill === 'alternate' && length > 1;
  let carried = 0;
  let inUnit = 0;
  for (let s = 0; s < total; s++) {
    const thread = s % count;
    if (thread === 0 || unitOf[thread] !== unitOf[thread - 1]) inUnit = 0;
    if (!carries[thread]) continue;
    const unit = Math.floor(s / count) * units.length + unitOf[thread]!;
    const place = modulo((laying.by === 'unit' ? unit : carried) - laying.start, span);
    // Threads of this element before this one; colour and companion alternate by this count.
    let before = place % laying.times;
    if (laying.by === 'unit') {
      const earlier = before;
      before = inUnit;
      for (let back = 1; back <= earlier; back++) before += carriersIn[modulo(unit - back, units.length)]!;
    }
    element[s] = Math.floor(place / laying.times);
    companion[s] = strands.companion[thread]! ^ (alternates ? before & 1 : 0);
    carried++;
    inUnit++;
  }
  return { element, companion };
}

/** The colours of the threads under a layout: palette indices, over the shortest stretch after which they recur. */
export function colours(plan: Layout, order: Order, palette: number, tabby: number): Uint8Array {
  const laid = new Uint8Array(plan.element.length);
  for (let s = 0; s < laid.length; s++) {
    const element = plan.element[s]!;
    laid[s] = element < 0 ? tabby : (order[element]! + plan.companion[s]!) % palette;
  }
  return laid;
}

/** Extends colours to the length after which weave and colours both begin again. */
export function repeated(laid: Uint8Array, weavePeriod: number): Uint8Array {
  const length = lcm(weavePeriod, smallestPeriod(laid));
  if (length === laid.length) return laid;
  const whole = new Uint8Array(length);
  for (let s = 0, from = 0; s < length; s++) {
    whole[s] = laid[from]!;
    if (++from === laid.length) from = 0;
  }
  return whole;
}

/** One whole repeat: weave and colours extended to the length after which both begin again. */
export function wholeRepeat(
  weave: Weave,
  warp: ArrayLike<number>,
  weft: ArrayLike<number>,
): Weave & { readonly warp: readonly number[]; readonly weft: readonly number[] } {
  const ends = lcm(threadingPeriod(weave), smallestPeriod(warp));
  const picks = lcm(treadlingPeriod(weave), smallestPeriod(weft));
  const cycle = <T>(list: ArrayLike<T>, count: number): T[] =>
    Array.from({ length: count }, (_, s) => list[s % list.length]!);
  const { companions: _, ...bare } = weave;
  return {
    ...bare,
    threading: cycle(weave.threading, ends),
    treadling: cycle(weave.treadling, picks),
    pickKinds: cycle(weave.pickKinds, picks),
    endUnits: filling(weave.endUnits, ends),
    pickUnits: filling(weave.pickUnits, picks),
    warp: cycle(warp, ends),
    weft: cycle(weft, picks),
  };
}

/** Ends after which the threading begins again. */
export function threadingPeriod(weave: Weave): number {
  return smallestPeriod(weave.threading.map(listSign));
}

/** Picks after which treadling and kinds of pick begin again. */
export function treadlingPeriod(weave: Weave): number {
  return lcm(smallestPeriod(weave.treadling.map(listSign)), smallestPeriod(weave.pickKinds));
}

/** Unit lengths for `count` threads; the last unit is cut if the repeat ends inside it. */
function filling(units: readonly number[], count: number): number[] {
  const filled: number[] = [];
  for (let laid = 0, u = 0; laid < count; u++) {
    const size = Math.min(units[u % units.length]!, count - laid);
    filled.push(size);
    laid += size;
  }
  return filled;
}
