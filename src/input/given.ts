import * as v from 'valibot';
import { didYouMean, Problem } from '../problem.js';
import { orList } from '../words/counts.js';
import { describe, type Given, Misread } from './misread.js';

export { describe, type Given, Misread, type Path, type Spot } from './misread.js';

/** Most characters of a name: more than fit any sheet. */
export const LONGEST_NAME = 200;

/** Makes a schema from a function that reads a value or throws a Problem. */
export function reading<T>(read: (given: Given) => T): v.GenericSchema<unknown, T> {
  return v.pipe(
    v.unknown(),
    v.rawTransform<unknown, T>(({ dataset, addIssue, NEVER }) => {
      try {
        return read(dataset.value as Given);
      } catch (error) {
        if (!(error instanceof Problem)) throw error;
        addIssue({ message: error.message, input: error });
        return NEVER;
      }
    }),
  );
}

/**
 * Makes a schema for keys with values, which refuses unknown and missing keys. Optional keys are schemas in v.optional.
 */
export function keys<const E extends v.ObjectEntries>(
  entries: E,
): v.GenericSchema<unknown, v.InferOutput<v.StrictObjectSchema<E, undefined>>> {
  const known = Object.keys(entries);
  const needed = known.filter((key) => entries[key]!.type !== 'optional');
  return v.pipe(
    reading<unknown>((given) => {
      if (!isKeys(given)) throw new Misread(`found ${describe(given)}; expected ${orList(known)}, each with its value`);
      for (const key of Object.keys(given)) {
        if (known.includes(key)) continue;
        const hint = didYouMean(key, known);
        throw new Misread(`found the unknown key ${describe(key)}; expected ${orList(known)}${hint}`, {
          within: [key],
          key: true,
        });
      }
      const missing = needed.find((key) => !Object.hasOwn(given, key));
      if (missing !== undefined) throw new Misread(`found no “${missing}”; expected it among the keys`);
      return given;
    }),
    v.strictObject(entries),
  );
}

/** Reads a value by its schema; throws its first fault as a Misread. */
export function readAs<S extends v.GenericSchema>(schema: S, given: Given): v.InferOutput<S> {
  const result = v.safeParse(schema, given, { abortEarly: true });
  if (result.success) return result.output;
  const issue: v.BaseIssue<unknown> = result.issues[0];
  const { within = [], ...spot } = issue.input instanceof Misread ? issue.input.spot : {};
  const above = (issue.path ?? []).map((step) => step.key as string | number);
  throw new Misread(issue.message, { ...spot, within: [...above, ...within] });
}

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

/** A name of at most {@link LONGEST_NAME} characters. */
export function nameOf(given: Given, expected: string): string {
  const text = textOf(given, expected);
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
