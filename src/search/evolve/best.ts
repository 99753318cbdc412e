/** The best things offered, none of one name twice, the best first; of equal scores the first offered. */
export class Best<T> {
  private readonly most: number;
  private readonly kept: { readonly name: string; score: number; thing: T }[] = [];

  /** Room for `most` things. */
  constructor(most: number) {
    this.most = most;
  }

  /** Whether a thing of this name and score would be kept. */
  takes(name: string, score: number): boolean {
    const last = this.kept.at(-1);
    if (this.kept.length === this.most && last !== undefined && score <= last.score) return false;
    return !this.kept.some((known) => known.name === name);
  }

  /** Whether the thing, or the one known by its name, stands among the best because of this offer. */
  offer(name: string, score: number, thing: T): boolean {
    if (!this.takes(name, score)) return false;
    const at = this.kept.findIndex((known) => known.score < score);
    this.kept.splice(at < 0 ? this.kept.length : at, 0, { name, score, thing });
    this.kept.length = Math.min(this.kept.length, this.most);
    return true;
  }

  things(): T[] {
    return this.kept.map(({ thing }) => thing);
  }

  /** Sum of the scores kept. */
  total(): number {
    return this.kept.reduce((sum, { score }) => sum + score, 0);
  }
}
