import * as v from 'valibot';
import type { DeepReadonly } from '../../formats/deep-readonly.js';
import { laidOrderSchema } from '../../formats/laid-order-schema.js';
import { storedDraftSchema } from '../../formats/stored-draft.js';
import { OPERATIONS, PLANE_GROUPS } from '../../score/model/figures.js';
import { ofEachLook } from '../../score/parts/look-figures.js';
import { count, questionSchema } from './question-schema.js';

/** Value of the key `format` in gallery.json. */
export const GALLERY_FORMAT = 'shedlight-gallery';

const float = v.nullable(v.number());
/** Letters and digits only, so that a code can never lead out of the gallery's folder. */
const code = v.pipe(v.string(), v.regex(/^[0-9a-z]{1,64}$/, 'a code of small letters and digits'));

/** A stored draft without yarns and sett, which the gallery stores once for all cloths. */
const draftSchema = v.omit(storedDraftSchema, ['yarns', 'sett']);

const scoresSchema = v.object({
  score: v.number(),
  contrast: v.number(),
  tone: v.number(),
  line: v.number(),
  figure: v.number(),
  symmetry: v.number(),
  operations: v.array(v.object({ op: v.picklist(OPERATIONS), counterchange: v.boolean() })),
  shiftExchange: v.boolean(),
  planeGroup: v.picklist(PLANE_GROUPS),
  colourGroup: v.nullable(v.string()),
  novelty: v.exactOptional(v.number()),
  nearest: v.exactOptional(v.string()),
  nearly: v.exactOptional(v.object({ op: v.picklist(OPERATIONS), agreement: v.number() })),
  floats: v.object({
    warpFace: float,
    warpBack: float,
    weftFace: float,
    weftBack: float,
    longest: float,
    longestMm: float,
  }),
  darkShare: v.number(),
  // Galleries of earlier versions lack these figures.
  ...ofEachLook(() => v.optional(v.number(), 0)),
  reads: v.object({ '0.6': v.number(), '2': v.number(), '6': v.number() }),
  easyTo: v.number(),
  goneBy: v.number(),
});

const candidateSchema = v.object({
  rank: v.pipe(v.number(), v.integer(), v.minValue(1)),
  code,
  recipe: v.string(),
  // Galleries of earlier versions lack this.
  shortRecipe: v.optional(v.string(), ''),
  why: v.optional(v.string(), ''),
  structure: v.string(),
  redraw: v.array(v.tuple([v.string(), v.string()])),
  draft: draftSchema,
  repeat: v.object({ ends: count, picks: count }),
  order: laidOrderSchema,
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

/** The schema through which every gallery.json is written and read; it gives the order of the keys. */
export const manifestSchema = v.object({
  format: v.literal(GALLERY_FORMAT),
  version: v.literal(1),
  question: questionSchema,
  palette: v.pipe(
    v.array(
      v.object({
        letter: v.pipe(v.string(), v.regex(/^[A-Z]$/, 'a capital letter')),
        name: v.string(),
        hex: v.pipe(v.string(), v.regex(/^#[0-9a-f]{6}$/, 'a colour such as #1f2a44')),
        tex: v.exactOptional(v.pipe(v.number(), v.gtValue(0))),
      }),
    ),
    v.minLength(1),
  ),
  counts: v.object({
    written: v.number(),
    examined: count,
    cloths: count,
    equals: count,
    setAside: v.object({ float: count, unsound: count, flat: count, limits: count, done: v.exactOptional(count) }),
    cutOff: count,
    exhaustive: v.boolean(),
    stopped: v.exactOptional(v.literal(true)),
    evolved: v.exactOptional(v.object({ rounds: count, niches: count, settled: v.boolean() })),
  }),
  candidates: v.array(candidateSchema),
});

/** The input type of a gallery, for writing. */
export type ManifestWritten = DeepReadonly<v.InferInput<typeof manifestSchema>>;
/** A gallery as read from its file. */
export type Manifest = v.InferOutput<typeof manifestSchema>;
/** One cloth of a gallery. */
export type ManifestCandidate = Manifest['candidates'][number];
/** The input type of one cloth, for writing. */
export type CandidateWritten = ManifestWritten['candidates'][number];
