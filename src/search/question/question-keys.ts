import * as v from 'valibot';
import { settSchema, yarnsSchema } from '../../draft/yaml/yarns-given.js';
import {
  describe,
  eachOf,
  type Given,
  keys,
  Misread,
  numberOf,
  readAs,
  reading,
  textOf,
  wholeOf,
  wordOf,
} from '../../input/given.js';
import { FILLS, LAID_BY } from '../../order/laid-order.js';
import type { FloatLimit } from '../../score/rank/rank.js';
import { SAMENESS, type Sameness } from '../../score/symmetry/canonical-cloth.js';
import { LOOM_KINDS, type Loom } from '../../structure/loom/loom-fit.js';
import { orList } from '../../words/counts.js';
import { type Limits, STARTS } from './question.js';
import { nameOf } from './read-name.js';
import { rankOf } from './read-rank.js';

/** Longest order that is listed or searched, in elements. */
const LONGEST = 64;
const LENGTHS = `lengths from 1 to ${LONGEST}, as 5, 2-6 or 2,3,5`;
const FLOAT = 'a float such as 7 (threads), 1/2 in or 10 mm';
const HEDDLES = 'heddles on each shaft, as 120 120 120 70';
const LOOM = 'a loom such as “rising, 4 shafts, 6 treadles, heddles 120 120 120 70, 400 ends, 2 shuttles”';
const DONE = 'files of what was done: results, shortlists, galleries';
const MOST_SHOWN = 1000;
export const EACH_KIND = 'one of each kind' as const;
const SPACED = /[\s,;]+/;

/** Millimetres in the units in which a float limit may be given. */
const MILLIMETRES: Readonly<Record<string, number>> = { mm: 1, cm: 10, in: 25.4, inch: 25.4, inches: 25.4 };

const words = <W extends string>(known: readonly W[]) =>
  reading((given) => [...new Set(eachOf(given, orList(known), (word) => wordOf(word, known), SPACED))]);

const count = (what: string, most: number) => reading((given) => wholeOf(given, `${what}, from 1 to ${most}`, 1, most));

const limitKeys = keys({
  float: v.optional(reading(floatOf), '7'),
  repeat: v.optional(count('ends or picks in one repeat', 2000), '400'),
  'warp changes': v.optional(reading((given) => wholeOf(given, 'changes from 0 to 2000', 0, 2000))),
  'weft changes': v.optional(reading((given) => wholeOf(given, 'changes from 0 to 2000', 0, 2000))),
  shuttles: v.optional(count('shuttles', 26)),
  treadles: v.optional(count('treadles', 128)),
  shafts: v.optional(count('shafts', 64)),
});

const loomKeys = keys({
  kind: v.optional(
    reading((given) => wordOf(given, LOOM_KINDS)),
    'rising',
  ),
  shafts: v.optional(count('shafts', 64)),
  treadles: v.optional(count('treadles', 128)),
  heddles: v.optional(reading((given) => eachOf(given, HEDDLES, (item) => wholeOf(item, HEDDLES, 0, 100_000), SPACED))),
  ends: v.optional(count('ends in the warp', 100_000)),
  shuttles: v.optional(count('shuttles', 26)),
});

/** Schema of all keys of a question. Values that depend on the palette or the structure stay text. */
export const questionKeys = keys({
  structure: v.optional(reading((given) => given)),
  draft: v.optional(reading((given) => textOf(given, 'the file of a draft'))),
  'on the loom': v.optional(reading((given) => textOf(given, 'the file of a draft'))),
  treadling: v.optional(reading((given) => eachOf(given, 'a manner of treadling', (item) => textOf(item, 'a name')))),
  profile: v.optional(reading((given) => joined(given, 'blocks such as A A B, or order'))),
  treadled: v.optional(reading((given) => joined(given, 'blocks such as A A B, or as drawn in'))),
  name: v.optional(reading(nameOf)),
  yarns: v.optional(yarnsSchema),
  lengths: v.optional(reading(lengthsOf)),
  orders: v.optional(
    reading((given) => eachOf(given, 'orders such as D L D D L, D L', (item) => textOf(item, 'an order'))),
  ),
  warp: v.optional(reading((given) => textOf(given, 'a letter or an order'))),
  weft: v.optional(reading((given) => textOf(given, 'same, exchange, own, a letter or an order'))),
  tabby: v.optional(reading((given) => textOf(given, 'the letter of a yarn'))),
  by: v.optional(words(LAID_BY), 'thread'),
  fill: v.optional(words(FILLS), 'solid'),
  times: v.optional(reading(timesOf), '1'),
  starts: v.optional(reading((given) => wordOf(given, STARTS))),
  sett: v.optional(settSchema),
  limits: v.optional(reading(limitsOf), {}),
  loom: v.optional(reading(loomOf)),
  done: v.optional(reading((given) => [...new Set(eachOf(given, DONE, (item) => textOf(item, DONE)))])),
  'unlike done': v.optional(reading(unlikeOf)),
  rank: v.optional(reading(rankOf)),
  same: v.optional(reading(samenessOf), ['mirror', 'half-turn', 'exchange']),
  show: v.optional(reading(showOf), '60'),
  seed: v.optional(
    reading((given) => textOf(given, 'any word')),
    'shedlight',
  ),
  tries: v.optional(
    reading((given) => wholeOf(given, 'how often, from 1 to 1000', 1, 1000)),
    '1',
  ),
});

