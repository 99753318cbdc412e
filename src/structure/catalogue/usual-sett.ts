import type { Sett } from '../../draft/draft.js';
import { type Structure, weaveOf } from './catalogue.js';

/**
 * The sett at which a structure's blocks come out square: as many picks as ends or, where pattern picks and tabby take
 * turns so that a block has more picks than ends, so many times as many (common practice, no source).
 *
 * @param ends ends in a measure
 */
export function usualSett(structure: Structure, { ends, per }: Pick<Sett, 'ends' | 'per'>): Sett {
  return { ends, picks: ends * beatOf(structure), per };
}

function beatOf(structure: Structure): number {
  const { pickKinds, treadling, threading } = weaveOf(structure, structure.profile);
  return pickKinds.includes('pattern') ? Math.max(1, Math.round(treadling.length / threading.length)) : 1;
}
