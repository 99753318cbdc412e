import type { Sett } from '../../draft/draft.js';
import { type Structure, weaveOf } from './catalogue.js';

/**
 * The sett at which the blocks of a structure come out square: as many picks as ends; if tabby picks make a block
 * longer in picks than in ends, as many times more picks (common practice, no source).
 *
 * @param ends ends per inch or per centimetre
 * @param manner the manner of treadling; the usual one if none is given
 */
export function usualSett(
  structure: Structure,
  { ends, per }: Pick<Sett, 'ends' | 'per'>,
  manner = structure.manners[0]!.name,
): Sett {
  return { ends, picks: ends * beatOf(structure, manner), per };
}

function beatOf(structure: Structure, manner: string): number {
  const { pickKinds, treadling, threading } = weaveOf(structure, structure.profile, { manner });
  return pickKinds.includes('pattern') ? Math.max(1, Math.round(treadling.length / threading.length)) : 1;
}
