/** A cell is solid where its blurred value is below the first, or above the second. */
const DARKER = 0.15;
const LIGHTER = 0.85;

/**
 * Shares of the face that are clearly dark and clearly light; the rest are half-tones. Motifs under about ten ends have
 * none.
 *
 * @param light values from 0 (dark) to 1 (light), gathered over two ends
 */
export function solidShares(light: ArrayLike<number>): { dark: number; light: number } {
  let dark = 0;
  let bright = 0;
  for (let at = 0; at < light.length; at++) {
    if (light[at]! < DARKER) dark++;
    else if (light[at]! > LIGHTER) bright++;
  }
  return { dark: dark / light.length, light: bright / light.length };
}

/** Twice the smaller of the clearly dark and the clearly light share: 0 for a cloth with only one of the two. */
export function solidShare(light: ArrayLike<number>): number {
  const shares = solidShares(light);
  return 2 * Math.min(shares.dark, shares.light);
}
