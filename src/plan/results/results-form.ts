import type { Draft } from '../../draft/draft.js';
import type { KeptCloth } from '../../formats/shortlist.js';
import { describe, type Given, Misread, numberOf, textOf, under } from '../../input/given.js';
import { type KeyValues, type Kind, listOf, needed, optional, table } from '../../input/key.js';
import { kind, number, text as someText, version, whole, word } from '../../input/kinds.js';
import { parseSource, readSource } from '../../input/source.js';
import { MEASURES, type Per, parseLength, sayLength, sayShare } from '../../words/measure.js';
import { type Learnt, picksBefore } from './learnt.js';

/** The results of one woven piece. Lengths in millimetres; blanks are absent. */
export interface Result {
  readonly code: string;
  readonly structure?: string;
  /** Who wove it. */
  readonly weaver?: string;
  /** Squares of a gamp, if it is one: a sampler, which is not woven again as one cloth. */
  readonly squares?: number;
  readonly ends?: number;
  /** Width in the reed as planned, and the width found on the loom. */
  readonly inReed?: number;
  readonly width?: number;
  /** Length of warp that the piece used, its length off the loom, and its length after finishing. */
  readonly warpUsed?: number;
  readonly offLoom?: number;
  readonly finished?: number;
  readonly picks?: number;
  /** Picks that were planned, before any results corrected them. */
  readonly planned?: number;
  /** The measure in which picks were counted, and planned. */
  readonly per?: Per;
  readonly stars?: number;
  readonly howFinished?: string;
  readonly changed?: string;
}

/** Least share of a length that is left after weaving or finishing; a smaller share is taken for a slip of the pen. */
const LEAST_LEFT = 0.3;
const MOST_PICKS = 400;
const PICKS = `picks from 1 to ${MOST_PICKS}, as 18, 18 per inch or 7 per cm`;

/** A blank as YAML reads it, for JSON Schema. */
const BLANK = { enum: [null, ''] };

/** A value that the form leaves blank for the weaver. */
function blank<T>(filled: Kind<T>, about: string, example: string) {
  const kindOrBlank = kind(filled.expected, (given) => (isBlank(given) ? undefined : filled.read(given)));
  const { schema } = filled;
  return optional({ ...kindOrBlank, ...(schema && { schema: { anyOf: [schema, BLANK] } }) }, { about, example });
}

const length = kind('a length such as 51 in', (given, expected) => lengthOf(textOf(given, expected)));
const words = someText('some words');

const resultTable = table({
  code: needed(kind('a code as on the sheet', codeOf), { about: 'code of the cloth', example: 'k3v9q0aa' }),
  recipe: blank(words, 'the cloth in words; written by the form', '2/2 twill, DDLL'),
  structure: blank(words, 'its structure; written by the form', '2/2 twill'),
  weaver: blank(words, 'who wove it; written by the form of a deal', 'Ida'),
  squares: blank(whole('squares', 1, 10_000), 'squares of a gamp; written by the form', '25'),
  per: blank(word<Per>(['inch', 'cm']), 'the length in which picks are counted', 'inch'),
  ends: blank(number('ends', 1, 100_000), 'ends counted; no longer asked', '400'),
  'in the reed': blank(length, 'width in the reed; written by the form', '20 in'),
  width: blank(length, 'width on the loom, where it is woven', '18.5 in'),
  'warp used': blank(length, 'length of warp that the piece used', '51 in'),
  'off the loom': blank(length, 'its length off the loom', '46 in'),
  finished: blank(length, 'its length after finishing', '42 in'),
  'picks planned': blank(number('picks', 0.01, MOST_PICKS), 'picks planned; written by the form', '20'),
  picks: blank(kind(PICKS, picksOf), 'picks counted', '18'),
  stars: blank(whole('stars', 0, 5), 'how much it is liked', '4'),
  'how finished': blank(words, 'how it was washed and pressed', 'by hand, warm'),
  changed: blank(words, 'what was changed', 'a border of 8 ends'),
});

