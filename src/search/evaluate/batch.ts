import type { Floats } from '../../cloth/floats.js';
import { CANDIDATE_COLUMNS, type Columns, columnsFor, KEY_WORDS, PREFERENCES, resized } from './columns.js';

/** The results of a range of candidates: columns of those that may be shown, and counts of those set aside. */
export interface Batch extends Readonly<Columns<typeof CANDIDATE_COLUMNS>> {
  readonly length: number;
  readonly setAside: {
    readonly float: number;
    readonly unsound: number;
    readonly flat: number;
    readonly limits: number;
  };
  /** The floats nearest to the limit among the candidates set aside for their floats; absent if there are none. */
  readonly nearestFloats?: Floats;
}

/** A scored candidate: its numbers by the names of the columns. */
export interface ScoredCandidate {
  readonly index: number;
  readonly score: number;
  readonly area: number;
  readonly preference: readonly [float: number, warpChanges: number, shuttles: number, weftChanges: number];
  readonly niche: number;
  readonly key: ArrayLike<number>;
}

/** Collects candidates into a batch. */
export class BatchBuilder {
  readonly setAside = { float: 0, unsound: 0, flat: 0, limits: 0 };
  nearestFloats: Floats | undefined;
  private length = 0;
  private room = 256;
  private columns: Columns<typeof CANDIDATE_COLUMNS> = columnsFor(CANDIDATE_COLUMNS, this.room);

  add({ index, score, area, preference, niche, key }: ScoredCandidate): void {
    if (this.length === this.room) {
      this.room *= 2;
      this.columns = resized(CANDIDATE_COLUMNS, this.columns, this.room);
    }
    const { columns } = this;
    const at = this.length++;
    columns.index[at] = index;
    columns.score[at] = score;
    columns.area[at] = area;
    for (let k = 0; k < PREFERENCES; k++) columns.preference[at * PREFERENCES + k] = preference[k]!;
    columns.niche[at] = niche;
    for (let k = 0; k < KEY_WORDS; k++) columns.key[at * KEY_WORDS + k] = key[k]!;
  }

  done(): Batch {
    return {
      length: this.length,
      ...resized(CANDIDATE_COLUMNS, this.columns, this.length),
      setAside: { ...this.setAside },
      ...(this.nearestFloats && { nearestFloats: this.nearestFloats }),
    };
  }
}
