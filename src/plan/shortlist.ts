import * as v from 'valibot';
import type { Draft } from '../draft/draft.js';
import type { LaidOrder } from '../order/laid-order.js';
import { Problem } from '../problem.js';
import { codeOf } from '../score/code.js';
import { laidOrderSchema } from './laid-order-schema.js';
import { faultOf, restoredDraft, storedDraft, storedDraftSchema } from './stored-draft.js';

/** The name by which a file of kept cloths is known. */
const SHORTLIST_FORMAT = 'shedlight-shortlist';

/** More than anybody weaves from; guards what is built from a file. */
const MOST_KEPT = 1000;

/** One cloth that was kept, with what the person says of it. */
export interface KeptCloth {
  readonly code: string;
  /** How it is made, in one line. */
  readonly recipe: string;
  readonly structure: string;
  /** Its colour orders; absent for a gamp, and in lists of earlier versions. */
  readonly order?: LaidOrder;
  /** The person's own words. */
  readonly note: string;
  /** 0 (no mark) to 5. */
  readonly stars: number;
  readonly draft: Draft;
}

const keptSchema = v.object({
  code: v.pipe(v.string(), v.regex(/^[0-9a-z]{1,64}$/)),
  recipe: v.pipe(v.string(), v.maxLength(1000)),
  structure: v.pipe(v.string(), v.maxLength(200)),
  order: v.exactOptional(laidOrderSchema),
  note: v.optional(v.pipe(v.string(), v.maxLength(2000)), ''),
  stars: v.optional(v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(5)), 0),
  draft: storedDraftSchema,
});

const shortlistSchema = v.object({
  format: v.literal(SHORTLIST_FORMAT),
  version: v.literal(1),
  candidates: v.pipe(v.array(keptSchema), v.maxLength(MOST_KEPT)),
});

/** The text of a shortlist: one cloth a line, in the order in which they were kept. */
export function shortlistText(kept: readonly KeptCloth[]): string {
  const lines = kept.map(({ draft, ...cloth }) => JSON.stringify({ ...cloth, draft: storedDraft(draft) }));
  return `{\n"format": "${SHORTLIST_FORMAT}",\n"version": 1,\n"candidates": [\n${lines.join(',\n')}\n]\n}\n`;
}

/** Whether a text is meant as a shortlist. */
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
 * @throws Problem for what is no shortlist, a damaged one, a cloth twice, or a draft that is not the one of its code
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
  const result = v.safeParse(shortlistSchema, given);
  if (!result.success) {
    const [issue] = result.issues;
    const expected = issue.expected ?? issue.message;
    throw new Problem(`${file}: ${v.getDotPath(issue) ?? 'at the top'}: found ${issue.received}; expected ${expected}`);
  }
  const kept = result.output.candidates.map((cloth, at): KeptCloth => {
    const fault = faultOf(cloth.draft);
    if (fault !== undefined) throw new Problem(`${file}: candidates.${at}.draft.${fault}`);
    const draft = restoredDraft(cloth.draft);
    const code = codeOf(draft);
    if (code !== cloth.code) {
      throw new Problem(
        `${file}: candidates.${at}.code: found “${cloth.code}”; expected “${code}”, the code of its draft`,
      );
    }
    return { ...cloth, draft };
  });
  const twice = kept.find(({ code }, at) => kept.findIndex((other) => other.code === code) < at);
  if (twice !== undefined) throw new Problem(`${file}: found ${twice.code} twice; expected each cloth once`);
  return kept;
}

/** Adds cloths to a shortlist; one that is there already stays as it is, marks and all. */
export function keepAlso(kept: readonly KeptCloth[], more: readonly KeptCloth[]): KeptCloth[] {
  const known = new Set(kept.map(({ code }) => code));
  return [...kept, ...more.filter(({ code }) => !known.has(code))];
}
