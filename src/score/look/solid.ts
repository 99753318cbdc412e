import type { LocalLight } from './local-light.js';
import { tonesOf } from './tones.js';

/** A cell is solid where its blurred value is below the first, or above the second. */
const DARKER = 0.15;
const LIGHTER = 0.85;

/**
 * Shares of the face that are clearly dark and clearly light; the rest are half-tones. Motifs under about ten ends have
 * none.
 *
 * @param of values from 0 (dark) to 1 (light), gathered over two ends
 */
export function solidShares(of: LocalLight): { dark: number; light: number } {
  const { ends, picks } = of;
  const tones = tonesOf(of, DARKER, LIGHTER);
  let dark = 0;
  let light = 0;
  for (let at = 0; at < tones.dark.length; at++) {
    // Most words are empty.
    if (tones.dark[at] !== 0) dark += bitsIn(tones.dark[at]!);
    if (tones.light[at] !== 0) light += bitsIn(tones.light[at]!);
  }
  return { dark: dark / (ends * picks), light: light / (ends * picks) };
}

/** How many bits of a word are 1, added up in pairs, fours and eights. */
function bitsIn(word: number): number {
  const pairs = word - ((word >>> 1) & 0x55555555);
  const fours = (pairs & 0x33333333) + ((pairs >>> 2) & 0x33333333);
  return Math.imul((fours + (fours >>> 4)) & 0x0f0f0f0f, 0x01010101) >>> 24;
}

/** Twice the smaller of the clearly dark and the clearly light share: 0 for a cloth with only one of the two. */
export function solidShare(of: LocalLight): number {
  const shares = solidShares(of);
  return 2 * Math.min(shares.dark, shares.light);
}
