import * as v from 'valibot';
import type { DeepReadonly } from './deep-readonly.js';
import { keptEntries } from './shortlist.js';
import { storedDraftSchema } from './stored-draft.js';

/** Value of the key `format` in plan.json. */
export const PLAN_FORMAT = 'shedlight-plan';

const text = v.string();
const texts = v.array(text);
const count = v.pipe(v.number(), v.integer(), v.minValue(0));
const counts = v.array(count);
/** Millimetres or grams; not below 0. */
const amount = v.pipe(v.number(), v.minValue(0));
const per = v.picklist(['inch', 'cm']);
const side = v.picklist(['left', 'right']);
const hex = v.pipe(text, v.regex(/^#[0-9a-f]{6}$/));
const float = v.nullable(count);

const weighed = v.union([v.object({ grams: amount }), v.object({ mm: amount })]);
const toBuySchema = v.object({
  inHand: v.exactOptional(weighed),
  missing: v.object({ length: amount, grams: v.nullable(amount) }),
  putUps: v.exactOptional(v.object({ count, each: weighed })),
});

const orderedYarnSchema = v.object({
  letter: text,
  use: v.exactOptional(text),
  name: text,
  hex,
  warps: count,
  length: amount,
  warp: amount,
  weft: amount,
  grams: v.nullable(amount),
  toBuy: toBuySchema,
});

const section = v.object({ number: count, order: text, from: count, threads: count });
const gampSchema = v.object({
  warps: v.array(section),
  wefts: v.array(section),
  squares: v.array(v.object({ number: count, warp: count, weft: count, cloth: count, code: text, recipe: text })),
  choice: v.object({ warps: counts, wefts: counts, cloths: count, atMost: v.number(), exact: v.boolean() }),
});

const dentingSchema = v.object({
  reed: v.number(),
  named: text,
  dents: counts,
  meets: count,
  inStep: v.boolean(),
});
const run = { yarn: text, ends: count };
const windingSchema = v.object({
  ways: v.array(v.object({ way: text, knots: count, passes: count, chains: count })),
  chains: v.array(v.object({ ...run, rounds: count, oneMore: v.boolean(), tieEvery: count, ties: counts })),
  parts: v.array(v.object({ what: text, times: count, runs: v.array(v.object(run)) })),
  ties: counts,
  tieEvery: count,
  even: v.boolean(),
});
const groups = v.array(v.object({ from: count, to: count, ends: texts, times: count }));
const edge = v.object({ turns: count, caught: count });
const found = { value: v.number(), codes: texts };
const finding = v.exactOptional(v.object(found));

const pieceSchema = v.object({
  ...keptEntries,
  draft: storedDraftSchema,
  number: count,
  pieces: count,
  learnt: v.object({
    drawIn: finding,
    takeUp: finding,
    shrinkage: finding,
    // Plans of earlier versions have picks to the millimetre alone.
    picks: v.exactOptional(v.object({ ...found, ofPlanned: v.exactOptional(v.boolean()) })),
    last: v.exactOptional(text),
  }),
  shrinkage: v.number(),
  // Plans of earlier versions have one width on the loom for all pieces of a warp.
  inReed: v.exactOptional(amount),
  widthOnLoom: v.exactOptional(amount),
  woven: amount,
  picks: count,
  shuttles: v.array(v.object({ name: text, yarn: count, kind: text, picks: count, side, weft: amount })),
  starts: v.object({
    sides: v.array(side),
    caught: v.object({ left: edge, right: edge }),
    allCaught: v.boolean(),
  }),
  carry: v.object({ picks: count, mm: amount }),
  floats: v.object({
    warpFace: float,
    warpBack: float,
    weftFace: float,
    weftBack: float,
    longest: float,
    longestMm: v.nullable(amount),
  }),
  settAdvice: v.exactOptional(
    v.object({
      diameters: v.number(),
      ends: v.number(),
      intersections: v.number(),
      closest: v.number(),
      share: v.number(),
      advised: v.number(),
    }),
  ),
  tied: v.object({
    treadles: v.array(v.object({ rise: counts, sink: counts })),
    treadling: v.array(counts),
    manner: text,
    lifts: v.array(counts),
  }),
  cautions: texts,
  said: v.record(text, text),
  pickList: v.object({
    tabby: v.exactOptional(v.object({ shuttle: text, start: side, steps: text })),
    lines: v.array(
      v.object({ from: count, to: count, shuttle: text, start: side, rests: side, steps: text, carry: count }),
    ),
  }),
  throws: v.array(
    v.object({ pick: count, shuttle: text, from: side, to: side, carry: count, treadles: counts, lift: counts }),
  ),
});

const warpSchema = v.object({
  number: count,
  onTheLoom: v.exactOptional(v.literal(true)),
  per,
  repeat: count,
  repeats: count,
  balance: count,
  border: count,
  wanted: count,
  fillings: v.array(v.object({ repeats: count, border: v.exactOptional(count), ends: count, over: v.number() })),
  floating: v.object({ ends: count, letter: text }),
  wound: v.array(v.object({ letter: text, ends: count })),
  heddles: counts,
  denting: dentingSchema,
  dents: v.number(),
  widthInReed: amount,
  widthOnLoom: amount,
  reeds: v.array(dentingSchema),
  length: v.object({
    finished: amount,
    offLoom: amount,
    used: amount,
    total: amount,
    wind: amount,
    lines: v.array(v.object({ what: text, how: text, mm: amount })),
  }),
  winding: windingSchema,
  yarn: v.array(
    v.object({
      letter: text,
      use: v.exactOptional(text),
      tex: v.nullable(amount),
      warp: amount,
      weft: amount,
      total: amount,
      grams: v.nullable(amount),
      withReserve: amount,
      gramsWithReserve: v.nullable(amount),
    }),
  ),
  faults: texts,
  cautions: texts,
  yarns: v.array(v.object({ letter: text, name: text, hex, tex: v.exactOptional(amount) })),
  threading: text,
  threadingList: groups,
  threadingParts: v.array(v.object({ what: text, times: count, ends: count, lines: groups })),
  pieces: v.pipe(v.array(pieceSchema), v.minLength(1)),
});

/** Schema of plan.json: every figure of the sheets. Lengths are in millimetres, weights in grams. */
export const planSchema = v.object({
  format: v.literal(PLAN_FORMAT),
  version: v.literal(1),
  yarn: v.array(orderedYarnSchema),
  gamp: v.exactOptional(gampSchema),
  warps: v.array(warpSchema),
});

const dealt = { code: text, recipe: text };
/** Schema of deal.json: who weaves what, and how far the cloths are apart, from 0 to 1. */
export const dealSchema = v.object({
  format: v.literal('shedlight-deal'),
  version: v.literal(1),
  shares: v.array(v.object({ sheet: count, weaver: text, ...dealt, apart: v.number() })),
  spares: v.array(v.object({ ...dealt, apart: v.number(), weavers: texts })),
  least: v.number(),
  atMost: v.number(),
  alike: v.array(v.object({ weavers: v.tuple([text, text]), apart: v.number() })),
  refused: v.array(v.object({ weaver: text, code: text, why: texts })),
});

/** A plan, and a deal, as they are written. */
export type PlanWritten = DeepReadonly<v.InferInput<typeof planSchema>>;
export type DealWritten = DeepReadonly<v.InferInput<typeof dealSchema>>;
