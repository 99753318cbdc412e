import { didYouMean, nearestFirst, nearestWord, Problem, quote } from '../problem.js';
import { andList, orList } from '../words/counts.js';
import { seen } from '../words/seen.js';
import { describe, type Given, Misread } from './misread.js';

export { describe, type Given, Misread, type Path, type Spot } from './misread.js';

/** Most characters of a name: more than fit any sheet. */
export const LONGEST_NAME = 200;

/** Runs a reader for the value under a key; a Misread that it throws gets the key put before its path. */
export function under<T>(key: string | number, read: () => T): T {
  try {
    return read();
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    const { within = [], ...spot } = error instanceof Misread ? error.spot : {};
    throw new Misread(error.message, { ...spot, within: [key, ...within] });
  }
}

/** Whether a value consists of keys with values. */
export function isKeys(given: Given): given is { readonly [key: string]: Given } {
  return typeof given === 'object' && !Array.isArray(given);
}

/** The text of a single value. */
export function textOf(given: Given, expected: string): string {
  if (typeof given !== 'string' || given.trim() === '')
    throw new Misread(`found ${describe(given)}; expected ${expected}`);
  return given.trim();
}

/** A name of at most {@link LONGEST_NAME} characters, which can be printed anywhere. */
export function nameOf(given: Given, expected: string): string {
  const text = textOf(seen(textOf(given, expected)), expected);
  const letters = [...text].length;
  if (letters > LONGEST_NAME) {
    throw new Misread(`found a name of ${letters} letters; expected ${LONGEST_NAME} at most`);
  }
  return text;
}

/** A decimal number within limits, as `20` or `7.5`. */
export function numberOf(given: Given, expected: string, least: number, most: number): number {
  const text = textOf(given, expected);
  const number = /^\d+(\.\d+)?$/.test(text) ? Number(text) : Number.NaN;
  if (!(number >= least && number <= most)) throw new Misread(`found ${describe(text)}; expected ${expected}`);
  return number;
}

/** A whole number within limits. */
export function wholeOf(given: Given, expected: string, least: number, most: number): number {
  const number = numberOf(given, expected, least, most);
  if (!Number.isInteger(number)) throw new Misread(`found ${describe(given)}; expected ${expected}`);
  return number;
}

/** Most words that a message lists. */
export const MOST_LISTED = 8;

/**
 * What was expected in place of an unknown word: all known words if they are few, else the near one or, where none is
 * near, the nearest three.
 */
export function expectedAmong(word: string, known: readonly string[], what: string): string {
  if (known.length <= MOST_LISTED) return `expected ${orList(known)}${didYouMean(word, known)}`;
  const near = nearestWord(word, known);
  const nearest =
    near === undefined
      ? `the nearest are ${andList(nearestFirst(word, known).slice(0, 3).map(quote))}`
      : `the nearest is ${quote(near)}`;
  return `expected ${what}; ${nearest} (the reference lists all)`;
}

/** One of the known words. */
export function wordOf<W extends string>(given: Given, known: readonly W[]): W {
  const text = textOf(given, orList(known)).toLowerCase();
  const word = known.find((each) => each.toLowerCase() === text);
  if (word === undefined) {
    throw new Misread(`found ${describe(given)}; expected ${orList(known)}${didYouMean(text, known)}`);
  }
  return word;
}

/** Reads every item of a list, or of a text split at `apart` (commas and semicolons by default); at least one. */
export function eachOf<T>(given: Given, expected: string, read: (item: Given) => T, apart = /[,;]/): T[] {
  const items =
    typeof given === 'string'
      ? textOf(given, expected)
          .split(apart)
          .filter((part) => part.trim() !== '')
      : given;
  if (!Array.isArray(items) || items.length === 0) throw new Misread(`found ${describe(given)}; expected ${expected}`);
  return items.map((item: Given, place) => (typeof given === 'string' ? read(item) : under(place, () => read(item))));
}
