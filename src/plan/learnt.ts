import * as v from 'valibot';
import { type Given, keys, Misread, numberOf, readAs, reading, textOf, under, wholeOf } from '../draft/yaml-given.js';
import { check, parseSource } from '../draft/yaml-source.js';
import { parseLength } from './measure.js';
import type { Needs } from './needs.js';

/** What one woven piece turned out to be. Lengths in millimetres; what was not written down is absent. */
export interface Result {
  readonly code: string;
  readonly ends?: number;
  readonly width?: number;
  /** Warp that the piece used, length off the loom, and after finishing. */
  readonly warpUsed?: number;
  readonly offLoom?: number;
  readonly finished?: number;
  /** Picks in the measure of the sett. */
  readonly picks?: number;
  readonly stars?: number;
  readonly howFinished?: string;
  readonly changed?: string;
}

/** What results say of the next plan. Absent where nothing was written down that says it. */
export interface Learnt {
  readonly takeUp?: number;
  readonly shrinkage?: number;
  readonly picks?: number;
}

const length = v.optional(
  reading((given): number | undefined =>
    isBlank(given) ? undefined : lengthOf(textOf(given, 'a length such as 51 in')),
  ),
);
const words = v.optional(reading((given) => (isBlank(given) ? undefined : textOf(given, 'some words'))));
const number = (what: string, most: number) =>
  v.optional(reading((given) => (isBlank(given) ? undefined : numberOf(given, what, 0, most))));

const resultKeys = keys({
  code: reading((given) => {
    const code = textOf(given, 'a code as on the sheet');
    if (!/^[0-9a-z]{1,64}$/.test(code)) throw new Misread(`found “${code}”; expected a code as on the sheet`);
    return code;
  }),
  recipe: words,
  ends: number('a number of ends', 100_000),
  width: length,
  'warp used': length,
  'off the loom': length,
  finished: length,
  picks: number('picks to the inch or centimetre', 400),
  stars: v.optional(reading((given) => (isBlank(given) ? undefined : wholeOf(given, 'stars from 0 to 5', 0, 5)))),
  'how finished': words,
  changed: words,
});

/**
 * Reads results that a person typed back (YAML: `results:` with a list). Blanks are left out.
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

/** A form to fill in: one block of blanks for each cloth, its code and recipe filled in. */
export function resultsForm(cloths: readonly { readonly code: string; readonly recipe: string }[]): string {
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
  const blocks = cloths.map(({ code, recipe }) =>
    [`  - code: ${code}`, `    recipe: ${JSON.stringify(recipe)}`, ...blanks.map((blank) => `    ${blank}:`)].join(
      '\n',
    ),
  );
  return [
    '# Fill in what you found; leave the rest blank. Lengths as 51 in or 130 cm, picks to the inch or',
    '# centimetre as the sett is counted, stars from 0 to 5. `shedlight plan --learnt` reads this file, and',
    '# `shedlight explore --done` with the shortlist beside it leaves out what was woven.',
    'results:',
    ...blocks,
    '',
  ].join('\n');
}

/**
 * Take-up, shrinkage and picks that results show: take-up = 1 − off loom / warp used, shrinkage = 1 − finished / off
 * loom, each over all lengths together, so that a long piece counts for more; picks are averaged.
 */
export function learntFrom(results: readonly Result[]): Learnt {
  const loss = (whole: 'warpUsed' | 'offLoom', left: 'offLoom' | 'finished'): number | undefined => {
    const both = results.filter((result) => result[whole] !== undefined && result[left] !== undefined);
    const of = both.reduce((sum, result) => sum + result[whole]!, 0);
    const to = both.reduce((sum, result) => sum + result[left]!, 0);
    // Cloth that grew is a slip of the pen, or of the tape; it must not lengthen every warp to come.
    return of > 0 && to <= of && to > of * 0.1 ? 1 - to / of : undefined;
  };
  const counted = results.flatMap(({ picks }) => (picks === undefined || picks === 0 ? [] : [picks]));
  const takeUp = loss('warpUsed', 'offLoom');
  const shrinkage = loss('offLoom', 'finished');
  return {
    ...(takeUp !== undefined && { takeUp }),
    ...(shrinkage !== undefined && { shrinkage }),
    ...(counted.length > 0 && { picks: counted.reduce((sum, picks) => sum + picks, 0) / counted.length }),
  };
}

/** A plan's needs with what was learnt in the place of the usual figures. */
export function corrected(needs: Needs, learnt: Learnt): Needs {
  const { takeUp = needs.takeUp, shrinkage = needs.shrinkage } = learnt;
  return { ...needs, takeUp, shrinkage, ...(learnt.picks !== undefined && { picks: learnt.picks }) };
}

function resultOf(given: v.InferOutput<typeof resultKeys>): Result {
  const { code, ends, width, finished, picks, stars, changed } = given;
  const read = {
    ends,
    width,
    warpUsed: given['warp used'],
    offLoom: given['off the loom'],
    finished,
    picks,
    stars,
    howFinished: given['how finished'],
    changed,
  };
  return { code, ...Object.fromEntries(Object.entries(read).filter(([, value]) => value !== undefined)) };
}

function lengthOf(text: string): number {
  try {
    return parseLength(text);
  } catch (error) {
    throw new Misread((error as Error).message);
  }
}

function isBlank(given: Given): boolean {
  return typeof given === 'string' && given.trim() === '';
}