/** The keys of a file of results. */
export const RESULTS_TABLE = table({
  results: needed(listOf(resultTable, 'results, each with its code', 10_000, resultOf), {
    about: 'what was found with each cloth; blanks are left out',
    example: '[{ code: k3v9q0aa, picks: 18, stars: 4 }]',
  }),
  version: version(1),
});

/**
 * Reads the results that a person filled in. Blanks are left out.
 *
 * @throws Problem with file, line and column
 */
export function readResults(text: string, file: string): Result[] {
  return readSource(RESULTS_TABLE, parseSource(text, file)).results;
}

/** A cloth for which there are blanks in the form. */
export interface FormEntry {
  readonly cloth: KeptCloth;
  readonly per: Per;
  /** Width of the cloth in the reed, in millimetres, and its picks as planned before any results corrected them. */
  readonly inReed?: number;
  readonly planned?: number;
  readonly weaver?: string | undefined;
  /** Squares of a gamp, if it is one. */
  readonly squares?: number | undefined;
  /** Whether it is a square of a gamp, which is only liked or not. */
  readonly isSquare?: boolean;
}

const BLANKS = [
  'in the reed',
  'width',
  'warp used',
  'off the loom',
  'finished',
  'picks planned',
  'picks',
  'stars',
  'how finished',
  'changed',
];
const SQUARE_BLANKS = ['stars', 'changed'];

/** What a plan's form asks for: each piece with its weaver, or a gamp and its squares. */
export function formEntries(
  pieces: readonly {
    readonly cloth: KeptCloth;
    readonly draft: Draft;
    readonly inReed: number;
    readonly learnt: Learnt;
  }[],
  weavers?: readonly string[],
  squares: readonly KeptCloth[] = [],
): FormEntry[] {
  const own = pieces.map(({ cloth, draft: { sett }, inReed, learnt }, at): FormEntry => {
    const gamp = squares.length > 0 ? squares.length : undefined;
    const planned = picksBefore(learnt, sett);
    return { cloth, per: sett.per, inReed, planned, weaver: weavers?.[at], squares: gamp };
  });
  const listed = new Map(squares.map((cloth) => [cloth.code, cloth]));
  const each = [...listed.values()].map((cloth) => ({ cloth, per: cloth.draft.sett.per, isSquare: true }));
  return [...own, ...each];
}

/** The form for results: for each cloth, its code, structure and measure of picks, and blanks to fill in. */
export function resultsForm(entries: readonly FormEntry[]): string {
  return [
    '# Fill in what you found; leave the rest blank. Lengths as 51 in or 130 cm; width is that on the loom, where you',
    '# weave; picks as many as there are to the inch or centimetre (per), or with their measure, 7 per cm; stars from',
    '# 0 to 5. `shedlight plan --learnt` reads this file, and `shedlight explore --done` with the shortlist beside it',
    '# leaves out what was woven.',
    'version: 1',
    'results:',
    ...entries.map(blockOf),
    '',
  ].join('\n');
}

/**
 * A form that a person has begun, with blanks for the cloths that it lacks at its end; undefined if it lacks none, or if
 * it is written so that nothing can be put at its end.
 */
export function grownForm(begun: string, entries: readonly FormEntry[]): string | undefined {
  const codes = (text: string): string[] | undefined => {
    try {
      return readResults(text, 'results').map(({ code }) => code);
    } catch {
      return undefined;
    }
  };
  const there = codes(begun);
  const lacking = entries.filter(({ cloth }) => there?.includes(cloth.code) === false);
  if (there === undefined || lacking.length === 0) return undefined;
  const grown = `${begun.trimEnd()}\n${lacking.map(blockOf).join('\n')}\n`;
  return codes(grown)?.length === there.length + lacking.length ? grown : undefined;
}

/** Whether a person filled in any blank of a result. */
export function isFilledIn(result: Result): boolean {
  const { code: _, structure: _s, per: _p, weaver: _w, squares: _q, inReed: _r, planned: _b, ...found } = result;
  return Object.keys(found).length > 0;
}

