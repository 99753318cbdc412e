import { describe, Misread, textOf, wholeOf } from '../../input/given.js';
import { kind } from '../../input/kinds.js';
import { INCH } from '../../words/measure.js';

/** The longest float allowed: in threads, or in millimetres. */
export type FloatLimit = { readonly threads: number } | { readonly mm: number };

/** Millimetres in the units in which a float limit may be given. */
const MILLIMETRES: Readonly<Record<string, number>> = { mm: 1, cm: 10, in: INCH, inch: INCH, inches: INCH };

/** A float limit: `7` (threads), `1/2 in`, `1 1/2 in`, `0.5 in`, `10 mm`. */
export const FLOAT_LIMIT = kind('a float such as 7 (threads), 1/2 in or 10 mm', (given, expected): FloatLimit => {
  const text = textOf(given, expected);
  if (/^\d+$/.test(text)) return { threads: wholeOf(text, expected, 1, 2000) };
  const found = /^(?:(\d{1,4}(?:\.\d+)?)|(?:(\d{1,4})\s+)?(\d{1,4})\/(\d{1,4}))\s*(mm|cm|in|inch|inches)$/.exec(text);
  if (found === null) throw new Misread(`found ${describe(text)}; expected ${expected}`);
  const [, decimal, whole = '0', above, below, unit] = found;
  const count = decimal === undefined ? Number(whole) + Number(above) / Number(below) : Number(decimal);
  const mm = count * MILLIMETRES[unit!]!;
  if (!(mm > 0 && mm <= 10_000)) throw new Misread(`found ${describe(text)}; expected ${expected}`);
  return { mm };
});
