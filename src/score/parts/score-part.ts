import type { Sett } from '../../draft/draft.js';
import type { Contrast, Ease, Floats, Look } from '../model/figures.js';
import type { FloatLimit } from './float-limit.js';

/** The figures from which the parts of a score are computed. A figure that no part with weight needs may be left 0. */
export interface Measured extends Contrast, Look {
  readonly symmetry: number;
  readonly novelty: number;
  readonly floats: Pick<Floats, 'longest' | 'longestMm'>;
  readonly ease: Pick<Ease, 'warpChanges' | 'weftChanges' | 'shuttles'>;
  readonly ends: number;
  readonly picks: number;
  readonly floatLimit: FloatLimit;
  readonly sett: Sett;
}

/** Figures that take time to measure, and are measured only where a part with weight needs them. */
export type Costly = keyof Look | 'figure' | 'novelty';

/** All about one part of a score: a figure from 0 to 1, more being better, by which cloths can be ranked. */
export interface ScorePart {
  /** The word by which a question gives it weight. */
  readonly name: string;
  /** Its name in sentences and on the page. */
  readonly words: string;
  /** What it measures, and what 1 means. */
  readonly means: string;
  readonly needs: readonly Costly[];
  /** Its weight where a question does not say what to rank by. Default: 0. */
  readonly weight?: number;
  /** Set if the search has a bound for it that may be below 1 (`search/bounded`). */
  readonly hasBound?: true;
  /** Its value, from 0 to 1. */
  of(measured: Measured): number;
}