function blockOf(entry: FormEntry): string {
  const { cloth, per, inReed, planned, weaver, squares, isSquare } = entry;
  const { code, recipe, structure } = cloth;
  const known: Readonly<Record<string, string | number | undefined>> = {
    'in the reed': inReed && sayLength(inReed, per).replace(/ \(.*/, ''),
    'picks planned': planned,
  };
  const written = (blank: string): string => (known[blank] === undefined ? '' : ` ${known[blank]}`);
  return [
    `  - code: ${code}`,
    `    recipe: ${JSON.stringify(recipe)}`,
    `    structure: ${JSON.stringify(structure)}`,
    ...(weaver === undefined ? [] : [`    weaver: ${JSON.stringify(weaver)}`]),
    ...(squares === undefined ? [] : [`    squares: ${squares}`]),
    ...(isSquare ? [] : [`    per: ${per}`]),
    ...(isSquare ? SQUARE_BLANKS : BLANKS).map((blank) => `    ${blank}:${written(blank)}`),
  ].join('\n');
}

function resultOf(given: KeyValues<typeof resultTable>): Result {
  const { code, structure, ends, width, finished, picks, stars, changed } = given;
  const [inReed, warpUsed, offLoom] = [given['in the reed'], given['warp used'], given['off the loom']];
  under('width', () => checkLoss('on the loom', width, 'in the reed', inReed));
  under('off the loom', () => checkLoss('off the loom', offLoom, 'of warp used', warpUsed));
  under('finished', () => checkLoss('finished', finished, 'off the loom', offLoom));
  const read = {
    structure,
    weaver: given.weaver,
    squares: given.squares,
    per: picks?.per ?? given.per,
    ends,
    inReed,
    width,
    warpUsed,
    offLoom,
    finished,
    // Planned picks are in the measure of the form, which may not be that in which they were counted.
    planned: given['picks planned'] && inMeasure(given['picks planned'], given.per, picks?.per ?? given.per),
    picks: picks?.count,
    stars,
    howFinished: given['how finished'],
    changed,
  };
  return { code, ...Object.fromEntries(Object.entries(read).filter(([, value]) => value !== undefined)) };
}

/** A number of picks in another measure; undefined if its own is not known. */
function inMeasure(count: number, per: Per | undefined, other: Per | undefined): number | undefined {
  return per && other && (count / MEASURES[per]) * MEASURES[other];
}

/** Throws if a length got longer, or shorter than {@link LEAST_LEFT} of it. */
function checkLoss(what: string, left: number | undefined, ofWhat: string, of: number | undefined): void {
  if (left === undefined || of === undefined || (left <= of && left >= of * LEAST_LEFT)) return;
  const wanted = left > of ? 'no more than that' : `at least ${sayShare(LEAST_LEFT)} of it`;
  const [found, whole] = [sayLength(left, 'inch'), sayLength(of, 'inch')];
  throw new Misread(`found ${found} ${what}, and ${whole} ${ofWhat}; expected ${wanted}`);
}

function codeOf(given: Given, expected: string): string {
  const code = textOf(given, expected);
  if (!/^[0-9a-z]{1,64}$/.test(code)) throw new Misread(`found ${describe(code)}; expected ${expected}`);
  return code;
}

/** Reads picks: `18`, `18 per inch` or `7 per cm`. */
function picksOf(given: Given): { count: number; per?: Per } {
  const text = textOf(given, PICKS);
  const found = /^(\S+)(?:\s+per\s+(inch|cm))?$/.exec(text);
  if (found === null) throw new Misread(`found ${describe(text)}; expected ${PICKS}`);
  const count = numberOf(found[1]!, PICKS, 1, MOST_PICKS);
  return { count, ...(found[2] !== undefined && { per: found[2] as Per }) };
}

function lengthOf(text: string): number {
  const length = parseLength(text);
  if (length === 0) throw new Misread(`found ${describe(text)}; expected a length of more than nothing, as 51 in`);
  return length;
}

function isBlank(given: Given): boolean {
  return typeof given === 'string' && given.trim() === '';
}
