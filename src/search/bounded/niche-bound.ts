import { values } from '../../colour/yarn.js';
import { lcm } from '../../order/necklace.js';
import { smallestPeriod } from '../../order/order.js';
import { darkerOfTwo, nicheOf } from '../evaluate/niche.js';
import type { Question } from '../question/question.js';
import type { Side } from './bound-ground.js';

/**
 * How soon faces repeat along one side, as far as its orders tell. A thread of the other side shows, place by place, the
 * colour of the thread of this side or its own. So after how many threads it shows the same again follows from one order
 * of this side, and from the type of the crossing thread: its kind and its colour.
 */
export class Repeats {
  /** Threads after which a crossing thread of each type shows the same again, order after order. */
  private readonly under: Int32Array;
  private readonly types: number;
  /** 1 for each type of thread that an order has itself, order after order. */
  private readonly has: Uint8Array;
  private readonly ownTypes: number;
  /** A bit for each colour of an order. */
  readonly colours: Uint32Array;
  /** The repeat of an order under which all types of crossing thread have the same; 0 for other orders. */
  private readonly alike: Int32Array;
  private readonly side: Side;
  private readonly palette: number;
  private readonly shown: Int16Array;
  private readonly shows: (own: number, other: number) => boolean;

  /** `shows`: whether a kind of thread of this side lies over one of the `others` of the other side on the face. */
  constructor(
    side: Side,
    others: number,
    shows: (own: number, other: number) => boolean,
    palette: number,
    orders: number,
  ) {
    this.side = side;
    this.shows = shows;
    this.palette = palette;
    this.types = others * palette;
    this.ownTypes = side.kinds * palette;
    this.under = new Int32Array(orders * this.types);
    this.has = new Uint8Array(orders * this.ownTypes);
    this.alike = new Int32Array(orders);
    this.colours = new Uint32Array(orders);
    this.shown = new Int16Array(side.length);
  }

  /** Takes in an order, of which the colours are laid on the threads of this side. */
  take(order: number, laid: ArrayLike<number>): void {
    const { side, shows, palette, types, shown } = this;
    for (let s = 0; s < side.length; s++) {
      this.has[order * this.ownTypes + side.kind[s]! * palette + laid[s]!] = 1;
      this.colours[order] = this.colours[order]! | (1 << laid[s]!);
    }
    const under = this.under.subarray(order * types, (order + 1) * types);
    for (let type = 0; type < types; type++) {
      const kind = Math.floor(type / palette);
      for (let s = 0; s < side.length; s++) shown[s] = shows(side.kind[s]!, kind) ? laid[s]! : type % palette;
      under[type] = smallestPeriod(shown);
    }
    this.alike[order] = under.every((period) => period === under[0]) ? under[0]! : 0;
  }

  /** Orders of one sign repeat alike under each order of the other side, and these repeat alike under them. */
  sign(order: number): string {
    const types = this.has.subarray(order * this.ownTypes, (order + 1) * this.ownTypes);
    return `${this.alike[order]! || `of ${order}`} ${types.join('')}`;
  }

  /** Threads of this side after which the face of one of its orders with one of the other side repeats. */
  repeat(order: number, other: Repeats, crossing: number): number {
    const alike = this.alike[order]!;
    if (alike > 0) return alike;
    let repeat = 1;
    for (let type = 0; type < this.types; type++) {
      if (other.has[crossing * this.types + type] === 1) repeat = lcm(repeat, this.under[order * this.types + type]!);
    }
    return repeat;
  }
}

/** More than rounding can change a dark share by. */
const ROUNDING = 1e-10;

/** The orders of both sides, and what each brings to the mean of a face. */
type Sides = Readonly<
  Record<'warps' | 'wefts', { readonly repeats: Repeats | undefined }> & Record<'warpMean' | 'weftMean', Float64Array>
>;

/**
 * Tells the niche of each pair of orders on one ground, but for its symmetry: size and dark share of a face follow from
 * its two orders without making it. See BOUNDS.md.
 */
export class NicheBound {
  private readonly warps: Repeats;
  private readonly wefts: Repeats;
  private readonly warpMean: Float64Array;
  private readonly weftMean: Float64Array;
  private readonly exchanges: boolean;
  private readonly value: Float64Array;

  constructor({ same, yarns }: Question, { warps, wefts, warpMean, weftMean }: Sides) {
    this.warps = warps.repeats!;
    this.wefts = wefts.repeats!;
    this.warpMean = warpMean;
    this.weftMean = weftMean;
    this.exchanges = same.includes('exchange');
    this.value = values(yarns);
  }

  /**
   * The number of the niche that a pair has if it has so much symmetry: of both where rounding decides between two, the
   * one with the lower `aim`.
   */
  place(warp: number, weft: number, symmetry: number, aim: (place: number) => number): number {
    const { warps, wefts } = this;
    const colours = warps.colours[warp]! | wefts.colours[weft]!;
    const low = 31 - Math.clz32(colours & -colours);
    const high = 31 - Math.clz32(colours);
    const exchange = this.exchanges && low !== high && colours === ((1 << low) | (1 << high));
    const share = 1 - this.warpMean[warp]! - this.weftMean[weft]!;
    const dark = exchange ? darkerOfTwo(share, this.value[low]!, this.value[high]!) : share;
    const ends = warps.repeat(warp, wefts, weft);
    const picks = wefts.repeat(weft, warps, warp);
    const one = nicheOf({ ends, picks, darkShare: dark - ROUNDING, symmetry }, exchange);
    const other = nicheOf({ ends, picks, darkShare: dark + ROUNDING, symmetry }, exchange);
    return aim(one) <= aim(other) ? one : other;
  }
}
