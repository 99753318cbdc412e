import type { Sett } from '../../draft/draft.js';
import { type Structure, weaveOf } from './catalogue.js';

/**
 * The sett at which the blocks of a structure come out square: as many picks as ends; if tabby picks make a block
 * longer in picks than in ends, as many times more picks (common practice, no source).
 *
 * @param ends ends per inch or per centimetre
 */
export function usualSett(structure: Structure, { ends, per }: Pick<Sett, 'ends' | 'per'>): Sett {
  return { ends, picks: ends * beatOf(structure), per };
}

function beatOf(structure: Structure): number {
  const { pickKinds, treadling, threading } = weaveOf(structure, structure.profile);
  return pickKinds.includes('pattern') ? Math.max(1, Math.round(treadling.length / threading.length)) : 1;
}
