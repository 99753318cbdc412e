import { LOOM_SHAFTS, LOOM_TREADLES } from '../../draft/limits.js';
import { SEEN } from '../../draft/point-of-view.js';
import { SETT, YARNS } from '../../draft/yaml/yarns-given.js';
import { describe, eachOf, type Given, Misread, numberOf, textOf, wholeOf, wordOf } from '../../input/given.js';
import { choicesInWords, type KeyValues, namedParts, nested, optional, table, withDefault } from '../../input/key.js';
import { kind, number, SPACED, text, whole, word, words } from '../../input/kinds.js';
import { type By, FILLS, type Fill, LAID_BY } from '../../order/laid-order.js';
import { FLOAT_LIMIT } from '../../score/model/float-limit.js';
import { DEFAULT_RANK } from '../../score/parts/parts.js';
import { PRESET_NAMES, PRESETS } from '../../score/rank/presets.js';
import { weightsInWords } from '../../score/rank/why.js';
import { SAMENESS, type Sameness } from '../../score/symmetry/canonical-cloth.js';
import { LOOM_KIND } from '../../structure/loom/loom-table.js';
import { MOST_BLOCKS } from '../../structure/model/sized.js';
import { orList } from '../../words/counts.js';
import { type Limits, type Question, STARTS } from './question.js';
import { NAME_DRAFT } from './read-name.js';
import { RANK, rankOf } from './read-rank.js';

/** Longest order that is listed or searched, in elements. */
const LONGEST = 64;
export const MOST_SHOWN = 1000;
export const EACH_KIND = 'one of each kind' as const;
const LIMITS = 'limits such as float 1/2 in, repeat 200, warp changes 40';
const DONE = 'files of what was done: results, shortlists, galleries';

const changes = whole('changes', 0, 2000);
const limitTable = table({
  float: withDefault(FLOAT_LIMIT, '7', { about: 'longest float', example: '1/2 in', usual: '7 threads' }),
  repeat: withDefault(whole('ends or picks', 1, 2000), '400', { about: 'ends or picks in one repeat', example: '200' }),
  contrast: optional(number('of contrast', 0, 1), {
    about: 'least contrast; 0 lets fine textures in',
    usual: '0.05, and 0 for orders that are given or a ranking without contrast',
    example: '0',
  }),
  'warp changes': optional(changes, { about: 'colour changes in a repeat of the warp', example: '40' }),
  'weft changes': optional(changes, { about: 'colour changes in a repeat of the weft', example: '40' }),
  shuttles: optional(whole('shuttles', 1, 26), { about: 'shuttles at work', example: '2' }),
  treadles: optional(whole('treadles', 1, LOOM_TREADLES), {
    about: 'lifts, each on a treadle of its own',
    example: '6',
  }),
  shafts: optional(whole('shafts', 1, LOOM_SHAFTS), { about: 'shafts', example: '4' }),
});
const limitKeys = nested(limitTable, LIMITS, (given) => namedParts(given, limitTable, LIMITS));
const LIMIT_KIND = {
  ...limitKeys,
  read(given: Given): Limits {
    const { 'warp changes': warpChanges, 'weft changes': weftChanges, ...rest } = limitKeys.read(given);
    return {
      ...rest,
      ...(warpChanges !== undefined && { warpChanges }),
      ...(weftChanges !== undefined && { weftChanges }),
    };
  },
};

/** What the words of some keys mean. */
const WEFT_CHOICES = {
  same: 'as the warp',
  exchange: 'as the warp, colours swapped',
  own: 'every order of its own',
} as const;
export const BY_CHOICES: Readonly<Record<By, string>> = {
  thread: 'one end or pick',
  unit: 'one unit of the weave',
  block: 'one unit, whose block it also chooses; with a profile, all units of one letter side by side',
};
export const FILL_CHOICES: Readonly<Record<Fill, string>> = {
  solid: 'all one colour',
  alternate: 'log cabin: D L D L',
  nest: 'the whole order in each element',
};
const START_CHOICES: Readonly<Record<Question['starts'], string>> = {
  all: 'on every end and pick',
  first: 'on the first end and pick',
  weft: 'the warp’s on the first end, the weft’s on every pick',
};
const RANK_CHOICES = Object.fromEntries(PRESET_NAMES.map((name) => [name, weightsInWords(PRESETS[name])]));
const SHOW_CHOICES = { [EACH_KIND]: 'the best, and each that looks unlike all before it' };

