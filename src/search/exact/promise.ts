import { PARTS } from '../../score/rank.js';
import type { Question } from '../question.js';

/**
 * What the bounds of a candidate say of its score. Contrast is at most √(T² + the line bound²), symmetry at most its
 * bound, and every other part at most 1 (the float part is known beforehand).
 */
export class Hope {
  private readonly contrast: number;
  private readonly symmetry: number;
  /** The most that all other parts can bring. */
  private readonly rest: number;
  private readonly all: number;

  constructor(question: Question, floatPart: number) {
    const { rank } = question;
    this.contrast = rank.contrast;
    this.symmetry = rank.symmetry;
    const bounded = rank.contrast + rank.symmetry + rank.float;
    this.all = PARTS.reduce((sum, part) => sum + rank[part], 0);
    this.rest = rank.float * floatPart + this.all - bounded;
  }

  /** The score that a tone and a symmetry would give at the most, lines left out. */
  of(toneSquared: number, symmetry: number): number {
    const contrast = Math.min(1, Math.sqrt(Math.max(0, toneSquared)));
    return (this.contrast * contrast + this.symmetry * symmetry + this.rest) / this.all;
  }

  /**
   * The least M² with which a candidate of this symmetry can reach a score; −∞ where any contrast will do, ∞ where
   * none is enough. A hair below the exact value, so that rounding never costs a candidate its place.
   */
  needed(score: number, symmetry: number): number {
    const missing = (score - 1e-8) * this.all - this.symmetry * symmetry - this.rest;
    if (missing <= 0) return Number.NEGATIVE_INFINITY;
    const contrast = missing / this.contrast;
    return contrast > 1 ? Number.POSITIVE_INFINITY : contrast * contrast - 1e-9;
  }
}

/** The most promising candidates met so far, by the score they may reach, then by number. */
export class Promising {
  private readonly most: number;
  private hopes: { index: number; hope: number }[] = [];
  /** Below this a candidate need not be offered. */
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
