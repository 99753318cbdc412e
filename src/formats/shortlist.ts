import * as v from 'valibot';
import type { Draft } from '../draft/draft.js';
import { schemaFault } from '../input/schema-fault.js';
import type { LaidOrder } from '../order/laid-order.js';
import { Problem, quote } from '../problem.js';
import { codeOf } from '../score/symmetry/cloth-code.js';
import { laidOrderSchema } from './laid-order-schema.js';
import { faultOf, restoredDraft, storedDraft, storedDraftSchema } from './stored-draft.js';

/** Value of the key `format` in a shortlist. */
const SHORTLIST_FORMAT = 'shedlight-shortlist';

/** Largest gallery or shortlist that is read, in bytes. */
export const LARGEST_LIST = 200_000_000;
/** Most cloths in a shortlist: a guard against damaged files. */
export const MOST_KEPT = 1000;
/** Most characters in the texts about a cloth. */
export const LONGEST = { recipe: 1000, structure: 200, note: 2000, origin: 2000 } as const;

/** One cloth of a shortlist, with the person's note and stars. */
export interface KeptCloth {
  readonly code: string;
  /** How the cloth is made, in one line. */
  readonly recipe: string;
  readonly structure: string;
  /** Its colour orders; absent for a gamp, and in lists of earlier versions. */
  readonly order?: LaidOrder;
  /** The program that found it and the question it answers; absent for a gamp, and in lists of earlier versions. */
  readonly origin?: string;
  /** Set if its warp was on the loom already when the question was asked. */
  readonly onTheLoom?: true;
  /** The person's own words. */
  readonly note: string;
  /** 0 (no mark) to 5. */
  readonly stars: number;
  readonly draft: Draft;
}

const CODE = 'a code of small letters and digits, as under the pictures';

/** What shortlists and plans hold of a cloth beside its draft. */
export const keptEntries = {
  code: v.pipe(v.string(), v.regex(/^[0-9a-z]{1,64}$/, CODE)),
  recipe: v.pipe(v.string(), v.maxLength(LONGEST.recipe)),
  structure: v.pipe(v.string(), v.maxLength(LONGEST.structure)),
  order: v.exactOptional(laidOrderSchema),
  origin: v.exactOptional(v.pipe(v.string(), v.maxLength(LONGEST.origin))),
  onTheLoom: v.exactOptional(v.literal(true)),
  note: v.optional(v.pipe(v.string(), v.maxLength(LONGEST.note)), ''),
  stars: v.optional(v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(5)), 0),
};
const keptSchema = v.object({ ...keptEntries, draft: storedDraftSchema });

const headEntries = { format: v.literal(SHORTLIST_FORMAT), version: v.literal(1) };
/** Its cloths are read one by one, so that a message names the cloth that is damaged. */
const headSchema = v.object({ ...headEntries, candidates: v.array(v.unknown()) });

/** Schema of a whole shortlist. */
export const shortlistSchema = v.object({
  ...headEntries,
  candidates: v.pipe(v.array(keptSchema), v.maxLength(MOST_KEPT)),
});

/** The text of a shortlist: one cloth a line, in the order in which they were kept. */
export function shortlistText(kept: readonly KeptCloth[]): string {
  const lines = kept.map(clothText);
  return `{\n"format": "${SHORTLIST_FORMAT}",\n"version": 1,\n"candidates": [\n${lines.join(',\n')}\n]\n}\n`;
}

function clothText({ draft, ...cloth }: KeptCloth): string {
  return JSON.stringify({ ...cloth, draft: storedDraft(draft) });
}

/** Whether a text is JSON that calls itself a shortlist; the rest of it may be damaged. */
export function isShortlist(text: string): boolean {
  try {
    const given: unknown = JSON.parse(text);
    return typeof given === 'object' && given !== null && (given as { format?: unknown }).format === SHORTLIST_FORMAT;
  } catch {
    return false;
  }
}

/**
 * Reads a shortlist; `file` is its name, for messages.
 *
 * @throws Problem if the text is no shortlist or a damaged one, has a cloth twice, or has a draft with another code
 */
export function parseShortlist(text: string, file: string): KeptCloth[] {
  let given: unknown;
  try {
    given = JSON.parse(text);
  } catch {
    throw new Problem(`${file}: found text that is not whole JSON; expected a shortlist as shedlight keep writes it`);
  }
  if (!isShortlist(text))
    throw new Problem(`${file}: found another kind of file; expected format "${SHORTLIST_FORMAT}"`);
  const { version } = given as { version?: unknown };
  if (version !== 1) {
    const found = JSON.stringify(version)?.slice(0, 20) ?? 'none';
    throw new Problem(
      `${file}: found version ${found} of a shortlist; expected version 1 (is shedlight older than it?)`,
    );
  }
  const result = v.safeParse(headSchema, given);
  if (!result.success) throw new Problem(`${file}: ${schemaFault(result.issues[0])}`);
  const { candidates } = result.output;
  if (candidates.length > MOST_KEPT) {
    throw new Problem(`${file}: found ${candidates.length} cloths; expected at most ${MOST_KEPT}`);
  }
  const kept = candidates.map((cloth, at) => parseCloth(cloth, `${file}: candidates.${at}.`));
  const twice = kept.find(({ code }, at) => kept.findIndex((other) => other.code === code) < at);
  if (twice !== undefined) throw new Problem(`${file}: found ${twice.code} twice; expected each cloth once`);
  return kept;
}

/** Writes a cloth as a shortlist and reads it back, to check it. `where` begins the message of a Problem. */
export function readBack(cloth: KeptCloth, where: string): KeptCloth {
  return parseCloth(JSON.parse(clothText(cloth)), where);
}

function parseCloth(given: unknown, where: string): KeptCloth {
  const result = v.safeParse(keptSchema, given);
  if (!result.success) throw new Problem(`${where}${schemaFault(result.issues[0])}`);
  const cloth = result.output;
  const fault = faultOf(cloth.draft);
  if (fault !== undefined) throw new Problem(`${where}draft.${fault}`);
  const draft = restoredDraft(cloth.draft);
  const code = codeOf(draft);
  if (code !== cloth.code) {
    throw new Problem(`${where}code: found ${quote(cloth.code)}; expected “${code}”, the code of its draft`);
  }
  return { ...cloth, draft };
}

/** A cloth as first kept, without note and stars. Texts too long for a shortlist are cut; the draft is complete. */
export function keptOf(cloth: Omit<KeptCloth, 'note' | 'stars'>): KeptCloth {
  const { code, recipe, structure, order, origin, onTheLoom, draft } = cloth;
  const said = { recipe: recipe.slice(0, LONGEST.recipe), structure: structure.slice(0, LONGEST.structure) };
  const from = origin === undefined ? {} : { origin: origin.slice(0, LONGEST.origin) };
  return {
    code,
    ...said,
    ...(order && { order }),
    ...from,
    ...(onTheLoom && { onTheLoom }),
    note: '',
    stars: 0,
    draft,
  };
}

/** Adds cloths to a shortlist; a cloth already on it stays unchanged, note and stars included. */
export function keepAlso(kept: readonly KeptCloth[], more: readonly KeptCloth[]): KeptCloth[] {
  const known = new Set(kept.map(({ code }) => code));
  return [...kept, ...more.filter(({ code }) => !known.has(code))];
}
