import type { Draft } from '../../draft/draft.js';
import { restoredDraft } from '../../formats/stored-draft.js';
import type { Manifest, ManifestCandidate } from './manifest-schema.js';

/** The draft of a cloth, ready to be drawn, scored or planned. */
export function manifestDraft({ draft }: ManifestCandidate, { palette, question }: Manifest): Draft {
  return restoredDraft({ ...draft, yarns: palette, sett: question.sett });
}
