import type { Sett } from '../../draft/draft.js';
import { SEEN, type Seen } from '../../draft/point-of-view.js';
import { SETT } from '../../draft/yaml/yarns-given.js';
import { overlaid } from '../../input/flags.js';
import { describe, type Given, isKeys, Misread, textOf, under, wholeOf, wordOf } from '../../input/given.js';
import { optional, table, withDefault } from '../../input/key.js';
import { kind, length, name, number, share, whole, word } from '../../input/kinds.js';
import { parseSource, readSource } from '../../input/source.js';
import type { Loom } from '../../structure/loom/loom-fit.js';
import { FORMER_LOOM_KEYS, LOOM_KIND, WIDEST } from '../../structure/loom/loom-table.js';
import { orList } from '../../words/counts.js';
import { fixed, INCH, type Per, sayShare } from '../../words/measure.js';
import { TURNS } from '../warp/fill-width.js';
import type { Mirror } from '../warp/mirror.js';
import { FLOAT_LIMITS, type Purpose } from '../warp/purpose.js';
import { REEDS, type Reed, reedOf } from '../warp/reed.js';
import { USUAL_DRAW_IN, USUAL_LENGTHS, USUAL_WARP } from '../warp/warp-length.js';
import { type Amount, parseAmount, type Stock } from '../yarn/in-hand.js';
import { HANDS, type Hand } from '../yarn/sett.js';
import { FIBRES, type Fibre, parseYarnSize, type YarnSize } from '../yarn/yarn-size.js';

/** The sizes of paper that sheets are made for. */
const PAPERS = ['a4', 'letter'] as const;
export type Paper = (typeof PAPERS)[number];

/** Size of the pictures on contact sheets: half size, actual size, or as seen from 6 m. */
const PICTURES = ['half', 'actual', 'far'] as const;
export type Pictures = (typeof PICTURES)[number];

/** The options of a plan. Lengths in millimetres, shares from 0 to below 1. */
export interface PlanOptions extends Stock {
  /** Width of the warp in the reed. */
  readonly width: number;
  /** Finished length of each piece, hems included. */
  readonly piece: number;
  /** Pieces of each cloth. */
  readonly pieces: number;
  readonly divider: number;
  readonly header: number;
  readonly footer: number;
  readonly shrinkage: number;
  readonly takeUp: number;
  /** Share of the width in the reed by which the cloth is narrower on the loom. */
  readonly drawIn: number;
  /** Warp that cannot be woven. Default: usual for the kind of loom. */
  readonly loomWaste?: number;
  readonly testing: number;
  /** Sett of all cloths. Default: each cloth's own. */
  readonly sett?: Sett;
  /** Default: the usual reed with the most even denting. */
  readonly reed?: Reed;
  /** Sizes of the yarns by letter; of all without one under “”, of pattern wefts under “pattern”. */
  readonly yarns: Readonly<Record<string, YarnSize>>;
  /** Threads side by side on a ruler, per inch or centimetre like the sett. Default: computed from the yarn sizes. */
  readonly wraps?: number;
  /** Fibre of all yarns. Default: the fibre that each yarn size names. */
  readonly fibre?: Fibre;
  readonly hand: Hand;
  /** Border on both sides, in ends of one yarn; even: the ends that whole repeats leave over. */
  readonly border?: { readonly ends: number | 'even'; readonly letter: string };
  readonly mirror: Mirror;
  /**
   * Whether to add ends that make the warp read the same from both sides; auto: if the warp is mirrored, or if they are
   * no more than a quarter of a repeat.
   */
  readonly balance: 'auto' | 'yes' | 'no';
  readonly floating: 'auto' | 'yes' | 'no';
  readonly purpose: Purpose;
  readonly paper: Paper;
  /** Title of the project, on every page. */
  readonly project?: string;
  /** From where pictures and drafts are drawn. */
  readonly seen: Seen;
  /** Pictures side by side on contact sheets. */
  readonly columns: 4 | 5;
  readonly pictures: Pictures;
  readonly loom: Loom;
  /** Ends in each warp section of a gamp. Default: as many as fit. */
  readonly section?: number;
  /** Threads between the sections of a gamp. Default: the fewest from 4 on that fit. */
  readonly separator?: number;
}

