import type { Contrast } from '../../score/model/figures.js';
import { PARTS, type Part, type Weights } from '../../score/parts/parts.js';
import type { Question } from '../question/question.js';
import { QUARTERS } from './niche.js';

/** Rounding never costs a candidate its place: bounds are taken to be this much higher than they are. */
export const SLACK = 1e-7;

/** The most that each part of a score can be, in the order of `PARTS`. */
export type PartsMost = Float64Array;

/** Place of each part in such a list. */
export const PLACE = Object.fromEntries(PARTS.map((part, at) => [part, at])) as Readonly<Record<Part, number>>;

/** What the bounds of a candidate tell before its face is made. */
export interface Foreseen {
  /** The most that each part can be. */
  readonly most: PartsMost;
  /** The score to reach with symmetry at its most. */
  readonly least: number;
  /** Figures by which novelty is bounded: line contrast is only known to be from the first to the second. */
  readonly figures?: Pick<Contrast, 'tone' | 'darkShare' | 'figure'> & { readonly line: readonly [number, number] };
}

const NOTHING_FORESEEN = { most: new Float64Array(PARTS.length).fill(1), least: Number.NEGATIVE_INFINITY };

/** A candidate that is to be scored: its number, itself, and what its bounds tell, where there are any. */
export type Given<C> = readonly [index: number, candidate: C, foreseen?: Foreseen];

/** Scores to reach: one for all cloths, or lower ones for niches whose best scores less. */
export interface Goals {
  readonly score: number;
  /** By the number of the niche. */
  readonly niches?: readonly number[];
}

/**
 * The scores that candidates of one job must reach. Of a candidate whose face is not made, all of its niche may be known
 * but the symmetry: its place is then the number of the niche that it has with the most symmetry.
 */
export class Aims {
  /** The score to reach at a place, if symmetry is taken to be the most that it can be. */
  readonly foreseen: (place: number) => number;
  private readonly score: number;
  private readonly niches: Float64Array | undefined;
  private readonly places: Float64Array;
  private readonly step: number;
  private readonly rises: boolean;

  constructor({ score, niches }: Goals, { rank, done }: Pick<Question, 'rank' | 'done'>) {
    this.score = score;
    this.niches = niches && Float64Array.from(niches);
    // What was done before may be left out, and then another is the best of its niche.
    this.rises = done === undefined;
    this.step = rank.symmetry / (QUARTERS - 1) / PARTS.reduce((sum, part) => sum + rank[part], 0);
    this.places = new Float64Array(niches?.length ?? 0);
    for (let niche = 0; niche < this.places.length; niche += QUARTERS) this.foresee(niche);
    this.foreseen = niches ? (place) => this.places[place]! : () => score;
  }

  /** The score to reach in a niche. */
  of(niche: number): number {
    return this.niches === undefined ? this.score : this.niches[niche]!;
  }

  /** A cloth was found: what scores less than this in its niche is not its best. */
  found(niche: number, score: number): void {
    if (this.niches === undefined || !this.rises) return;
    const least = Math.min(score, this.score);
    if (least <= this.niches[niche]!) return;
    this.niches[niche] = least;
    this.foresee(niche - (niche % QUARTERS));
  }

  /** With less symmetry a cloth scores less, but may come to a niche where less is enough. */
  private foresee(without: number): void {
    let enough = Number.POSITIVE_INFINITY;
    for (let place = without; place < without + QUARTERS; place++) {
      enough = Math.min(enough + this.step, this.niches![place]!);
      this.places[place] = enough;
    }
  }
}

/**
 * What the candidate in hand can still score, while its parts become known one after the other: it need not be measured
 * further once it cannot reach its score.
 */
export class Reach {
  private readonly weights: Float64Array;
  private readonly all: number;
  private readonly most = new Float64Array(PARTS.length);
  private enough = 0;
  private sum = 0;

  constructor(rank: Weights) {
    this.weights = Float64Array.from(PARTS, (part) => rank[part]);
    this.all = this.weights.reduce((sum, weight) => sum + weight, 0);
  }

  /** Takes a candidate in hand. */
  begin({ most, least }: Pick<Foreseen, 'most' | 'least'> = NOTHING_FORESEEN): void {
    this.most.set(most);
    this.aim(least);
    this.sum = this.weights.reduce((sum, weight, at) => sum + weight * most[at]!, 0);
  }

  /**
   * Whether the candidate in hand falls now that a part is known to be no more than this, and another score, where one
   * is given, is to be reached.
   */
  falls(part: Part, most: number, least?: number): boolean {
    if (least !== undefined) this.aim(least);
    const at = PLACE[part];
    if (most < this.most[at]!) {
      this.sum -= this.weights[at]! * (this.most[at]! - most);
      this.most[at] = most;
    }
    return this.sum < this.enough;
  }

  private aim(least: number): void {
    this.enough = (least - SLACK) * this.all;
  }
}
