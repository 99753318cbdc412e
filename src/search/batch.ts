import type { Floats } from '../cloth/floats.js';

/** What a stretch of candidates came to: those that may be shown, as columns of numbers, and why the others may not. */
export interface Batch {
  readonly length: number;
  /** Number of the candidate in its space (in its sample). */
  readonly index: Float64Array<ArrayBuffer>;
  /** Score as it is compared: rounded to nine decimals, in billionths. */
  readonly score: Float64Array<ArrayBuffer>;
  /** Cells of one repeat. */
  readonly area: Float64Array<ArrayBuffer>;
  /** Four whole numbers by which one of equal cloths is kept, most important first; smaller is better. */
  readonly preference: Float64Array<ArrayBuffer>;
  /** Number of the kind of cloth it is. */
  readonly niche: Float64Array<ArrayBuffer>;
  /** Four words that are the same exactly for the same cloth. */
  readonly key: Uint32Array<ArrayBuffer>;
  readonly setAside: {
    readonly float: number;
    readonly unsound: number;
    readonly flat: number;
    readonly limits: number;
  };
  /** The longest floats of what was set aside for them and comes nearest to the limit; none where nothing was. */
  readonly nearestFloats?: Floats;
}

export const PREFERENCES = 4;
export const KEY_WORDS = 4;

/** Collects candidates into a batch. */
export class BatchBuilder {
  readonly setAside = { float: 0, unsound: 0, flat: 0, limits: 0 };
  nearestFloats: Floats | undefined;
  private length = 0;
  private readonly index: Float64Array;
  private readonly score: Float64Array;
  private readonly area: Float64Array;
  private readonly preference: Float64Array;
  private readonly niche: Float64Array;
  private readonly key: Uint32Array;

  /** Room for at most `room` candidates. */
  constructor(room: number) {
    this.index = new Float64Array(room);
    this.score = new Float64Array(room);
    this.area = new Float64Array(room);
    this.preference = new Float64Array(room * PREFERENCES);
    this.niche = new Float64Array(room);
    this.key = new Uint32Array(room * KEY_WORDS);
  }

  add(
    index: number,
    score: number,
    area: number,
    preference: readonly number[],
    niche: number,
    key: ArrayLike<number>,
  ): void {
    const at = this.length++;
    this.index[at] = index;
    this.score[at] = score;
    this.area[at] = area;
    this.preference.set(preference, at * PREFERENCES);
    this.niche[at] = niche;
    this.key.set(key, at * KEY_WORDS);
  }

  done(): Batch {
    const n = this.length;
    return {
      length: n,
      index: this.index.slice(0, n),
      score: this.score.slice(0, n),
      area: this.area.slice(0, n),
      preference: this.preference.slice(0, n * PREFERENCES),
      niche: this.niche.slice(0, n),
      key: this.key.slice(0, n * KEY_WORDS),
      setAside: { ...this.setAside },
      ...(this.nearestFloats && { nearestFloats: this.nearestFloats }),
    };
  }
}
