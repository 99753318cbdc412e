import type { PickKind, Widths } from '../../draft/draft.js';
import type { Lift } from '../loom/lifts.js';
import type { Structure } from '../model/structure.js';

/**
 * Confidence of a recognition. Certain: only one structure explains the threading and every pick. Likely: another
 * structure fits as well, or the sheds are the structure's in another order. Possible: only the threading fits, or the
 * units are straight runs. None: nothing recurs.
 */
export type Confidence = 'certain' | 'likely' | 'possible' | 'none';

/** Units of one system of threads. */
export interface Divided {
  /** Index of the thread on which the first unit begins; the last unit runs across the seam to it. */
  readonly from: number;
  /** Threads in each unit; they add up to the threads of the weave. */
  readonly units: readonly number[];
  /** Letter of each unit's block, where the structure is known. */
  readonly blocks?: readonly string[];
}

/** The recognition of a weave. */
export interface Recognition {
  readonly structure?: Structure;
  /** Whether every shed is one of the structure's. */
  readonly shedsKnown: boolean;
  /** Whether plain weave between its pattern picks is needed, and not written. */
  readonly tabbyLeftOut: boolean;
  /** Name of the manner of treadling. */
  readonly manner?: string;
  /** Names of other structures that fit as well. */
  readonly others: readonly string[];
  readonly confidence: Confidence;
  /** Shaft of the weave for each shaft of the structure, if they differ. */
  readonly renumbered?: ReadonlyMap<number, number>;
  /** True if the cloth is woven face down. */
  readonly turned: boolean;
  readonly ends: Divided;
  readonly picks: Divided;
  /** Kind of each pick, from pick 0 on. */
  readonly pickKinds?: readonly PickKind[];
  readonly widths?: Widths;
  /** The two sheds of plain weave, if the threading has them. */
  readonly tabby?: readonly [Lift, Lift];
  /**
   * Whether the picks follow the order of the ends: pick by pick (without plain-weave picks between), or unit by unit.
   */
  readonly asDrawnIn: 'thread' | 'unit' | 'no';
  /** Repeat of the threading and of the sheds, without regard to colours. */
  readonly repeat: { readonly ends: number; readonly picks: number };
  /** The recognition in sentences. */
  readonly words: readonly string[];
}
