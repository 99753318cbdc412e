import { orList } from '../words/counts.js';
import { parseLength, parseShare } from '../words/measure.js';
import { describe, eachOf, LONGEST_NAME, nameOf, numberOf, textOf, wholeOf, wordOf } from './given.js';
import { type Key, type Kind, optional } from './key.js';
import { type Given, Misread } from './misread.js';

/** Spaces, commas and semicolons between the items of a list. */
export const SPACED = /[\s,;]+/;

/** A number written as text, for JSON Schema. */
const DIGITS = '^\\s*\\d+(\\.\\d+)?\\s*$';

/** A value whose reader needs its own words for messages. */
export function kind<T>(expected: string, read: (given: Given, expected: string) => T): Kind<T> {
  return { expected, read: (given) => read(given, expected) };
}

/** Any text. */
export const text = (expected: string): Kind<string> => ({
  ...kind(expected, textOf),
  schema: { type: ['string', 'number', 'boolean'], minLength: 1 },
});

/** The name of a person or thing, of at most 200 characters. */
export const name = (expected: string): Kind<string> => ({
  ...kind(expected, nameOf),
  schema: { type: ['string', 'number', 'boolean'], minLength: 1, maxLength: LONGEST_NAME },
});

/** A whole number within limits; `what` is their unit, `pieces`. */
export const whole = (what: string, least: number, most: number): Kind<number> => ({
  ...kind(`${what} from ${least} to ${most}`, (given, expected) => wholeOf(given, expected, least, most)),
  schema: { type: ['integer', 'string'], minimum: least, maximum: most, pattern: DIGITS },
});

/** A number within limits. */
export const number = (what: string, least: number, most: number): Kind<number> => ({
  ...kind(`${what} from ${least} to ${most}`, (given, expected) => numberOf(given, expected, least, most)),
  schema: { type: ['number', 'string'], minimum: least, maximum: most, pattern: DIGITS },
});

/** One of some words. */
export const word = <W extends string>(known: readonly W[]): Kind<W> => ({
  ...kind(orList(known), (given) => wordOf(given, known)),
  schema: { enum: known },
});

/** Some of some words, each once. */
export const words = <W extends string>(known: readonly W[]): Kind<W[]> => ({
  ...kind(orList(known), (given, expected) => [
    ...new Set(eachOf(given, expected, (each) => wordOf(each, known), SPACED)),
  ]),
  schema: { type: ['string', 'array'], minLength: 1, minItems: 1, items: { enum: known } },
});

/** Yes or no. */
export const yesNo: Kind<boolean> = {
  ...kind('yes or no', (given) => ['yes', 'true'].includes(wordOf(given, ['yes', 'no', 'true', 'false'] as const))),
  schema: { enum: ['yes', 'no', true, false, 'true', 'false'] },
};

/** The version of a file that shedlight itself writes; a file that a person writes has none. */
export const version = (now: number): Key<number | undefined> => {
  const read = (given: Given, expected: string): number => {
    const found = textOf(given, expected);
    if (found === expected) return now;
    throw new Misread(`found version ${describe(found)}; expected ${expected} (is shedlight older than it?)`);
  };
  return optional(
    { ...kind(String(now), read), schema: { enum: [now, String(now)] } },
    { about: 'version of this kind of file; shedlight writes it', example: String(now) },
  );
};

/** A length up to `most` metres, in millimetres; with `something`, more than none. */
export const length = (most: number, { something = false } = {}): Kind<number> =>
  kind(`a length such as 20 in or 50 cm, up to ${most} m`, (given, expected) => {
    const written = textOf(given, expected);
    const mm = parseLength(written);
    if (something && mm === 0)
      throw new Misread(`found ${describe(written)}; expected a length of more than nothing, such as 20 in`);
    if (mm > most * 1000) throw new Misread(`found ${describe(written)}; expected ${most} m at most`);
    return mm;
  });

/** A share in per cent, from 0 to below 0.9. */
export const share: Kind<number> = kind('per cent such as 8 %', (given, expected) =>
  parseShare(textOf(given, expected)),
);
