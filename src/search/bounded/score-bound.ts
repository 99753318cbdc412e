import { PARTS } from '../../score/parts/parts.js';
import type { Question } from '../question/question.js';
import { PART_BOUNDS } from '../space/part-bounds.js';

/**
 * The upper bound of a candidate's score: contrast is at most √(T² + line bound²), symmetry at most its bound, the
 * float part is known, and every other part is at most 1. See BOUNDS.md.
 */
export class ScoreBound {
  private readonly contrast: number;
  private readonly symmetry: number;
  /** The largest sum of weight·part over all other parts. */
  private readonly rest: number;
  private readonly all: number;

  constructor(question: Question, floatPart: number) {
    const { rank } = question;
    const weight = { contrast: 0, symmetry: 0, floats: 0, one: 0 };
    for (const part of PARTS) weight[PART_BOUNDS[part]] += rank[part];
    this.contrast = weight.contrast;
    this.symmetry = weight.symmetry;
    this.rest = weight.floats * floatPart + weight.one;
    this.all = weight.contrast + weight.symmetry + weight.floats + weight.one;
  }

  /** The largest score that a tone and a symmetry allow if line contrast is taken as 0. A guide, not a bound. */
  of(toneSquared: number, symmetry: number): number {
    const contrast = Math.min(1, Math.sqrt(Math.max(0, toneSquared)));
    return (this.contrast * contrast + this.symmetry * symmetry + this.rest) / this.all;
  }

  /**
   * The least M² with which a candidate of this symmetry can reach a score: −∞ if any contrast is enough, ∞ if none is.
   * It is slightly below the exact value, so that rounding never prunes a candidate that would tie.
   */
  needed(score: number, symmetry: number): number {
    const missing = (score - 1e-8) * this.all - this.symmetry * symmetry - this.rest;
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
