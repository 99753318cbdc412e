import * as v from 'valibot';
import type { Draft } from '../../draft/draft.js';
import type { KeptCloth } from '../../formats/shortlist.js';
import {
  describe,
  type Given,
  keys,
  Misread,
  numberOf,
  readAs,
  reading,
  textOf,
  under,
  wholeOf,
  wordOf,
} from '../../input/given.js';
import { check, parseSource } from '../../input/source.js';
import { type Per, parseLength, sayLength, sayShare } from '../../words/measure.js';

/** The results of one woven piece. Lengths in millimetres; blanks are absent. */
export interface Result {
  readonly code: string;
  readonly structure?: string;
  readonly ends?: number;
  readonly width?: number;
  /** Length of warp that the piece used, its length off the loom, and its length after finishing. */
  readonly warpUsed?: number;
  readonly offLoom?: number;
  readonly finished?: number;
  readonly picks?: number;
  /** The measure in which picks were counted. */
  readonly per?: Per;
  readonly stars?: number;
  readonly howFinished?: string;
  readonly changed?: string;
}

/** Least share of a length that is left after weaving or finishing; a smaller share is taken for a slip of the pen. */
const LEAST_LEFT = 0.3;
const MOST_PICKS = 400;
const PICKS = `picks from 1 to ${MOST_PICKS}, as 18, 18 per inch or 7 per cm`;

const length = v.optional(
  reading((given): number | undefined =>
    isBlank(given) ? undefined : lengthOf(textOf(given, 'a length such as 51 in')),
  ),
);
const words = v.optional(reading((given) => (isBlank(given) ? undefined : textOf(given, 'some words'))));
const number = (what: string, most: number) =>
  v.optional(reading((given) => (isBlank(given) ? undefined : numberOf(given, what, 1, most))));

const resultKeys = keys({
  code: reading((given) => {
    const code = textOf(given, 'a code as on the sheet');
    if (!/^[0-9a-z]{1,64}$/.test(code)) throw new Misread(`found ${describe(code)}; expected a code as on the sheet`);
    return code;
  }),
  recipe: words,
  structure: words,
  per: v.optional(reading((given) => (isBlank(given) ? undefined : wordOf<Per>(given, ['inch', 'cm'])))),
  ends: number('a number of ends, 1 to 100,000', 100_000),
  width: length,
  'warp used': length,
  'off the loom': length,
  finished: length,
  picks: v.optional(reading((given) => (isBlank(given) ? undefined : picksOf(given)))),
  stars: v.optional(reading((given) => (isBlank(given) ? undefined : wholeOf(given, 'stars from 0 to 5', 0, 5)))),
  'how finished': words,
  changed: words,
});

/**
 * Reads the results that a person filled in (YAML: `results:` with a list). Blanks are left out.
 *
 * @throws Problem with file, line and column
 */
export function readResults(text: string, file: string): Result[] {
  const results = reading((given): Result[] => {
    if (!Array.isArray(given)) throw new Misread('found no list; expected results, each with its code');
    return given.map((item: Given, at) => under(at, () => resultOf(readAs(resultKeys, item))));
  });
  return check(keys({ results }), parseSource(text, file)).results;
}

/** The form for results: for each cloth, its code, structure and measure of picks, and blanks to fill in. */
export function resultsForm(pieces: readonly { readonly cloth: KeptCloth; readonly draft: Draft }[]): string {
  const blanks = [
    'ends',
    'width',
    'warp used',
    'off the loom',
    'finished',
    'picks',
    'stars',
    'how finished',
    'changed',
  ];
  const blocks = pieces.map(({ cloth: { code, recipe, structure }, draft: { sett } }) =>
    [
      `  - code: ${code}`,
      `    recipe: ${JSON.stringify(recipe)}`,
      `    structure: ${JSON.stringify(structure)}`,
      `    per: ${sett.per}`,
      ...blanks.map((blank) => `    ${blank}:`),
    ].join('\n'),
  );
  return [
    '# Fill in what you found; leave the rest blank. Lengths as 51 in or 130 cm; picks as many as there are to the',
    '# inch or centimetre (per), or with their measure, 7 per cm; stars from 0 to 5. `shedlight plan --learnt` reads',
    '# this file, and `shedlight explore --done` with the shortlist beside it leaves out what was woven.',
    'results:',
    ...blocks,
    '',
  ].join('\n');
}

/** Whether a person filled in any blank of a result. */
export function isFilledIn({ code: _, structure: _s, per: _p, ...found }: Result): boolean {
  return Object.keys(found).length > 0;
}

function resultOf(given: v.InferOutput<typeof resultKeys>): Result {
  const { code, structure, ends, width, finished, picks, stars, changed } = given;
  const [warpUsed, offLoom] = [given['warp used'], given['off the loom']];
  under('off the loom', () => checkLoss('off the loom', offLoom, 'of warp used', warpUsed));
  under('finished', () => checkLoss('finished', finished, 'off the loom', offLoom));
  const read = {
    structure,
    per: picks?.per ?? given.per,
    ends,
    width,
    warpUsed,
    offLoom,
    finished,
    picks: picks?.count,
    stars,
    howFinished: given['how finished'],
    changed,
  };
  return { code, ...Object.fromEntries(Object.entries(read).filter(([, value]) => value !== undefined)) };
}

/** Throws if a length got longer, or shorter than {@link LEAST_LEFT} of it. */
function checkLoss(what: string, left: number | undefined, ofWhat: string, of: number | undefined): void {
  if (left === undefined || of === undefined || (left <= of && left >= of * LEAST_LEFT)) return;
  const wanted = left > of ? 'no more than that' : `at least ${sayShare(LEAST_LEFT)} of it`;
  const [found, whole] = [sayLength(left, 'inch'), sayLength(of, 'inch')];
  throw new Misread(`found ${found} ${what}, and ${whole} ${ofWhat}; expected ${wanted}`);
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
  let length: number;
  try {
    length = parseLength(text);
  } catch (error) {
    throw new Misread((error as Error).message);
  }
  if (length === 0) throw new Misread(`found ${describe(text)}; expected a length of more than nothing, as 51 in`);
  return length;
}

function isBlank(given: Given): boolean {
  return typeof given === 'string' && given.trim() === '';
}
