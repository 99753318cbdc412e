import { describe, Misread, textOf, wholeOf } from '../../input/given.js';
import { kind } from '../../input/kinds.js';
import { parseLength } from '../../words/measure.js';

/** The longest float allowed: in threads, or in millimetres. */
export type FloatLimit = { readonly threads: number } | { readonly mm: number };

/** A float limit: `7` (threads), `1/2 in`, `1 1/2 in`, `0.5 in`, `10 mm`, `3/8"`. */
export const FLOAT_LIMIT = kind('a float such as 7 (threads), 1/2 in or 10 mm', (given, expected): FloatLimit => {
  const text = textOf(given, expected);
  if (/^\d+$/.test(text)) return { threads: wholeOf(text, expected, 1, 2000) };
  const mm = millimetresOf(text);
  if (!(mm > 0 && mm <= 10_000)) throw new Misread(`found ${describe(text)}; expected ${expected}`);
  return { mm };
});

/** A length in millimetres; NaN for anything else, so that the message is that of a float. */
function millimetresOf(text: string): number {
  try {
    return /(?:mm|cm|in|inch|inches|["″])$/.test(text) ? parseLength(text) : Number.NaN;
  } catch {
    return Number.NaN;
  }
}