/** The keys of a question. Values that depend on the palette or the structure stay text. */
export const QUESTION_TABLE = table(
  {
    structure: optional(
      kind('names of structures', (given) => given),
      {
        about: 'weave structure (see: structures)',
        many: 'several with commas',
        example: 'turned twill',
        argument: '<names>',
      },
    ),
    treadling: optional(
      kind('names of treadlings', (given, expected) => eachOf(given, expected, (item) => textOf(item, 'a name'))),
      {
        about: 'how it is treadled: a name from structures NAME',
        many: 'or all; on a draft also “every tie-up”',
        usual: 'the usual one',
        example: 'rose',
        argument: '<name>',
      },
    ),
    draft: optional(text('the file of a draft'), {
      about: 'a draft of your own instead of a structure, YAML or WIF',
      example: 'threading.yaml',
      argument: '<file>',
    }),
    'on the loom': optional(text('the file of a draft'), {
      about: 'draft whose warp is already threaded: search only weft and treadling',
      example: 'on-my-loom.wif',
      argument: '<file>',
    }),
    'draft text': optional(text('the keys of a draft, as text'), {
      about: 'the draft itself, so that the question needs no file for it; written by the page, only in files',
      example: '"threading: 1-4, 3-2"',
    }),
    blocks: optional(whole('blocks', 1, MOST_BLOCKS), {
      about: 'number of blocks, as many as the shafts hold',
      usual: 'as many as the structure shows',
      example: '4',
      argument: '<n>',
    }),
    profile: optional(kind('blocks such as A A B, order or search', joined), {
      about: 'block order, "A A B"; order: the colour order chooses the blocks',
      many: 'search: every block order is tried, "search, mirrored" only those that read the same backward',
      usual: 'each block once',
      example: 'A A B',
      argument: '<order>',
    }),
    treadled: optional(kind('blocks such as A A B or A+C B, as drawn in, or search', joined), {
      about: 'block order of the treadling; "A+C" for blocks together, "." for none',
      many: 'search: every block order is tried, "search, mirrored", "search, together" any blocks on a pick',
      usual: 'as drawn in',
      example: 'A B A+B',
      argument: '<order>',
    }),
    'profile lengths': optional(kind(`lengths from 1 to ${LONGEST}, as 5, 2-6 or 2,3,5`, lengthsOf), {
      about: 'elements in a block order that is searched, 5, 2-6 or 2,3,5',
      usual: '2-6',
      example: '2-4',
      argument: '<range>',
    }),
    'name draft': optional(NAME_DRAFT, {
      about: 'name to draft in overshot, "INDIGO", "INDIGO, all drafts, mirrored"',
      example: 'INDIGO, mirrored',
      argument: '<name>',
    }),
    yarns: optional(YARNS, {
      about: 'letters and colours of the yarns',
      usual: 'D #1f2a44, L #efe6d2',
      example: '{ D: "#1f2a44", L: { colour: "#efe6d2", name: natural } }',
      argument: '<list>',
    }),
    sett: optional(SETT, {
      about: 'ends and picks, "20", "20/18", "8/8 per cm"',
      usual: '20 per inch, and 20/40 where tabby makes blocks tall',
      example: '20/18',
      argument: '<threads>',
    }),
    lengths: optional(kind(`lengths from 1 to ${LONGEST}, as 5, 2-6 or 2,3,5`, lengthsOf), {
      about: 'elements in an order, 5, 2-6 or 2,3,5',
      usual: '2-6',
      example: '2-6',
      argument: '<range>',
    }),
    orders: optional(
      kind('orders such as D L D D L, D L', (given, expected) =>
        eachOf(given, expected, (item) => textOf(item, 'an order')),
      ),
      { about: 'orders to try instead of all of some lengths', example: '[DLDDL, DL]', argument: '<list>' },
    ),
    warp: optional(text('a letter or an order'), {
      about: 'one order or letter for the warp; lengths and orders are then the weft’s',
      example: 'DLDDL',
      argument: '<order>',
    }),
    weft: optional(text('same, exchange, own, a letter or an order'), {
      about: `${choicesInWords(WEFT_CHOICES)}, a letter or an order`,
      choices: WEFT_CHOICES,
      other: 'a letter or an order',
      usual: 'same',
      example: 'own',
      argument: '<rule>',
    }),
    tabby: optional(text('the letter of a yarn'), {
      about: 'yarn of the tabby picks',
      usual: 'the last',
      example: 'L',
      argument: '<letter>',
    }),
    by: withDefault(words(LAID_BY), 'thread', {
      about: `each colour covers: ${choicesInWords(BY_CHOICES)}`,
      choices: BY_CHOICES,
      many: 'several with commas',
      example: '[thread, unit]',
      argument: '<ways>',
    }),
    fill: withDefault(words(FILLS), 'solid', {
      about: choicesInWords(FILL_CHOICES),
      choices: FILL_CHOICES,
      many: 'several with commas',
      example: '[solid, alternate]',
      argument: '<ways>',
    }),
    times: withDefault(kind('factors from 1 to 100, as 1, 2, 4', timesOf), '1', {
      about: 'threads or units that each colour of the order covers',
      many: 'several with commas',
      example: '[1, 2, 4]',
      argument: '<factors>',
    }),
    starts: optional(word(STARTS), {
      about: `where orders may begin: ${choicesInWords(START_CHOICES)}`,
      choices: START_CHOICES,
      usual: 'all',
      example: 'first',
      argument: '<which>',
    }),
    limits: withDefault(
      LIMIT_KIND,
      {},
      {
        about:
          'what is too much: float 1/2 in (or 7 threads), repeat, warp changes, weft changes, shuttles, treadles, shafts',
        usual: 'float 7, repeat 400',
        example: '{ float: 1/2 in, repeat: 200 }',
        argument: '<list>',
      },
    ),
    loom: optional(LOOM_KIND, {
      about: 'what does not fit it is set aside: "rising, 4 shafts, 6 treadles, 120 heddles"',
      example: 'rising, 4 shafts, 6 treadles',
      argument: '<loom>',
    }),
    same: withDefault(kind(orList([...SAMENESS, 'shift']), samenessOf), ['mirror', 'half-turn', 'exchange'], {
      about: 'treat as the same cloth after: mirror, half-turn, quarter-turn, exchange; shift: none of these',
      usual: 'mirror, half-turn, exchange',
      example: '[mirror, half-turn]',
      argument: '<list>',
    }),
    done: optional(
      kind(DONE, (given) => [...new Set(eachOf(given, DONE, (item) => textOf(item, DONE)))]),
      {
        about: 'set aside what was woven before: files of results, shortlists or galleries',
        example: '[kept-plan/results.yaml]',
        argument: '<files>',
      },
    ),
    'unlike done': optional(kind('how unlike what was done, above 0 and below 1, such as 0.35', unlikeOf), {
      about: 'set aside also cloths less different than this from what was done, 0 to 1, such as 0.35',
      example: '0.35',
      argument: '<least>',
    }),
    rank: optional(kind(RANK, rankOf), {
      about: `${orList(PRESET_NAMES)}; or weights, "contrast 3, symmetry 2"`,
      choices: RANK_CHOICES,
      other: 'weights',
      usual: `${weightsInWords(DEFAULT_RANK)}; figure 3 too where block orders are searched`,
      example: 'unexpected',
      argument: '<weights>',
    }),
    show: withDefault(kind(`cloths, from 1 to ${MOST_SHOWN}, or ${EACH_KIND}`, showOf), '60', {
      about: `best cloths to show, or "${EACH_KIND}"`,
      choices: SHOW_CHOICES,
      other: 'a number of the best',
      example: '24',
      argument: '<n>',
    }),
    seen: SEEN,
    seed: withDefault(text('any word'), 'shedlight', {
      about: 'random seed',
      example: 'second-try',
      argument: '<word>',
    }),
    tries: withDefault(whole('independent random runs', 1, 1000), '1', {
      about: 'independent random runs of a search too large to list',
      example: '4',
      argument: '<n>',
    }),
  },
  {
    name: ['name draft', 'INDIGO'],
    ...Object.fromEntries(
      Object.entries(limitTable.keys).map(([key, { example }]) => [`limit ${key}`, ['limits', `${key} ${example}`]]),
    ),
  },
);

