import { blurWeights, overlapWeights, SIGMA } from '../../score/contrast/blur.js';
import { gatherEven } from '../../score/contrast/line-samples.js';
import { type Ground, type Side, typesOf } from './bound-ground.js';
import type { SideOrders } from './side-orders.js';

/**
 * The exact variance of the blurred boundaries of one direction, once the order of one system is fixed: a sum over pairs
 * of slots of the crossing order, of a number for the colours that the two show. (With the warp order fixed, the
 * upright boundaries in a row depend on the row's interlacement and on the colour of its one pick.) See BOUNDS.md.
 */
type LineForm = Float64Array;

/** The exact deviations of the upright and of the level boundaries on one ground; the sum of both bounds N. */
export class ExactLines {
  private readonly warps: SideOrders;
  private readonly wefts: SideOrders;
  private readonly colours: number;
  private readonly uprightOf: ReturnType<typeof maker>;
  private readonly levelOf: ReturnType<typeof maker>;
  private warp = -1;
  private upright: LineForm | undefined;
  private readonly levels: (LineForm | undefined)[];

  constructor(
    { cloth, ends, picks }: Ground,
    warps: SideOrders,
    wefts: SideOrders,
    squareness: number,
    palette: Float64Array,
  ) {
    this.warps = warps;
    this.wefts = wefts;
    this.colours = palette.length;
    this.levels = Array.from(wefts.lines, () => undefined);
    const up = (pick: number, end: number): boolean => cloth.up[pick * cloth.endKinds + end] === 1;
    const across = { own: ends, crossing: picks, ownScale: 1, crossingScale: squareness, orders: warps, palette };
    const along = { own: picks, crossing: ends, ownScale: squareness, crossingScale: 1, orders: wefts, palette };
    this.uprightOf = maker({ ...across, shows: (end, pick) => up(pick, end) });
    this.levelOf = maker({ ...along, shows: (pick, end) => !up(pick, end) });
  }

  /** Forgets the forms of the weft orders. */
  forget(): void {
    this.levels.fill(undefined);
  }

  /** The deviation of the upright boundaries of a pair. */
  ofUpright(warp: number, weft: number): number {
    if (this.warp !== warp) {
      this.upright = this.uprightOf(warp, this.upright);
      this.warp = warp;
    }
    return deviation(this.upright!, this.wefts, weft, this.colours);
  }

  /** The deviation of the level boundaries of a pair. */
  ofLevel(warp: number, weft: number): number {
    this.levels[weft] ??= this.levelOf(weft);
    return deviation(this.levels[weft], this.warps, warp, this.colours);
  }
}

interface Sides {
  /** The threads along which boundaries are counted, their orders, and the threads that cross them. */
  readonly own: Side;
  readonly orders: SideOrders;
  readonly crossing: Side;
  readonly ownScale: number;
  readonly crossingScale: number;
  readonly palette: Float64Array;
  /** Whether a kind of own thread lies over a kind of crossing thread. */
  readonly shows: (own: number, crossing: number) => boolean;
}