/** What an amount of yarn is expected to be. */
const AMOUNT = 'an amount of yarn such as 400 g, 8 oz or 600 yd';
/** Longest piece, in metres. */
const LONGEST = 100;
/** Most ends of a border on each side. */
const MOST_BORDER = 200;

const anyLength = length(LONGEST);
/** The width of a warp. */
export const WIDTH = length(WIDEST, { something: true });
const wish = word(['auto', 'yes', 'no'] as const);
const turn = (of: string) =>
  optional(
    kind(orList(['no', ...TURNS]), (given) => {
      const asked = wordOf(given, ['no', ...TURNS] as const);
      return asked === 'no' ? undefined : asked;
    }),
    {
      about: `${of} mirrored: single, doubled (thread at the turn)`,
      usual: 'no',
      example: 'single',
      argument: '<turns>',
    },
  );

/** The keys of a file of plan options. */
export const PLAN_TABLE = table(
  {
    width: optional(WIDTH, {
      about: 'width in the reed',
      usual: sayUsual('width'),
      example: '18 in',
      argument: '<length>',
    }),
    sett: optional(SETT, {
      about: 'ends and picks, "20", "20/18", "8/8 per cm"',
      usual: 'each cloth’s own',
      example: '24/22',
      argument: '<threads>',
    }),
    'yarn size': withDefault(
      kind('a yarn size such as 8/2 cotton, or sizes by letter', sizesOf),
      {},
      {
        about: 'size of the yarn, "8/2 cotton"; of each, "D 8/2 cotton, L 16/2 linen, pattern 4/2 cotton"',
        example: '{ D: 8/2 cotton, L: 16/2 linen }',
        argument: '<sizes>',
      },
    ),
    'in hand': withDefault(
      kind('amounts by letter, such as D 400 g, L 500 yd', inHandOf),
      {},
      {
        about: 'yarn in hand, "D 400 g, L 500 yd", pattern wefts as "pattern 8 oz"',
        example: '{ D: 400 g, L: 500 yd }',
        argument: '<amounts>',
      },
    ),
    'put-up': withDefault(
      kind(`${AMOUNT}, or amounts by letter`, amountsOf),
      {},
      {
        about: 'how yarn is sold, "250 g" a cone; of each, "D 250 g, L 8 oz"',
        example: '250 g',
        argument: '<amounts>',
      },
    ),
    reed: optional(kind(REEDS, reedOf), {
      about: 'dents, 10 per inch or 50/10 (to 10 cm)',
      usual: 'the most even common reed',
      example: '50/10',
      argument: '<dents>',
    }),
    border: optional(kind('ends and a letter, such as 8 D, or even D for what whole repeats leave', borderOf), {
      about: 'ends of one yarn on both sides, "8 D"; "even D": whatever is left after whole repeats',
      usual: 'none',
      example: '8 D',
      argument: '<ends>',
    }),
    mirror: turn('warp with its threading'),
    'mirror weft': turn('treadling'),
    balance: withDefault(wish, 'auto', {
      about: 'ends that make both sides the same: auto, yes, no',
      example: 'yes',
      argument: '<when>',
    }),
    floating: withDefault(wish, 'auto', {
      about: 'floating selvedges: auto, yes, no',
      example: 'no',
      argument: '<when>',
    }),
    wraps: optional(number('threads side by side', 1, 300), {
      about: 'threads side by side to the inch (cm), for the closest sett',
      usual: 'computed from the yarn size',
      example: '32',
      argument: '<n>',
    }),
    fibre: optional(word(FIBRES), {
      about: orList(FIBRES),
      usual: 'as the yarn size says',
      example: 'cotton',
      argument: '<fibre>',
    }),
    hand: withDefault(word(Object.keys(HANDS) as Hand[]), 'general', {
      about: 'general, drape: how close a sett is advised',
      example: 'drape',
      argument: '<hand>',
    }),
    piece: optional(length(LONGEST, { something: true }), {
      about: 'finished length of each piece, hems included',
      usual: sayUsual('piece'),
      example: '24 in',
      argument: '<length>',
    }),
    pieces: withDefault(whole('pieces', 1, 200), '1', {
      about: 'pieces of each cloth',
      example: '2',
      argument: '<n>',
    }),
    divider: optional(anyLength, {
      about: 'between pieces',
      usual: sayUsual('divider'),
      example: '2 in',
      argument: '<length>',
    }),
    header: optional(anyLength, {
      about: 'before the first piece',
      usual: sayUsual('header'),
      example: '2 in',
      argument: '<length>',
    }),
    footer: optional(anyLength, {
      about: 'after the last piece',
      usual: sayUsual('footer'),
      example: '2 in',
      argument: '<length>',
    }),
    'take-up': optional(share, {
      about: 'take-up of the warp in weaving',
      usual: sayShare(USUAL_WARP.takeUp),
      example: '10 %',
      argument: '<share>',
    }),
    'draw-in': optional(share, {
      about: 'narrower at the fell than in the reed',
      usual: sayShare(USUAL_DRAW_IN),
      example: '7 %',
      argument: '<share>',
    }),
    shrinkage: optional(share, {
      about: 'lost in washing',
      usual: sayShare(USUAL_WARP.shrinkage),
      example: '8 %',
      argument: '<share>',
    }),
    waste: optional(anyLength, {
      about: 'warp that cannot be woven',
      usual: '27 in or 70 cm; table loom 17 in or 45 cm',
      example: '30 in',
      argument: '<length>',
    }),
    testing: optional(anyLength, {
      about: 'test weaving and re-tying',
      usual: sayUsual('testing'),
      example: '10 in',
      argument: '<length>',
    }),
    loom: withDefault(
      LOOM_KIND,
      {},
      {
        about:
          '"rising, 8 shafts, 10 treadles, 32 in"; also 120 heddles, 2 shuttles; jack, counterbalance, countermarch, table',
        usual: 'rising',
        example: 'countermarch, 8 shafts, 10 treadles, 32 in',
        argument: '<loom>',
      },
    ),
    for: withDefault(word(Object.keys(FLOAT_LIMITS) as Purpose[]), 'general', {
      about: 'what it is for, which limits floats: towel, general, hanging, baby',
      example: 'towel',
      argument: '<purpose>',
    }),
    paper: withDefault(word(PAPERS), 'a4', { about: 'a4, letter', example: 'letter', argument: '<size>' }),
    project: optional(name('a title'), {
      about: 'title of the project, printed on every page',
      example: 'Kitchen towels, spring',
      argument: '<title>',
    }),
    seen: SEEN,
    columns: withDefault(
      kind('pictures side by side, 4 or 5', (given, expected) => wholeOf(given, expected, 4, 5) as 4 | 5),
      '4',
      { about: 'pictures side by side on contact sheets: 4, 5', example: '5', argument: '<n>' },
    ),
    pictures: withDefault(word(PICTURES), 'half', {
      about: 'their size: half, actual, or far: as from 6 m',
      example: 'actual',
      argument: '<size>',
    }),
    section: optional(whole('ends', 2, 1000), {
      about: 'ends in each warp section of a gamp',
      usual: 'as many as fit',
      example: '40',
      argument: '<n>',
    }),
    separator: optional(whole('ends and picks', 0, 100), {
      about: 'ends and picks between the sections of a gamp',
      usual: 'the fewest from 4 on that fit',
      example: '6',
      argument: '<n>',
    }),
  },
  { yarns: ['yarn size', '8/2 cotton'], ...FORMER_LOOM_KEYS },
);