/** A question after the check of each key by itself. */
export type Written = KeyValues<typeof QUESTION_TABLE>;

function lengthsOf(given: Given, expected: string): number[] {
  const ranges = eachOf(
    given,
    expected,
    (item) => {
      const text = textOf(item, expected);
      const found = /^(\d{1,4})(?:\s*(?:[-–]|to)\s*(\d{1,4}))?$/.exec(text);
      const from = Number(found?.[1]);
      const to = Number(found?.[2] ?? found?.[1]);
      if (!(from >= 1 && to >= from && to <= LONGEST))
        throw new Misread(`found ${describe(text)}; expected ${expected}`);
      return Array.from({ length: to - from + 1 }, (_, n) => from + n);
    },
    /[,;]|(?<=\d)\s+(?=\d)/,
  );
  return [...new Set(ranges.flat())].sort((a, b) => a - b);
}

function timesOf(given: Given, expected: string): number[] {
  return [...new Set(eachOf(given, expected, (item) => wholeOf(item, expected, 1, 100), SPACED))];
}

function unlikeOf(given: Given, expected: string): number {
  const least = numberOf(given, expected, 0, 1);
  if (least === 0 || least === 1) throw new Misread(`found ${describe(given)}; expected ${expected}`);
  return least;
}

/** Reads how many cloths to show, or `one of each kind`. */
function showOf(given: Given, expected: string): { most: number; oneOfEachKind: boolean } {
  if (typeof given === 'string' && given.trim().toLowerCase() === EACH_KIND) {
    return { most: MOST_SHOWN, oneOfEachKind: true };
  }
  return { most: wholeOf(given, expected, 1, MOST_SHOWN), oneOfEachKind: false };
}

function samenessOf(given: Given, expected: string): Sameness[] {
  const known = [...SAMENESS, 'shift'] as const;
  const all = [...new Set(eachOf(given, expected, (each) => wordOf(each, known), SPACED))];
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
