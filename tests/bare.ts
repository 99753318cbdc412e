import { EVEN_WIDTHS, type Weave } from '../src/draft/draft.js';

/** A weave of bare numbers, as a person types one: no units, no kinds of picks. */
export function bareWeave({ threading, tieUp, treadling }: Pick<Weave, 'threading' | 'tieUp' | 'treadling'>): Weave {
  return {
    threading,
    tieUp,
    treadling,
    pickKinds: treadling.map(() => 'ground'),
    endUnits: threading.map(() => 1),
    pickUnits: treadling.map(() => 1),
    widths: EVEN_WIDTHS,
  };
}
