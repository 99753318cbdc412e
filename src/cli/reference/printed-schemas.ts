import * as v from 'valibot';
import { FLOAT_SIDES } from '../../cloth/floats.js';
import { storedDraftSchema } from '../../formats/stored-draft.js';
import { manifestSchema } from '../../gallery/manifest/manifest-schema.js';
import { count } from '../../gallery/manifest/question-schema.js';
import { LAID_BY } from '../../order/laid-order.js';

const text = v.string();
const texts = v.array(text);
const numbers = v.array(count);
const headed = <const Name extends string>(name: Name) => ({
  format: v.literal(`shedlight-${name}`),
  version: v.literal(1),
});
const { counts, candidates } = manifestSchema.entries;
const { code, draft, ease, repeat, scores } = candidates.item.entries;
const { floats } = scores.entries;
const float = floats.entries.longest;
const kindsOfPick = ['ground', 'pattern', 'tabby'] as const;

/** A unit of threads or treadles of one block; what `after` holds is for the program alone. */
const unit = v.object({ lay: v.array(v.union([count, text])), companions: v.exactOptional(numbers) });
const structure = {
  name: text,
  aliases: texts,
  about: text,
  shafts: count,
  blocks: texts,
  profile: texts,
  threading: v.object({ blocks: v.record(text, unit) }),
  tieUp: v.record(text, numbers),
  tabby: v.exactOptional(v.tuple([text, text])),
  manners: v.array(
    v.object({
      name: text,
      about: v.exactOptional(text),
      kinds: v.exactOptional(v.array(v.picklist(kindsOfPick))),
      blocks: v.record(text, unit),
    }),
  ),
  widths: v.record(text, v.number()),
  floatLaw: text,
  colour: text,
  scale: text,
  source: text,
  moreBlocks: v.boolean(),
  unit: text,
  balance: text,
};
const found = {
  counts,
  shown: count,
  best: v.nullable(v.object({ code, recipe: text, words: text, score: v.number() })),
  remedy: v.exactOptional(text),
  folder: v.exactOptional(text),
  index: v.exactOptional(text),
  bytes: v.exactOptional(count),
};
const size = v.object({
  way: text,
  by: v.picklist(LAID_BY),
  times: count,
  ends: count,
  picks: count,
  repeat,
  floats,
  holdsTogether: v.boolean(),
  width: v.number(),
  height: v.number(),
  finished: v.number(),
  passes: v.record(text, v.boolean()),
  draft,
});

/** What the commands print with `--json`, where it is not what they write too. */
export const PRINTED: Readonly<Record<string, readonly [title: string, schema: v.GenericSchema]>> = {
  explore: [
    'What explore --json prints: what was found, or the part of a search that is done',
    v.union([
      v.object({ ...headed('explore'), ...found }),
      v.object({ ...headed('explore'), shard: v.object({ part: count, of: count }), file: text }),
    ]),
  ],
  enlarge: [
    'What enlarge --json prints; lengths in millimetres',
    v.object({
      ...headed('enlarge'),
      order: text,
      structure: text,
      sett: storedDraftSchema.entries.sett,
      shrinkage: v.number(),
      limit: v.union([v.object({ threads: v.number() }), v.object({ mm: v.number() })]),
      sizes: v.array(size),
      refused: v.array(v.object({ way: text, why: text })),
      picture: v.exactOptional(text),
    }),
  ],
  draw: [
    'What draw --json prints',
    v.object({
      ...headed('draw'),
      name: text,
      code,
      classic: v.exactOptional(text),
      repeat,
      draft: storedDraftSchema,
      scores,
      ease,
      holdsTogether: v.boolean(),
      longestFloat: v.object({ side: v.picklist(FLOAT_SIDES), strand: count, from: count, length: float }),
      weftFloats: v.record(text, v.object({ face: float, back: float })),
      heddles: numbers,
      lifts: v.array(numbers),
      wrong: texts,
      loom: v.exactOptional(
        v.object({
          treadles: v.array(v.object({ rise: numbers, sink: numbers })),
          treadling: v.array(numbers),
          manner: v.picklist(['one foot', 'two feet', 'lift plan']),
          obstacles: texts,
        }),
      ),
      picture: v.exactOptional(text),
    }),
  ],
  structures: [
    'What structures --json prints',
    v.object({ ...headed('structures'), structures: v.array(v.object(structure)) }),
  ],
  structure: [
    'What structures NAME --json prints',
    v.object({ ...headed('structure'), ...structure, picture: v.exactOptional(text) }),
  ],
  keep: [
    'What keep --json prints',
    v.object({
      ...headed('keep'),
      file: text,
      wif: v.exactOptional(text),
      added: count,
      candidates: v.array(v.object({ code, recipe: text, note: text, stars: count })),
    }),
  ],
};
