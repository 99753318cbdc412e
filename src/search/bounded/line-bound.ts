import { blurWeights, SIGMA } from '../../score/contrast/blur.js';
import type { Ground, Side } from './bound-ground.js';

/**
 * The coarse bound of line contrast, one number for each order: N = std(B(u − h)) ≤ std(B u) + std(B h). The upright
 * boundaries h in a row depend on the warp order, the row's interlacement and the one colour of its pick. Blurring
 * along the warp averages rows, so it lowers the variance. Hence `warp` bounds std(B h) by the worse pick colour for
 * every kind of row, and `weft` bounds std(B u) likewise by columns. See BOUNDS.md.
 */
export function lineBounds(
  { cloth, ends, picks }: Ground,
  squareness: number,
  palette: ArrayLike<number>,
): { readonly warp: LineBound; readonly weft: LineBound } {
  const up = (pick: number, end: number): boolean => cloth.up[pick * cloth.endKinds + end] === 1;
  return {
    warp: new LineBound(ends, picks, (end, pick) => up(pick, end), 1, palette),
    weft: new LineBound(picks, ends, (pick, end) => !up(pick, end), squareness, palette),
  };
}

/** Bounds the blurred boundaries along one system of threads, given only the order of these threads. */
export class LineBound {
  private readonly side: Side;
  private readonly weights: Float64Array;
  private readonly reach: number;
  /**
   * For each kind of crossing thread: its share of all crossing threads, and a 1 for each thread of this side over it.
   */
  private readonly lines: { readonly share: number; readonly over: Uint8Array }[];
  private readonly palette: ArrayLike<number>;
  private readonly value: Float64Array;
  private readonly edge: Float64Array;
  /** Whether some crossing thread, in some colour, would show no boundary at all under the last order. */
  isEven = false;

  /** `shows(own, other)`: whether kind `own` of this side lies over kind `other` of the opposite side on the face. */
  constructor(
    side: Side,
    opposite: Side,
    shows: (own: number, other: number) => boolean,
    scale: number,
    palette: ArrayLike<number>,
  ) {
    this.side = side;
    this.palette = palette;
    this.weights = blurWeights(side.length, SIGMA * scale);
    this.reach = Math.min(side.length >> 1, Math.ceil(4 * SIGMA * scale) + 1);
    const counts = new Float64Array(opposite.kinds);
    for (const kind of opposite.kind) counts[kind] = counts[kind]! + 1;
    this.lines = Array.from({ length: opposite.kinds }, (_, other) => ({
      share: counts[other]! / opposite.length,
      over: Uint8Array.from(side.kind, (own) => (shows(own, other) ? 1 : 0)),
    }));
    this.value = new Float64Array(side.length);
    this.edge = new Float64Array(side.length);
  }

  /** The bound for one order, by the values of its slots. */
  of(slots: ArrayLike<number>): number {
    let variance = 0;
    let least = Number.POSITIVE_INFINITY;
    let most = Number.NEGATIVE_INFINITY;
    for (const { share, over } of this.lines) {
      let worst = 0;
      for (let colour = 0; colour < this.palette.length; colour++) {
        const spread = this.spread(slots, over, this.palette[colour]!);
        worst = Math.max(worst, spread.variance);
        least = Math.min(least, spread.mean);
        most = Math.max(most, spread.mean);
      }
      variance += share * worst;
    }
    this.isEven = least === 0;
    // The variance of means between `least` and `most` is at most a quarter of the square of their range (Popoviciu).
    return Math.sqrt(variance + (most - least) ** 2 / 4);
  }

  /** Mean of the boundaries along one crossing thread of one colour, and their variance after the blur. */
  private spread(slots: ArrayLike<number>, over: Uint8Array, colour: number): { mean: number; variance: number } {
    const { side, value, edge, weights, reach } = this;
    const n = side.length;
    for (let s = 0; s < n; s++) value[s] = over[s] === 1 ? slots[side.slot[s]!]! : colour;
    let sum = 0;
    for (let s = 0; s < n; s++) {
      const here = value[s]!;
      const before = value[s === 0 ? n - 1 : s - 1]!;
      const after = value[s === n - 1 ? 0 : s + 1]!;
      const shared = (Math.abs(here - before) + Math.abs(here - after)) / 2;
      edge[s] = shared;
      sum += shared;
    }
    const mean = sum / n;
    let squares = 0;
    for (let s = 0; s < n; s++) {
      let blurred = 0;
      if (2 * reach + 1 >= n) {
        for (let d = 0, at = s; d < n; d++) {
          blurred += weights[d]! * edge[at]!;
          if (++at === n) at = 0;
        }
      } else {
        for (let d = -reach, at = (s - reach + n) % n; d <= reach; d++) {
          blurred += weights[d < 0 ? d + n : d]! * edge[at]!;
          if (++at === n) at = 0;
        }
      }
      squares += (blurred - mean) ** 2;
    }
    return { mean, variance: squares / n };
  }
}
