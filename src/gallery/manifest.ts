import * as v from 'valibot';
import type { Widths } from '../draft/draft.js';
import { formatOrder } from '../order/order.js';
import { Problem } from '../problem.js';
import { OPERATIONS } from '../score/figures.js';
import type { Found, Outcome } from '../search/found.js';
import type { Question } from '../search/question.js';
import { resolvedQuestion } from '../search/read-question.js';

export { draftOf } from './manifest-draft.js';

/** The name by which a gallery's own file is known. */
export const GALLERY_FORMAT = 'shedlight-gallery';

/** No loom has as many shafts, and no draft as many treadles; larger numbers are damage. */
const MOST_SHAFTS = 1024;
/** No repeat is longer; guards what is built from a file. */
const MOST_THREADS = 65_536;

const count = v.pipe(v.number(), v.integer(), v.minValue(0));
const place = v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(MOST_SHAFTS));
const places = v.pipe(v.array(place), v.maxLength(MOST_SHAFTS));
const threads = v.pipe(v.array(v.union([place, places])), v.minLength(1), v.maxLength(MOST_THREADS));
const letters = v.pipe(v.string(), v.minLength(1), v.maxLength(MOST_THREADS));
const units = v.pipe(v.array(v.pipe(v.number(), v.integer(), v.minValue(1))), v.maxLength(MOST_THREADS));
const kinds = v.picklist(['ground', 'pattern', 'tabby']);
const float = v.nullable(v.number());
/** Letters and digits only, so that a code can never lead out of the gallery's folder. */
const code = v.pipe(v.string(), v.regex(/^[0-9a-z]{1,64}$/));

const draftSchema = v.object({
  threading: threads,
  tieUp: v.pipe(v.array(places), v.maxLength(MOST_THREADS)),
  treadling: threads,
  pickKinds: v.array(kinds),
  warp: letters,
  weft: letters,
  endUnits: v.optional(units),
  pickUnits: v.optional(units),
  widths: v.optional(v.object({ warp: v.number(), ground: v.number(), pattern: v.number(), tabby: v.number() })),
});

const scoresSchema = v.object({
  score: v.number(),
  contrast: v.number(),
  tone: v.number(),
  line: v.number(),
  figure: v.number(),
  symmetry: v.number(),
  operations: v.array(v.object({ op: v.picklist(OPERATIONS), counterchange: v.boolean() })),
  shiftExchange: v.boolean(),
  planeGroup: v.string(),
  colourGroup: v.nullable(v.string()),
  nearly: v.optional(v.object({ op: v.picklist(OPERATIONS), agreement: v.number() })),
  floats: v.object({
    warpFace: float,
    warpBack: float,
    weftFace: float,
    weftBack: float,
    longest: float,
    longestMm: float,
  }),
  darkShare: v.number(),
  reads: v.object({ '0.6': v.number(), '2': v.number(), '6': v.number() }),
  easyTo: v.number(),
  goneBy: v.number(),
});

const candidateSchema = v.object({
  rank: v.pipe(v.number(), v.integer(), v.minValue(1)),
  code,
  recipe: v.string(),
  structure: v.string(),
  redraw: v.array(v.tuple([v.string(), v.string()])),
  draft: draftSchema,
  repeat: v.object({ ends: count, picks: count }),
  order: v.object({
    warp: v.string(),
    weft: v.string(),
    by: v.picklist(['thread', 'unit', 'block']),
    fill: v.picklist(['solid', 'alternate', 'nest']),
    times: count,
    start: v.tuple([count, count]),
  }),
  scores: scoresSchema,
  ease: v.object({
    warpChanges: count,
    ends: v.record(v.string(), count),
    winding: v.array(v.object({ way: v.string(), knots: count })),
    shuttles: count,
    weftChanges: count,
    longestCarry: count,
    sameSide: v.boolean(),
  }),
  equals: count,
  nearTwin: v.nullable(code),
  swatch: v.string(),
});

