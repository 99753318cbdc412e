import type { Sett } from '../../../draft/draft.js';
import type { Eye } from '../../look/look.js';
import type { Contrast, Ease, Floats } from '../../model/figures.js';
import type { FloatLimit } from '../../model/float-limit.js';

/** What is measured of every cloth, whatever its ranking. What takes time is left 0 where no part with weight needs it. */
export interface Measured extends Contrast {
  readonly symmetry: number;
  readonly novelty: number;
  readonly floats: Pick<Floats, 'longest' | 'longestMm'>;
  readonly ease: Pick<Ease, 'warpChanges' | 'weftChanges' | 'shuttles'>;
  readonly ends: number;
  readonly picks: number;
  readonly floatLimit: FloatLimit;
  readonly sett: Sett;
}

/** A figure of a cloth's appearance that is measured for the sake of a part. Galleries, tables and pages show it. */
export interface LookFigure {
  /** Its key in gallery.json. */
  readonly key: string;
  /** The heading of its column in tables. */
  readonly heading: string;
  /** Its name on the page. */
  readonly name: string;
  /** What it says, in one line. */
  readonly means: string;
  /** Decimals on the page. */
  readonly places: number;
  /** Measures it. Where a number is given that is enough for the parts, a larger one may be said to be this. */
  readonly measure: (seen: Eye, enough?: number) => number;
}

/** All about one part of a score: a figure from 0 to 1, more being better, by which cloths can be ranked. */
export interface ScorePart {
  /** The word by which a question gives it weight. */
  readonly name: string;
  /** Its name in sentences and on the page. */
  readonly words: string;
  /** What it measures, and what 1 means. */
  readonly means: string;
  /** Its weight where a question does not say what to rank by. Default: 0. */
  readonly weight?: number;
  /** The figures that take time which its value is computed from, of those that are not its own. */
  readonly needs?: readonly ('figure' | 'novelty')[];
  /** The figures that are measured for its sake. */
  readonly looks?: readonly LookFigure[];
  /** Its value, from 0 to 1. Each part names what it is computed from, of {@link Measured} and its own figures. */
  of(measured: never): number;
}
