import type { Floats } from '../../cloth/floats.js';
import type { Draft } from '../../draft/draft.js';
import type { LaidOrder } from '../../order/laid-order.js';
import type { Ease } from '../../score/model/figures.js';
import type { Scores } from '../../score/parts/scores.js';
import type { Evolved } from './strategies.js';

/** One cloth that a search kept, with everything said of it. */
export interface Found {
  /** 1 is the best. */
  readonly rank: number;
  /** Short hash of the draft with its colours; the same draft has the same code everywhere. */
  readonly code: string;
  /** How it is made, in one line. */
  readonly recipe: string;
  /** The same without the orders, for where these stand beside it. */
  readonly shortRecipe: string;
  /** Why it stands at its place and which classic it is nearest to, in words. */
  readonly why: string;
  readonly structure: string;
  /** What the command `draw` is given to draw it again: flags without their dashes, or `draft`, and their values. */
  readonly redraw: readonly (readonly [flag: string, value: string])[];
  readonly draft: Draft;
  readonly order: LaidOrder;
  readonly scores: Scores;
  readonly ease: Ease;
  /** How many other candidates weave this very cloth. */
  readonly equals: number;
  /** Code of a better cloth that looks nearly the same, or null. */
  readonly nearTwin: string | null;
}

/** What became of every candidate. `examined` = cloths + equals + everything set aside + what was cut off. */
export interface Counts {
  readonly written: number;
  readonly examined: number;
  readonly cloths: number;
  readonly equals: number;
  readonly setAside: {
    readonly float: number;
    readonly unsound: number;
    readonly flat: number;
    readonly limits: number;
    /** Done before, or nearer to a cloth that was than is asked; there where that is asked. */
    readonly done?: number;
  };
  /** Candidates whose bounds say that they cannot be among those shown; they were not scored further. */
  readonly cutOff: number;
  /** Every candidate was tried, and the ranking is exact; false where it is beyond listing or the search stopped. */
  readonly exhaustive: boolean;
  /** The search was stopped before its end: this is a part of the answer. */
  readonly stopped?: true;
  /** How it went where the space is beyond listing. */
  readonly evolved?: Evolved;
}

/** What a search hands on to the gallery. */
export interface Outcome {
  readonly counts: Counts;
  readonly found: readonly Found[];
  /** The longest floats of the cloth that comes nearest to the limit, of those set aside for a float. */
  readonly nearestFloats?: Floats;
}