/** Makes the form of each order; into `into`, where that is given. */
function maker({
  own,
  orders,
  crossing,
  ownScale,
  crossingScale,
  palette,
  shows,
}: Sides): (order: number, into?: LineForm) => LineForm {
  const n = own.length;
  const colours = palette.length;
  const profiles = crossing.kinds * colours;
  const size = crossing.slots * colours;
  const blur = nearWeights(blurWeights(n, SIGMA * ownScale));
  const over = Array.from({ length: crossing.kinds }, (_, other) =>
    own.kind.map((kind) => (shows(kind, other) ? 1 : 0)),
  );
  const { of, slot, kind, count } = typesOf(crossing);
  const weights = gatherEven(overlapWeights(blurWeights(crossing.length, SIGMA * crossingScale)), of, slot.length);
  for (let at = 0; at < weights.length; at++) weights[at] = weights[at]! / crossing.length;

  const boundaries = blurredBoundaries(own, blur);
  // The boundaries along each kind of crossing thread in each colour, about no mean yet.
  const lines = Array.from({ length: profiles }, () => new Float64Array(n));
  const means = new Float64Array(profiles);
  const gram = new Float64Array(profiles * profiles);
  const mean = new Float64Array(size);
  const values = new Float64Array(own.slots);

  return (order, form = new Float64Array(size * size)) => {
    for (let s = 0; s < own.slots; s++) values[s] = palette[orders.shown[order * own.slots + s]!]!;
    for (let at = 0; at < profiles; at++) {
      const line = lines[at]!;
      boundaries(values, over[Math.floor(at / colours)]!, palette[at % colours]!, line);
      let sum = 0;
      for (let s = 0; s < n; s++) sum += line[s]!;
      means[at] = sum / n;
    }
    for (let j = 0; j < profiles; j++) {
      for (let k = 0; k <= j; k++) {
        let sum = 0;
        for (let s = 0; s < n; s++) sum += lines[j]![s]! * lines[k]![s]!;
        gram[j * profiles + k] = sum / n;
        gram[k * profiles + j] = sum / n;
      }
    }
    form.fill(0);
    mean.fill(0);
    for (let a = 0; a < slot.length; a++) {
      const share = count[a]! / crossing.length;
      for (let c = 0; c < colours; c++) {
        const row = slot[a]! * colours + c;
        const from = (kind[a]! * colours + c) * profiles;
        mean[row] = mean[row]! + share * means[kind[a]! * colours + c]!;
        for (let b = 0; b < slot.length; b++) {
          const weight = weights[a * slot.length + b]!;
          const at = row * size + slot[b]! * colours;
          for (let d = 0; d < colours; d++)
            form[at + d] = form[at + d]! + weight * gram[from + kind[b]! * colours + d]!;
        }
      }
    }
    for (let a = 0, at = 0; a < size; a++)
      for (let b = 0; b < size; b++, at++) form[at] = form[at]! - mean[a]! * mean[b]!;
    return form;
  };
}

/** The standard deviation that a form gives for a crossing order. */
function deviation(form: LineForm, { shown, side }: SideOrders, order: number, colours: number): number {
  const { slots } = side;
  const size = slots * colours;
  const first = order * slots;
  let variance = 0;
  for (let t = 0; t < slots; t++) {
    const row = (t * colours + shown[first + t]!) * size;
    for (let u = 0, at = row; u < slots; u++, at += colours) variance += form[at + shown[first + u]!]!;
  }
  return Math.sqrt(Math.max(0, variance));
}

/**
 * Computes the blurred boundaries along one crossing thread of a colour into a line; each boundary counts half for either
 * of its two threads.
 */
function blurredBoundaries({ length: n, slot }: Side, blur: readonly (readonly [number, number])[]) {
  const shown = new Float64Array(n);
  const shared = new Float64Array(n);
  return (values: Float64Array, over: Uint16Array, colour: number, line: Float64Array): void => {
    for (let s = 0; s < n; s++) shown[s] = over[s] === 1 ? values[slot[s]!]! : colour;
    for (let s = 0; s < n; s++) {
      const before = shown[s === 0 ? n - 1 : s - 1]!;
      const after = shown[s === n - 1 ? 0 : s + 1]!;
      shared[s] = (Math.abs(shown[s]! - before) + Math.abs(shown[s]! - after)) / 2;
    }
    line.fill(0);
    for (const [d, w] of blur) {
      for (let s = 0, at = d; s < n; s++) {
        line[s] = line[s]! + w * shared[at]!;
        if (++at === n) at = 0;
      }
    }
  };
}

function nearWeights(weights: Float64Array): (readonly [number, number])[] {
  return Array.from(weights, (weight, d) => [d, weight] as const).filter(([, weight]) => weight !== 0);
}