/** A question after the check of each key by itself. */
export type Written = v.InferOutput<typeof questionKeys>;

function lengthsOf(given: Given): number[] {
  const ranges = eachOf(
    given,
    LENGTHS,
    (item) => {
      const text = textOf(item, LENGTHS);
      const found = /^(\d{1,4})(?:\s*-\s*(\d{1,4}))?$/.exec(text);
      const from = Number(found?.[1]);
      const to = Number(found?.[2] ?? found?.[1]);
      if (!(from >= 1 && to >= from && to <= LONGEST))
        throw new Misread(`found ${describe(text)}; expected ${LENGTHS}`);
      return Array.from({ length: to - from + 1 }, (_, n) => from + n);
    },
    /[,;]|(?<=\d)\s+(?=\d)/,
  );
  return [...new Set(ranges.flat())].sort((a, b) => a - b);
}

function timesOf(given: Given): number[] {
  const expected = 'factors from 1 to 100, as 1, 2, 4';
  return [...new Set(eachOf(given, expected, (item) => wholeOf(item, expected, 1, 100), SPACED))];
}

/** Reads a float limit: `7` (threads), `1/2 in`, `1 1/2 in`, `0.5 in`, `10 mm`. */
function floatOf(given: Given): FloatLimit {
  const text = textOf(given, FLOAT);
  if (/^\d+$/.test(text)) return { threads: wholeOf(text, FLOAT, 1, 2000) };
  const found = /^(?:(\d{1,4}(?:\.\d+)?)|(?:(\d{1,4})\s+)?(\d{1,4})\/(\d{1,4}))\s*(mm|cm|in|inch|inches)$/.exec(text);
  if (found === null) throw new Misread(`found ${describe(text)}; expected ${FLOAT}`);
  const [, decimal, whole = '0', above, below, unit] = found;
  const mm =
    (decimal === undefined ? Number(whole) + Number(above) / Number(below) : Number(decimal)) * MILLIMETRES[unit!]!;
  if (!(mm > 0 && mm <= 10_000)) throw new Misread(`found ${describe(text)}; expected ${FLOAT}`);
  return { mm };
}

function limitsOf(given: Given): Limits {
  const { float, repeat, 'warp changes': warpChanges, 'weft changes': weftChanges, ...rest } = readAs(limitKeys, given);
  const other = { warpChanges, weftChanges, ...rest };
  const kept = Object.fromEntries(Object.entries(other).filter(([, limit]) => limit !== undefined));
  return { float, repeat, ...kept };
}

function unlikeOf(given: Given): number {
  const expected = 'how unlike what was done, above 0 and below 1, such as 0.35';
  const least = numberOf(given, expected, 0, 1);
  if (least === 0 || least === 1) throw new Misread(`found ${describe(given)}; expected ${expected}`);
  return least;
}

/** Reads how many cloths to show, or `one of each kind`. */
function showOf(given: Given): { most: number; oneOfEachKind: boolean } {
  if (typeof given === 'string' && given.trim().toLowerCase() === EACH_KIND) {
    return { most: MOST_SHOWN, oneOfEachKind: true };
  }
  const expected = `cloths, from 1 to ${MOST_SHOWN}, or ${EACH_KIND}`;
  return { most: wholeOf(given, expected, 1, MOST_SHOWN), oneOfEachKind: false };
}

function samenessOf(given: Given): Sameness[] {
  const known = [...SAMENESS, 'shift'] as const;
  const all = [...new Set(eachOf(given, orList(known), (word) => wordOf(word, known), SPACED))];
  if (all.includes('shift') && all.length > 1) {
    throw new Misread('found “shift” beside others; expected it alone, for nothing but shifts');
  }
  return all.filter((word) => word !== 'shift');
}

/** A text, or the items of a list with spaces between them. */
function joined(given: Given, expected: string): string {
  if (typeof given === 'string') return textOf(given, expected);
  return eachOf(given, expected, (item) => textOf(item, expected)).join(' ');
}

function loomOf(given: Given): Loom {
  const { kind, ...rest } = readAs(loomKeys, typeof given === 'string' ? loomOfText(given) : given);
  return { kind, ...Object.fromEntries(Object.entries(rest).filter(([, value]) => value !== undefined)) };
}

/** Reads the keys of a loom from one text: `sinking, 4 shafts, heddles 120 120 120 70`. */
function loomOfText(text: string): Given {
  const parts = textOf(text, LOOM).split(/\s*,\s*/);
  return Object.fromEntries(
    parts.map((part) => {
      const found = /^(?:(\d+) (shafts|treadles|ends|shuttles?)|(heddles) ([\d ]+)|([a-z]+))$/.exec(part);
      if (found === null) throw new Misread(`found ${describe(part)}; expected ${LOOM}`);
      const [, number, what, heddles, each, kind] = found;
      if (kind !== undefined) return ['kind', kind];
      return heddles === undefined ? [what === 'shuttle' ? 'shuttles' : what!, number!] : [heddles, each!];
    }),
  );
}