/**
 * Reads the options of a plan from a person's YAML and from flags; flags win. Every option has a default.
 *
 * @param text the YAML, or '' for flags alone; `file` is its name, for messages
 * @param per the measure of the cloths: usual lengths are round in it, unless a sett is given in the other
 */
export function readPlanOptions(
  text: string,
  file: string,
  flags: Readonly<Record<string, string>> = {},
  per: Per = 'inch',
): PlanOptions {
  const source = text === '' ? undefined : parseSource(text, file);
  const given = readSource(PLAN_TABLE, overlaid(PLAN_TABLE, source, flags, { nothing: file }));
  const usual = USUAL_LENGTHS[given.sett?.per ?? per];
  const { wraps, fibre, hand, project, seen } = given;
  const { pieces, sett, reed, border, balance, floating, paper, columns, pictures, section, separator } = given;
  return {
    width: given.width ?? usual.width,
    piece: given.piece ?? usual.piece,
    pieces,
    divider: given.divider ?? usual.divider,
    header: given.header ?? usual.header,
    footer: given.footer ?? usual.footer,
    shrinkage: given.shrinkage ?? USUAL_WARP.shrinkage,
    takeUp: given['take-up'] ?? USUAL_WARP.takeUp,
    drawIn: given['draw-in'] ?? USUAL_DRAW_IN,
    ...(given.waste !== undefined && { loomWaste: given.waste }),
    testing: given.testing ?? usual.testing,
    ...(sett !== undefined && { sett }),
    ...(reed !== undefined && { reed }),
    yarns: given['yarn size'],
    inHand: given['in hand'],
    putUps: given['put-up'],
    ...(wraps !== undefined && { wraps }),
    ...(fibre !== undefined && { fibre }),
    hand,
    ...(border !== undefined && { border }),
    mirror: {
      ...(given.mirror && { warp: given.mirror }),
      ...(given['mirror weft'] && { weft: given['mirror weft'] }),
    },
    balance,
    floating,
    purpose: given.for,
    paper,
    ...(project !== undefined && { project }),
    seen,
    columns,
    pictures,
    loom: given.loom,
    ...(section !== undefined && { section }),
    ...(separator !== undefined && { separator }),
  };
}

