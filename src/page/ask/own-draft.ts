import type { Draft } from '../../draft/draft.js';
import { readWif, refuseLarge } from '../../draft/wif/read-wif.js';
import { readDraft, writeDraft } from '../../draft/yaml/read-draft.js';
import { Problem } from '../../problem.js';
import { withUnits } from '../../structure/recognise/with-units.js';

/** A draft of a person's own, as it was typed or dropped. */
export interface OwnDraft {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** Whether it is a WIF file: what a question holds of one is YAML under its name. */
export function isWif({ name, bytes }: OwnDraft): boolean {
  return /\.wif$/i.test(name) && !/^(version|name|threading):/.test(wordsOf(bytes));
}

/** Reads a draft, WIF or YAML, with the units of its structure if that is known. */
export function draftOfOwn(own: OwnDraft, tell: (note: string) => void): Draft {
  const { name, bytes } = own;
  if (!isWif(own)) return withUnits(name, readDraft(wordsOf(bytes), name), tell);
  try {
    const { draft, notes } = readWif(bytes);
    refuseLarge(draft);
    for (const note of notes) tell(`${name}: ${note}`);
    return withUnits(name, draft, tell);
  } catch (error) {
    throw error instanceof Problem ? error.inFile(name) : error;
  }
}

/** The draft as YAML: as it was typed, or translated from WIF. */
export function textOfOwn(own: OwnDraft): string {
  return isWif(own) ? writeDraft(draftOfOwn(own, () => {})) : wordsOf(own.bytes).replace(/\r\n?/g, '\n');
}

/** A draft from its text. */
export function ownOf(name: string, text: string): OwnDraft {
  return { name, bytes: new TextEncoder().encode(text) };
}

const wordsOf = (bytes: Uint8Array): string => new TextDecoder().decode(bytes);
