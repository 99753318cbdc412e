import * as v from 'valibot';
import { density } from '../../formats/stored-draft.js';
import { FILLS, LAID_BY } from '../../order/laid-order.js';
import { PARTS, type Part } from '../../score/parts/parts.js';
import { PRESET_NAMES } from '../../score/rank/presets.js';
import { SAMENESS } from '../../score/symmetry/canonical-cloth.js';
import { STARTS } from '../../search/question/question.js';
import { EACH_KIND } from '../../search/question/question-table.js';
import { LOOM_KINDS } from '../../structure/loom/loom-fit.js';

const text = v.string();
const texts = v.array(v.string());
/** A number of things: whole, and not below 0. */
export const count = v.pipe(v.number(), v.integer(), v.minValue(0));
const positive = v.pipe(v.number(), v.gtValue(0));
const weight = v.exactOptional(v.pipe(v.number(), v.minValue(0)));
const weights = Object.fromEntries(PARTS.map((part) => [part, weight])) as Record<Part, typeof weight>;

const nameDraft = v.object({
  text,
  drafts: v.union([v.picklist(['usual', 'all']), count], 'usual, all or a number'),
  mirrored: v.picklist(['yes', 'no']),
  letters: v.record(text, v.number()),
});

/**
 * Schema of the question in a gallery: the keys of a question file, with defaults filled in. Keys added since the first
 * version are optional, so that galleries of earlier versions can be read.
 */
export const questionSchema = v.object({
  draft: v.exactOptional(text),
  'on the loom': v.exactOptional(text),
  // The draft itself, as YAML: a page can ask again without its file.
  'draft text': v.exactOptional(text),
  structure: v.exactOptional(texts),
  treadling: v.exactOptional(texts),
  'name draft': v.exactOptional(nameDraft),
  // What galleries of earlier versions call the name draft.
  name: v.exactOptional(nameDraft),
  blocks: v.exactOptional(count),
  profile: v.exactOptional(v.union([text, texts], 'order, search or a list of blocks')),
  treadled: v.exactOptional(v.union([text, texts], 'search or a list of blocks')),
  'profile lengths': v.exactOptional(v.array(count)),
  yarns: v.exactOptional(v.record(text, v.object({ colour: text, name: text, tex: v.exactOptional(positive) }))),
  orders: v.exactOptional(texts),
  lengths: v.exactOptional(v.array(count)),
  warp: v.exactOptional(text),
  weft: v.exactOptional(text),
  tabby: v.exactOptional(text),
  by: v.exactOptional(v.array(v.picklist(LAID_BY))),
  fill: v.exactOptional(v.array(v.picklist(FILLS))),
  times: v.exactOptional(v.array(count)),
  starts: v.exactOptional(v.picklist(STARTS)),
  sett: v.object({ ends: density, picks: density, per: v.picklist(['inch', 'cm']) }),
  limits: v.exactOptional(
    v.object({
      // Threads, or a length such as `9.5 mm`.
      float: v.union(
        [positive, v.pipe(text, v.regex(/^\d+(\.\d+)?(e-\d+)? mm$/, 'a length such as 12.7 mm'))],
        'threads, or a length in mm',
      ),
      repeat: count,
      contrast: v.exactOptional(v.number()),
      'warp changes': v.exactOptional(count),
      'weft changes': v.exactOptional(count),
      shuttles: v.exactOptional(count),
      treadles: v.exactOptional(count),
      shafts: v.exactOptional(count),
    }),
  ),
  loom: v.exactOptional(
    v.object({
      kind: v.picklist(LOOM_KINDS),
      shafts: v.exactOptional(count),
      treadles: v.exactOptional(count),
      heddles: v.exactOptional(v.array(count)),
      ends: v.exactOptional(count),
      shuttles: v.exactOptional(count),
      // A length such as `812.8 mm`; a number in galleries of earlier versions.
      width: v.exactOptional(v.union([text, positive], 'a length in words, or millimetres')),
    }),
  ),
  done: v.exactOptional(texts),
  'unlike done': v.exactOptional(v.number()),
  rank: v.exactOptional(
    v.union([v.picklist(PRESET_NAMES), v.strictObject(weights)], 'a ready-made ranking or weights'),
  ),
  same: v.exactOptional(v.union([v.literal('shift'), v.array(v.picklist(SAMENESS))], 'shift or a list of operations')),
  show: v.exactOptional(v.union([count, v.literal(EACH_KIND)], `a number or ${EACH_KIND}`)),
  // Absent in galleries of earlier versions, which were drawn from the top left.
  seen: v.exactOptional(
    v.pipe(text, v.regex(/^(top|bottom), (left|right), (above|below)$/, 'places such as bottom, left, above')),
  ),
  seed: v.exactOptional(text),
  tries: v.exactOptional(count),
});
