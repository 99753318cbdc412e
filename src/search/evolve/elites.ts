/** What became of an offer: not taken; replaced a lower score; filled an empty cell. */
export type OfferOutcome = 'rejected' | 'improved' | 'new';

/** Figures of an archive. */
export interface EliteStats {
  readonly filled: number;
  /** Share of the cells that are filled. */
  readonly coverage: number;
  /** Sum of the kept scores: the QD score of Pugh, Soros and Stanley (2016). */
  readonly total: number;
  /** Best score, and mean score of the filled cells; 0 where none is filled. */
  readonly best: number;
  readonly mean: number;
}

/**
 * The archive of elites: the best thing of each niche (Mouret and Clune 2015). Cells are numbers of niches, scores are
 * 0 or more. Of equal scores the first stays. Neither coverage nor the sum of scores ever falls.
 */
export class Elites<T> {
  private readonly kept = new Map<number, { readonly score: number; readonly thing: T }>();
  private readonly cells: number;
  private sum = 0;
  private most = 0;

  constructor(cells: number) {
    this.cells = cells;
  }

  /** Whether a thing of this score would be kept. */
  takes(cell: number, score: number): boolean {
    return score > (this.kept.get(cell)?.score ?? -1);
  }

  /** Offers a thing to its cell. @throws RangeError for a cell that is not there, or a score below 0 */
  offer(cell: number, score: number, thing: T): OfferOutcome {
    if (!Number.isInteger(cell) || cell < 0 || cell >= this.cells) {
      throw new RangeError(`cell ${cell} of a grid of ${this.cells}`);
    }
    if (!(score >= 0)) throw new RangeError(`a score of ${score}; expected 0 or more`);
    const before = this.kept.get(cell);
    if (before !== undefined && score <= before.score) return 'rejected';
    this.kept.set(cell, { score, thing });
    this.sum += score - (before?.score ?? 0);
    this.most = Math.max(this.most, score);
    return before === undefined ? 'new' : 'improved';
  }

  /** The elites, best first; of equal scores the one whose cell was filled first. */
  all(): T[] {
    return [...this.kept.values()].sort((a, b) => b.score - a.score).map(({ thing }) => thing);
  }

  /** The filled cells. */
  filled(): number[] {
    return [...this.kept.keys()];
  }

  stats(): EliteStats {
    const filled = this.kept.size;
    return {
      filled,
      coverage: filled / this.cells,
      total: this.sum,
      best: this.most,
      mean: filled === 0 ? 0 : this.sum / filled,
    };
  }
}
