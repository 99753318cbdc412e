import type { LocalLight } from './local-light.js';
import { bitCount, tonesOf } from './tones.js';

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
  const { dark, light } = tonesOf(of, DARKER, LIGHTER);
  const cells = of.ends * of.picks;
  return { dark: bitCount(dark) / cells, light: bitCount(light) / cells };
}

/** Twice the smaller of the clearly dark and the clearly light share: 0 for a cloth with only one of the two. */
export function solidShare(of: LocalLight): number {
  const shares = solidShares(of);
  return 2 * Math.min(shares.dark, shares.light);
}
