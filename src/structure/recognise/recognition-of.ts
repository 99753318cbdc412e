import type { Draft, Weave } from '../../draft/draft.js';
import { recognise, understood } from './recognise.js';
import type { Recognition } from './recognition.js';

/** Recognitions, by weave. */
const known = new WeakMap<Weave, Recognition>();

/** Recognises a weave; once, since that takes a while. */
export function recognitionOf(weave: Weave): Recognition {
  const found = known.get(weave) ?? recognise(weave);
  known.set(weave, found);
  return found;
}

/** The draft with its recognised units. If it begins where it did, it is recognised as the draft is. */
export function understoodDraft(draft: Draft): Draft {
  const found = recognitionOf(draft);
  const made = understood(draft, found);
  if (found.ends.from === 0 && found.picks.from === 0) known.set(made, found);
  return made;
}
