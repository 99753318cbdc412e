/** Invisible characters that change the direction of text or end a line, as part of a character class. */
export const TURNING = '\\u061c\\u200e\\u200f\\u2028-\\u202e\\u2066-\\u2069\\ufeff';
const UNSEEN = new RegExp(`[\\p{Cc}${TURNING}]+`, 'gu');

/** A text on one line, without characters that control a terminal or turn the direction of text: spaces stand for them. */
export function seen(text: string): string {
  return text.replace(UNSEEN, ' ');
}
