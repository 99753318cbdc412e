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

/** The candidates with the highest guides so far: at most `most` of them, of equal guides the lower number first. */
export class TopCandidates {
  private readonly most: number;
  private hopes: { index: number; hope: number }[] = [];
  /** A candidate with a lower guide need not be offered. */
  least = Number.NEGATIVE_INFINITY;

  constructor(most: number) {
    this.most = most;
  }

  offer(index: number, hope: number): void {
    if (hope < this.least) return;
    this.hopes.push({ index, hope });
    if (this.hopes.length >= 4 * this.most) this.cut();
  }

  /** The numbers of the best, the best first. */
  best(): { index: number; hope: number }[] {
    this.cut();
    return this.hopes;
  }

  private cut(): void {
    this.hopes.sort((a, b) => b.hope - a.hope || a.index - b.index);
    this.hopes.length = Math.min(this.hopes.length, this.most);
    if (this.hopes.length === this.most) this.least = this.hopes.at(-1)!.hope;
  }
}
