import type { Contrast } from '../../score/model/figures.js';
import { PARTS, type Part, type Weights } from '../../score/parts/parts.js';

/** Rounding never costs a candidate its place: bounds are taken to be this much higher than they are. */
export const SLACK = 1e-7;

/** The most that each part of a score can be, in the order of `PARTS`. */
export type PartsMost = Float64Array;

/** Place of each part in such a list. */
export const PLACE = Object.fromEntries(PARTS.map((part, at) => [part, at])) as Readonly<Record<Part, number>>;

const ALL_ONE: PartsMost = new Float64Array(PARTS.length).fill(1);

/** What the bounds of a candidate tell before its face is made. */
export interface Foreseen {
  /** The most that each part can be. */
  readonly most: PartsMost;
  /** Figures by which novelty is bounded: line contrast is only known to be from the first to the second. */
  readonly figures?: Pick<Contrast, 'tone' | 'darkShare' | 'figure'> & { readonly line: readonly [number, number] };
}

/** A candidate that is to be scored: its number, itself, and what its bounds tell, where there are any. */
export type Given<C> = readonly [index: number, candidate: C, foreseen?: Foreseen];

/**
 * What the candidate in hand can still score, while its parts become known one after the other: it need not be measured
 * further once it cannot reach the score.
 */
export class Reach {
  private readonly weights: Float64Array;
  private readonly enough: number;
  private readonly most = new Float64Array(PARTS.length);
  private sum = 0;

  constructor(rank: Weights, least: number) {
    this.weights = Float64Array.from(PARTS, (part) => rank[part]);
    this.enough = (least - SLACK) * this.weights.reduce((sum, weight) => sum + weight, 0);
  }

  /** Takes a candidate in hand. */
  begin(most: PartsMost = ALL_ONE): void {
    this.most.set(most);
    this.sum = this.weights.reduce((sum, weight, at) => sum + weight * most[at]!, 0);
  }

  /** Whether the candidate in hand falls now that a part is known to be no more than this. */
  falls(part: Part, most: number): boolean {
    const at = PLACE[part];
    if (most < this.most[at]!) {
      this.sum -= this.weights[at]! * (this.most[at]! - most);
      this.most[at] = most;
    }
    return this.sum < this.enough;
  }
}
