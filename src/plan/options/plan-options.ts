import * as v from 'valibot';
import type { Sett } from '../../draft/draft.js';
import { settSchema } from '../../draft/yaml/yarns-given.js';
import {
  describe,
  eachOf,
  type Given,
  isKeys,
  keys,
  Misread,
  numberOf,
  reading,
  textOf,
  under,
  wholeOf,
  wordOf,
} from '../../input/given.js';
import { check, parseSource } from '../../input/source.js';
import { Problem } from '../../problem.js';
import { parseLength, parseShare } from '../../words/measure.js';
import { TURNS, type Turn } from '../warp/fill-width.js';
import type { Mirror } from '../warp/mirror.js';
import { FLOAT_LIMITS, type Purpose } from '../warp/purpose.js';
import { type Reed, reedOf } from '../warp/reed.js';
import { USUAL_WARP } from '../warp/warp-length.js';
import { LOOM_KINDS, type Loom } from '../warp/warp-loom.js';
import { HANDS, type Hand } from '../yarn/sett.js';
import { FIBRES, type Fibre, parseYarnSize, type YarnSize } from '../yarn/yarn-size.js';

/** The sizes of paper that sheets are made for. */
const PAPERS = ['a4', 'letter'] as const;
export type Paper = (typeof PAPERS)[number];

/** Size of the pictures on contact sheets: half size, actual size, or as seen from 6 m. */
const PICTURES = ['half', 'actual', 'far'] as const;
export type Pictures = (typeof PICTURES)[number];

/** The options of a plan. Lengths in millimetres, shares from 0 to below 1. */
export interface PlanOptions {
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
  /** Warp that cannot be woven. Default: usual for the kind of loom. */
  readonly loomWaste?: number;
  readonly testing: number;
  /** Sett of all cloths. Default: each cloth's own. */
  readonly sett?: Sett;
  /** Default: the usual reed with the most even denting. */
  readonly reed?: Reed;
  /** Sizes of the yarns by letter. */
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
  /** Pictures side by side on contact sheets. */
  readonly columns: 4 | 5;
  readonly pictures: Pictures;
  readonly loom: Loom;
}

/** Greatest width of a loom, and greatest length of a piece, in metres. */
const WIDEST = 5;
const LONGEST = 100;

/** Schema of a length with its unit, read in millimetres, up to `metres`; above 0 if `something` is set. */
const lengthTo = (metres: number, something: boolean) =>
  reading((given) => {
    const text = textOf(given, 'a length such as 20 in');
    const mm = spoken(() => parseLength(text));
    if (something && mm === 0) {
      throw new Misread(`found ${describe(text)}; expected a length of more than nothing, such as 20 in`);
    }
    if (mm > metres * 1000) throw new Misread(`found ${describe(text)}; expected ${metres} m at most`);
    return mm;
  });
const length = lengthTo(LONGEST, false);
/** Schema of the width of a warp or loom. */
export const widthSchema = lengthTo(WIDEST, true);
const share = reading((given) => spoken(() => parseShare(textOf(given, 'per cent such as 8 %'))));
const whole = (what: string, most: number) => v.optional(reading((given) => wholeOf(given, what, 1, most)));

/** Keys of a loom; heddles are one number for all shafts, or one number per shaft. */
export const loomEntries = {
  loom: v.optional(
    reading((given) => wordOf(given, LOOM_KINDS)),
    'rising',
  ),
  shafts: whole('a number of shafts, 2 to 64', 64),
  treadles: whole('a number of treadles, 1 to 64', 64),
  heddles: v.optional(
    reading((given) => eachOf(given, 'heddles on each shaft, as 120 120 120 70', heddleCount, /[\s,;]+/)),
  ),
  'loom width': v.optional(widthSchema),
  shuttles: whole('a number of shuttles, 1 to 12', 12),
};

const needsKeys = keys({
  width: v.optional(widthSchema, '20 in'),
  piece: v.optional(lengthTo(LONGEST, true), '5 in'),
  pieces: v.optional(
    reading((given) => wholeOf(given, 'a number of pieces, 1 to 200', 1, 200)),
    '1',
  ),
  divider: v.optional(length),
  header: v.optional(length),
  footer: v.optional(length),
  shrinkage: v.optional(share),
  'take-up': v.optional(share),
  waste: v.optional(length),
  testing: v.optional(length),
  sett: v.optional(settSchema),
  reed: v.optional(reading(reedOf)),
  yarns: v.optional(reading(sizesOf), {}),
  wraps: v.optional(reading((given) => numberOf(given, 'threads side by side, 1 to 300', 1, 300))),
  fibre: v.optional(reading((given) => wordOf(given, FIBRES))),
  hand: v.optional(
    reading((given) => wordOf(given, Object.keys(HANDS) as Hand[])),
    'general',
  ),
  border: v.optional(reading(borderOf)),
  mirror: v.optional(reading(turnOf)),
  'mirror weft': v.optional(reading(turnOf)),
  balance: v.optional(
    reading((given) => wordOf(given, ['auto', 'yes', 'no'] as const)),
    'auto',
  ),
  floating: v.optional(
    reading((given) => wordOf(given, ['auto', 'yes', 'no'] as const)),
    'auto',
  ),
  for: v.optional(
    reading((given) => wordOf(given, Object.keys(FLOAT_LIMITS) as Purpose[])),
    'general',
  ),
  paper: v.optional(
    reading((given) => wordOf(given, PAPERS)),
    'a4',
  ),
  columns: v.optional(
    reading((given) => wholeOf(given, 'pictures side by side, 4 or 5', 4, 5) as 4 | 5),
    '4',
  ),
  pictures: v.optional(
    reading((given) => wordOf(given, PICTURES)),
    'half',
  ),
  ...loomEntries,
});

