import type { Draft } from '../../draft/draft.js';
import { readWif, refuseLarge } from '../../draft/wif/read-wif.js';
import { readDraft } from '../../draft/yaml/read-draft.js';
import { Problem } from '../../problem.js';
import { withUnits } from '../../structure/recognise/with-units.js';

/** A draft of a person's own, as it was typed or dropped. */
export interface OwnDraft {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** Reads a draft, WIF or YAML by the ending of its name, with the units of its structure if that is known. */
export function draftOfOwn({ name, bytes }: OwnDraft, tell: (note: string) => void): Draft {
  if (!/\.wif$/i.test(name)) return withUnits(name, readDraft(new TextDecoder().decode(bytes), name), tell);
  try {
    const { draft, notes } = readWif(bytes);
    refuseLarge(draft);
    for (const note of notes) tell(`${name}: ${note}`);
    return withUnits(name, draft, tell);
  } catch (error) {
    throw error instanceof Problem ? error.inFile(name) : error;
  }
}
