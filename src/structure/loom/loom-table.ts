import { LOOM_SHAFTS, LOOM_TREADLES } from '../../draft/limits.js';
import { describe, eachOf, type Given, Misread, textOf, wholeOf, wordOf } from '../../input/given.js';
import { type Former, type Kind, nested, optional, table, withDefault } from '../../input/key.js';
import { kind, length, SPACED, whole } from '../../input/kinds.js';
import { orList } from '../../words/counts.js';
import { LOOM_KINDS, type Loom, type LoomKind } from './loom-fit.js';

/** Greatest width of a loom, and of a warp, in metres. */
export const WIDEST = 5;
const LOOM = 'a loom such as “rising, 4 shafts, 6 treadles, 120 heddles a shaft, 32 in wide, 2 shuttles”';
const HEDDLES = 'heddles on each shaft, as 120 or 120 120 120 70';
/** Names of looms that open their shed as a kind does. */
const BY_NAME: Readonly<Record<string, LoomKind>> = { jack: 'rising', counterbalance: 'sinking' };

const loomTable = table(
  {
    kind: withDefault(
      kind(`${orList(LOOM_KINDS)}; jack is rising, counterbalance sinking`, (given): LoomKind => {
        const named = typeof given === 'string' ? BY_NAME[given.trim().toLowerCase()] : undefined;
        return named ?? wordOf(given, LOOM_KINDS);
      }),
      'rising',
      { about: 'how it opens its shed', example: 'countermarch' },
    ),
    shafts: optional(whole('shafts', 1, LOOM_SHAFTS), { about: 'shafts that it has', example: '4' }),
    treadles: optional(whole('treadles', 1, LOOM_TREADLES), {
      about: 'treadles that it has; with fewer than a weave has lifts, two feet are tried',
      example: '6',
    }),
    heddles: optional(
      kind(HEDDLES, (given) => eachOf(given, HEDDLES, (item) => wholeOf(item, HEDDLES, 0, 100_000), SPACED)),
      { about: 'heddles on each shaft, shaft 1 first; one number is for every shaft', example: '120 120 120 70' },
    ),
    width: optional(length(WIDEST, { something: true }), {
      about: 'weaving width, for plan and deal',
      example: '32 in',
    }),
    ends: optional(whole('ends in the warp', 1, 100_000), {
      about: 'ends for which explore and draw count heddles; a plan counts its own',
      example: '400',
      usual: 'one repeat',
    }),
    shuttles: optional(whole('shuttles', 1, 26), { about: 'shuttles at hand', example: '2' }),
  },
  { 'loom width': ['width', '32 in'] },
);

const loomKeys = nested(loomTable, LOOM, partsOfLoom);

/** A loom: keys, or one text such as `rising, 4 shafts, 6 treadles, 32 in`. */
export const LOOM_KIND: Kind<Loom> & { readonly table: typeof loomTable } = {
  ...loomKeys,
  read(given) {
    const { heddles, ...rest } = loomKeys.read(given);
    const each = heddles?.length === 1 ? new Array<number>(rest.shafts ?? LOOM_SHAFTS).fill(heddles[0]!) : heddles;
    return { ...rest, ...(each !== undefined && { heddles: each }) };
  },
};

/** Keys and flags for parts of a loom, which `loom` now holds. */
export const FORMER_LOOM_KEYS: Former = {
  shafts: ['loom', 'rising, 4 shafts'],
  treadles: ['loom', 'rising, 6 treadles'],
  heddles: ['loom', 'rising, 120 heddles'],
  'loom width': ['loom', 'rising, 32 in'],
  shuttles: ['loom', 'rising, 2 shuttles'],
};

/** The keys of a loom from one text: kind, counts with what they count, and the width, in any order. */
function partsOfLoom(text: string): Given {
  const counted = 'shafts?|harness(?:es)?|treadles?|ends|shuttles?';
  const parts = textOf(text, LOOM).split(new RegExp(`\\s*[,;]\\s*|(?<=[a-z])\\s+(?=\\d+ (?:${counted}))`));
  const kinds = [...LOOM_KINDS, ...Object.keys(BY_NAME)];
  return Object.fromEntries(
    parts.map((part) => {
      const count = new RegExp(`^(\\d+) (${counted})$`).exec(part);
      if (count !== null) return [count[2]!.replace(/^harness.*/, 'shaft').replace(/s?$/, 's'), count[1]!];
      const heddles = /^(?:heddles ([\d ]+)|([\d ]+?) heddles(?: (?:a|on each|per) shaft)?)$/.exec(part);
      if (heddles !== null) return ['heddles', heddles[1] ?? heddles[2]!];
      if (kinds.includes(part.toLowerCase())) return ['kind', part];
      const width = /^([\d.]+ ?(?:mm|cm|m|in|"|″|yd))(?: wide)?$/.exec(part);
      if (width !== null) return ['width', width[1]!];
      throw new Misread(`found ${describe(part)}; expected ${LOOM}`);
    }),
  );
}