/** Makes a loom of the values of {@link loomEntries}. */
export function loomOf(given: {
  readonly loom: Loom['kind'];
  readonly shafts?: number | undefined;
  readonly treadles?: number | undefined;
  readonly heddles?: readonly number[] | undefined;
  readonly 'loom width'?: number | undefined;
  readonly shuttles?: number | undefined;
}): Loom {
  const { loom: kind, shafts, treadles, heddles, shuttles } = given;
  const width = given['loom width'];
  const each = heddles?.length === 1 ? new Array<number>(shafts ?? 64).fill(heddles[0]!) : heddles;
  return {
    kind,
    ...(shafts !== undefined && { shafts }),
    ...(treadles !== undefined && { treadles }),
    ...(each !== undefined && { heddles: each }),
    ...(width !== undefined && { width }),
    ...(shuttles !== undefined && { shuttles }),
  };
}

/**
 * Reads the options of a plan from a person's YAML and from flags; flags win. Every option has a default.
 *
 * @param text the YAML, or '' for flags alone; `file` is its name, for messages
 */
export function readPlanOptions(text: string, file: string, flags: Readonly<Record<string, string>> = {}): PlanOptions {
  const source = text === '' ? { value: {}, place: () => file } : parseSource(text, file);
  const value = { ...(source.value as Record<string, Given>), ...flags };
  const place: typeof source.place = (path, spot) => {
    const key = path[0];
    if (typeof key === 'string' && Object.hasOwn(flags, key)) return `--${key.replaceAll(' ', '-')}`;
    return source.place(path, spot);
  };
  const given = check(needsKeys, { value, place });
  const { wraps, fibre, hand } = given;
  const { width, piece, pieces, sett, reed, yarns, border, balance, floating, paper, columns, pictures } = given;
  return {
    width,
    piece,
    pieces,
    divider: given.divider ?? USUAL_WARP.divider,
    header: given.header ?? USUAL_WARP.header,
    footer: given.footer ?? USUAL_WARP.footer,
    shrinkage: given.shrinkage ?? USUAL_WARP.shrinkage,
    takeUp: given['take-up'] ?? USUAL_WARP.takeUp,
    ...(given.waste !== undefined && { loomWaste: given.waste }),
    testing: given.testing ?? USUAL_WARP.testing,
    ...(sett !== undefined && { sett }),
    ...(reed !== undefined && { reed }),
    yarns,
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
    columns,
    pictures,
    loom: loomOf(given),
  };
}

function heddleCount(given: Given): number {
  return wholeOf(given, 'a number of heddles', 0, 10_000);
}

/** Reads yarn sizes by letter: `{ D: 8/2 cotton }` or `D 8/2 cotton, L 8/2 cotton`; one size alone is for all yarns. */
function sizesOf(given: Given): Readonly<Record<string, YarnSize>> {
  if (isKeys(given)) {
    return Object.fromEntries(
      Object.entries(given).map(([letter, size]) => [letter, under(letter, () => sizeOf(size))]),
    );
  }
  const text = textOf(given, 'a yarn size such as 8/2 cotton');
  const parts = text.split(',').map((part) => /^\s*([A-Z])\s+(.+?)\s*$/.exec(part));
  if (parts.includes(null)) return { '': sizeOf(text) };
  return Object.fromEntries(parts.map((part) => [part![1]!, sizeOf(part![2]!)]));
}

function sizeOf(given: Given): YarnSize {
  return spoken(() => parseYarnSize(textOf(given, 'a yarn size such as 8/2 cotton')));
}

/** Reads a border: `8 D` (ends and the letter of their yarn) or `even D` (the ends that whole repeats leave over). */
function borderOf(given: Given): { ends: number | 'even'; letter: string } {
  const expected = 'ends and a letter, such as 8 D, or even D for what whole repeats leave';
  const found = /^(\d+|even)\s*([A-Z])$/.exec(textOf(given, expected));
  if (found === null) throw new Misread(`found ${describe(given)}; expected ${expected}`);
  const ends = found[1] === 'even' ? 'even' : wholeOf(found[1]!, expected, 1, 200);
  return { ends, letter: found[2]! };
}

/** Reads the turn of a mirrored order; undefined for `no`. */
function turnOf(given: Given): Turn | undefined {
  const turn = wordOf(given, ['no', ...TURNS] as const);
  return turn === 'no' ? undefined : turn;
}

/** Runs a reader of plain text, and makes a Misread of the Problem that it throws. */
function spoken<T>(read: () => T): T {
  try {
    return read();
  } catch (error) {
    throw error instanceof Problem && !(error instanceof Misread) ? new Misread(error.message) : error;
  }
}