/** Reads yarn sizes by letter: `{ D: 8/2 cotton }` or `D 8/2 cotton, L 8/2 cotton`; one size alone is for all yarns. */
function sizesOf(given: Given): Readonly<Record<string, YarnSize>> {
  return byLetter(given, (one) => parseYarnSize(textOf(one, 'a yarn size such as 8/2 cotton')));
}

/** Reads amounts of yarn by letter, like sizes. */
function amountsOf(given: Given): Readonly<Record<string, Amount>> {
  return byLetter(given, (one) => parseAmount(textOf(one, AMOUNT)));
}

/** Reads the yarn in hand, which is of one letter or another. */
function inHandOf(given: Given, expected: string): Readonly<Record<string, Amount>> {
  const amounts = amountsOf(given);
  if ('' in amounts) throw new Misread(`found ${describe(given)}; expected ${expected}`);
  return amounts;
}

/** Reads one value for all yarns, under “”, or a value for each letter. */
function byLetter<T>(given: Given, read: (given: Given) => T): Readonly<Record<string, T>> {
  if (isKeys(given)) {
    return Object.fromEntries(Object.entries(given).map(([letter, one]) => [letter, under(letter, () => read(one))]));
  }
  const text = textOf(given, 'some words');
  const parts = text.split(',').map((part) => /^\s*([A-Z]|pattern)\s+(.+?)\s*$/.exec(part));
  if (parts.includes(null)) return { '': read(text) };
  return Object.fromEntries(parts.map((part) => [part![1]!, read(part![2]!)]));
}

/** Reads a border: `8 D` (ends and the letter of their yarn) or `even D` (the ends that whole repeats leave over). */
function borderOf(given: Given, expected: string): { ends: number | 'even'; letter: string } {
  const found = /^(\d+|even)\s*([A-Z])$/.exec(textOf(given, expected));
  if (found === null) throw new Misread(`found ${describe(given)}; expected ${expected}`);
  const ends =
    found[1] === 'even' ? 'even' : wholeOf(found[1]!, `1 to ${MOST_BORDER} ends of a border`, 1, MOST_BORDER);
  return { ends, letter: found[2]! };
}

/** A usual length, as help says it: `20 in or 50 cm`. */
function sayUsual(key: keyof (typeof USUAL_LENGTHS)['inch']): string {
  return `${fixed(USUAL_LENGTHS.inch[key] / INCH, 2)} in or ${fixed(USUAL_LENGTHS.cm[key] / 10, 1)} cm`;
}
