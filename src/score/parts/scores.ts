import type { Contrast, Floats, Nearly, Symmetry } from '../model/figures.js';
import type { Look } from './parts.js';

/** Every figure of one cloth, as written in a gallery. */
export interface Scores extends Contrast, Symmetry, Look {
  readonly score: number;
  readonly nearly?: Nearly;
  /** Smallest difference to a classic order on the same structure (0 is a classic), and the name of that classic. */
  readonly novelty?: number;
  readonly nearest?: string;
  readonly floats: Floats;
  /** Standard deviation of L* seen from 0.6, 2 and 6 metres. */
  readonly reads: Readonly<Record<'0.6' | '2' | '6', number>>;
  /** Metres up to which the motif is easy to see. */
  readonly easyTo: number;
  /** Metres from which it has melted. */
  readonly goneBy: number;
}