/** Every gallery.json is written and read through this; keys come in this order. */
const manifestSchema = v.object({
  format: v.literal(GALLERY_FORMAT),
  version: v.literal(1),
  question: v.looseObject({
    sett: v.object({
      ends: v.pipe(v.number(), v.gtValue(0)),
      picks: v.pipe(v.number(), v.gtValue(0)),
      per: v.picklist(['inch', 'cm']),
    }),
  }),
  palette: v.pipe(
    v.array(
      v.object({
        letter: v.pipe(v.string(), v.regex(/^[A-Z]$/)),
        name: v.string(),
        hex: v.pipe(v.string(), v.regex(/^#[0-9a-f]{6}$/)),
        tex: v.optional(v.pipe(v.number(), v.gtValue(0))),
      }),
    ),
    v.minLength(1),
  ),
  counts: v.object({
    written: v.number(),
    examined: count,
    cloths: count,
    equals: count,
    setAside: v.object({ float: count, unsound: count, flat: count, limits: count }),
    cutOff: count,
    exhaustive: v.boolean(),
    stopped: v.optional(v.literal(true)),
  }),
  candidates: v.array(candidateSchema),
});

/** A gallery as a program reads it back. */
export type Manifest = v.InferOutput<typeof manifestSchema>;
/** One cloth of a gallery. */
export type ManifestCandidate = Manifest['candidates'][number];

/** Where the picture of a cloth stands in its gallery. */
export function swatchPath(code: string): string {
  return `swatches/${code}.png`;
}

/** What is written of a search, checked as strictly as what is read. */
export function manifestOf(question: Question, outcome: Outcome): Manifest {
  return checked(
    {
      format: GALLERY_FORMAT,
      version: 1,
      question: resolvedQuestion(question),
      palette: question.yarns,
      counts: outcome.counts,
      candidates: outcome.found.map(candidateOf),
    },
    'gallery.json',
  );
}

/** The text of a gallery.json: one cloth a line, so that two galleries can be compared line by line. */
export function manifestText(manifest: Manifest): string {
  const { candidates, ...head } = manifest;
  const lines = Object.entries(head).map(([key, value]) => `${JSON.stringify(key)}: ${JSON.stringify(value)},\n`);
  return `{\n${lines.join('')}"candidates": [\n${candidates.map((each) => JSON.stringify(each)).join(',\n')}\n]\n}\n`;
}

/** Reads a gallery.json. Refuses what is no gallery, or a damaged one, with the place in `file`. */
export function parseManifest(text: string, file: string): Manifest {
  let given: unknown;
  try {
    given = JSON.parse(text);
  } catch {
    throw new Problem(`${file}: found text that is not whole JSON; expected a gallery.json as shedlight writes it`);
  }
  const head = v.safeParse(v.object({ format: v.literal(GALLERY_FORMAT), version: v.unknown() }), given);
  if (!head.success) throw new Problem(`${file}: found another kind of file; expected format "${GALLERY_FORMAT}"`);
  if (head.output.version !== 1) {
    const version = JSON.stringify(head.output.version).slice(0, 20);
    throw new Problem(
      `${file}: found version ${version} of a gallery; expected version 1 (is shedlight older than it?)`,
    );
  }
  return checked(given, file);
}

function candidateOf(found: Found): v.InferInput<typeof candidateSchema> {
  const { draft, order } = found;
  return {
    ...found,
    draft: {
      threading: draft.threading.map(plain),
      tieUp: draft.tieUp.map((shafts) => [...shafts]),
      treadling: draft.treadling.map(plain),
      pickKinds: [...draft.pickKinds],
      warp: formatOrder(draft.warp, draft.yarns),
      weft: formatOrder(draft.weft, draft.yarns),
      ...(isLong(draft.endUnits) && { endUnits: [...draft.endUnits] }),
      ...(isLong(draft.pickUnits) && { pickUnits: [...draft.pickUnits] }),
      ...(isUneven(draft.widths) && { widths: draft.widths }),
    },
    repeat: { ends: draft.warp.length, picks: draft.weft.length },
    redraw: found.redraw.map(([flag, value]): [string, string] => [flag, value]),
    order: { ...order, start: [...order.start] },
    scores: { ...found.scores, operations: [...found.scores.operations] } as v.InferInput<typeof scoresSchema>,
    ease: { ...found.ease, winding: [...found.ease.winding] },
    swatch: swatchPath(found.code),
  };
}

/** One shaft (treadle) as a plain number. */
function plain(on: readonly number[]): number | number[] {
  return on.length === 1 ? on[0]! : [...on];
}

function isLong(lengths: readonly number[]): boolean {
  return lengths.some((length) => length !== 1);
}

function isUneven(widths: Widths): boolean {
  return widths.warp !== 1 || widths.ground !== 1 || widths.pattern !== 1 || widths.tabby !== 1;
}

function checked(given: unknown, file: string): Manifest {
  const result = v.safeParse(manifestSchema, given);
  if (!result.success) {
    const [issue] = result.issues;
    const expected = issue.expected === null ? issue.message : issue.expected;
    throw new Problem(`${file}: ${v.getDotPath(issue) ?? 'at the top'}: found ${issue.received}, expected ${expected}`);
  }
  const manifest = result.output;
  const known = new Set(manifest.palette.map((yarn) => yarn.letter));
  const twice = manifest.palette.find(
    ({ letter }, at) => manifest.palette.findIndex((each) => each.letter === letter) < at,
  );
  if (twice) throw new Problem(`${file}: palette: found the letter ${twice.letter} twice, expected one yarn a letter`);
  manifest.candidates.forEach((candidate, at) => {
    const fault = disagreement(candidate, known);
    if (fault !== undefined) throw new Problem(`${file}: candidates.${at}.${fault}`);
  });
  return manifest;
}

/** Where the parts of one cloth do not fit together, with what was found and what was expected. */
function disagreement(candidate: ManifestCandidate, known: ReadonlySet<string>): string | undefined {
  const { draft, repeat, swatch } = candidate;
  const sum = (lengths: readonly number[]) => lengths.reduce((total, length) => total + length, 0);
  const lengths: readonly (readonly [string, number, number])[] = [
    ['draft.threading', draft.threading.length, repeat.ends],
    ['draft.warp', draft.warp.length, repeat.ends],
    ['draft.treadling', draft.treadling.length, repeat.picks],
    ['draft.pickKinds', draft.pickKinds.length, repeat.picks],
    ['draft.weft', draft.weft.length, repeat.picks],
    ['draft.endUnits', draft.endUnits ? sum(draft.endUnits) : repeat.ends, repeat.ends],
    ['draft.pickUnits', draft.pickUnits ? sum(draft.pickUnits) : repeat.picks, repeat.picks],
  ];
  for (const [where, found, expected] of lengths) {
    if (found !== expected) return `${where}: found ${found} threads, expected the repeat’s ${expected}`;
  }
  for (const where of ['warp', 'weft'] as const) {
    const stranger = Array.from(draft[where]).find((letter) => !known.has(letter));
    if (stranger !== undefined) {
      return `draft.${where}: found “${stranger}”, expected letters of the palette (${[...known].join(' ')})`;
    }
  }
  const treadle = draft.treadling.flat().reduce((most, each) => Math.max(most, each), 0);
  if (treadle > draft.tieUp.length) {
    return `draft.treadling: found treadle ${treadle}, expected at most ${draft.tieUp.length}, the treadles tied up`;
  }
  if (swatch !== swatchPath(candidate.code))
    return `swatch: found “${swatch}”, expected “${swatchPath(candidate.code)}”`;
  return undefined;
}
