import type { Question } from '../question/question.js';

/**
 * The upper bound of a score of contrast, symmetry and float alone: contrast is at most √(T² + line bound²), symmetry at
 * most its bound, and the float part is known. See BOUNDS.md.
 */
export class ScoreBound {
  private readonly contrast: number;
  private readonly symmetry: number;
  private readonly float: number;
  private readonly all: number;

  constructor({ rank: { contrast, symmetry, float } }: Pick<Question, 'rank'>, floatPart: number) {
    this.contrast = contrast;
    this.symmetry = symmetry;
    this.float = float * floatPart;
    this.all = contrast + symmetry + float;
  }

  /** The largest score that a tone and a symmetry allow if line contrast is taken as 0. A guide, not a bound. */
  of(toneSquared: number, symmetry: number): number {
    const contrast = Math.min(1, Math.sqrt(Math.max(0, toneSquared)));
    return (this.contrast * contrast + this.symmetry * symmetry + this.float) / this.all;
  }

  /**
   * The least M² with which a candidate of this symmetry can reach a score: −∞ if any contrast is enough, ∞ if none is.
   * It is slightly below the exact value, so that rounding never prunes a candidate that would tie.
   */
  needed(score: number, symmetry: number): number {
    const missing = (score - 1e-8) * this.all - this.symmetry * symmetry - this.float;
    if (missing <= 0) return Number.NEGATIVE_INFINITY;
    const contrast = missing / this.contrast;
    return contrast > 1 ? Number.POSITIVE_INFINITY : contrast * contrast - 1e-9;
  }
}

/** A candidate whose bounds are promising: a guess of its score, and its place (`scan.ts`). */
export interface Promising {
  readonly index: number;
  readonly hope: number;
  readonly place: number;
}

/**
 * The candidates with the highest guesses so far, for each place by itself: at most `most` of them, of equal guesses the
 * lower number first.
 */
export class TopCandidates {
  private readonly most: number;
  private readonly places: { hopes: Promising[]; least: number }[] = [];

  constructor(most: number) {
    this.most = most;
  }

  /** A candidate of this place with a lower guess need not be offered. */
  readonly least = (place: number): number => this.places[place]?.least ?? Number.NEGATIVE_INFINITY;

  offer(candidate: Promising): void {
    const { place, hope } = candidate;
    if (hope < this.least(place)) return;
    this.places[place] ??= { hopes: [], least: Number.NEGATIVE_INFINITY };
    const { hopes } = this.places[place];
    hopes.push(candidate);
    if (hopes.length >= 4 * this.most) this.cut(place);
  }

  /** The best: those of the first place, the best first, then those of the next. */
  best(): Promising[] {
    return this.places.flatMap((_, place) => this.cut(place));
  }

  private cut(place: number): Promising[] {
    const at = this.places[place]!;
    at.hopes.sort((a, b) => b.hope - a.hope || a.index - b.index);
    at.hopes.length = Math.min(at.hopes.length, this.most);
    if (at.hopes.length === this.most) at.least = at.hopes.at(-1)!.hope;
    return at.hopes;
  }
}
