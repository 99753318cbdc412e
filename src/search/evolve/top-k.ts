/** The top k things offered, best first. No name occurs twice; of equal scores the one offered first comes first. */
export class TopK<T> {
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

  /** Offers a thing. True if it was taken; false if its score is too low or its name is kept already. */
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

  /** Sum of the kept scores. */
  total(): number {
    return this.kept.reduce((sum, { score }) => sum + score, 0);
  }
}
