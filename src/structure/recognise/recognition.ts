import type { PickKind, Widths } from '../../draft/draft.js';
import type { Lift } from '../loom/lifts.js';
import type { Structure } from '../model/structure.js';

/**
 * How sure it is. Certain: threading and every pick are one structure's and no other's. Likely: another structure
 * fits as well, or the sheds are the structure's in an order of their own. Possible: the threading alone fits, or units
 * were made of straight runs. None: nothing recurs.
 */
export type Confidence = 'certain' | 'likely' | 'possible' | 'none';

/** Units of one system of threads. */
export interface Divided {
  /** Thread, from 0, on which the first unit begins; the last unit runs over the seam to it. */
  readonly from: number;
  /** Threads in each unit; they add up to the threads of the weave. */
  readonly units: readonly number[];
  /** Letter of each unit's block, where the structure is known. */
  readonly blocks?: readonly string[];
}

/** What a weave of bare numbers was found to be. */
export interface Recognition {
  readonly structure?: Structure;
  /** Name of the manner of treadling. */
  readonly manner?: string;
  /** Names of other structures that fit as well. */
  readonly others: readonly string[];
  readonly confidence: Confidence;
  /** Shaft of the weave for each shaft of the structure, where they differ. */
  readonly renumbered?: ReadonlyMap<number, number>;
  /** The face that is up in weaving is the structure's back. */
  readonly turned: boolean;
  readonly ends: Divided;
  readonly picks: Divided;
  /** Kind of each pick, from pick 0 on. */
  readonly pickKinds?: readonly PickKind[];
  readonly widths?: Widths;
  /** The two sheds of plain weave right across. */
  readonly tabby?: readonly [Lift, Lift];
  /** Picks follow the order of the ends: pick by pick (plain-weave picks between left out), or unit by unit. */
  readonly asDrawnIn: 'thread' | 'unit' | 'no';
  /** Ends and picks after which threading and sheds begin again, whatever the colours. */
  readonly repeat: { readonly ends: number; readonly picks: number };
  /** All of this in sentences. */
  readonly words: readonly string[];
}
