import type { Draft } from '../../draft/draft.js';
import { counted } from '../../words/counts.js';
import { recognitionOf, understoodDraft } from './recognition-of.js';

/**
 * The draft of a file with the units of its structure, rotated to begin with a unit; unchanged if it has units or is
 * unknown. A note about it goes to `tell`.
 */
export function withUnits(path: string, draft: Draft, tell: (note: string) => void): Draft {
  if ([...draft.endUnits, ...draft.pickUnits].some((unit) => unit !== 1)) return draft;
  const { structure, confidence, ends, picks } = recognitionOf(draft);
  if (structure === undefined || (confidence !== 'certain' && confidence !== 'likely')) return draft;
  const units = `${counted(ends.units.length, 'unit')}`;
  const begins =
    ends.from === 0 && picks.from === 0 ? '' : `, begun at end ${ends.from + 1} and pick ${picks.from + 1} of the file`;
  tell(`${path}: threading understood as ${structure.name} (${confidence}), ${units}${begins}`);
  return understoodDraft(draft);
}
