/** Blur in which solid areas and their edges are judged, in ends. */
export const AREA_SIGMA = 2;
/** A place is solid where what the eye gathers is darker, or lighter, than this. */
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

/** Clearly dark areas and clearly light ones beside them: twice the smaller of the two shares, so that a ground alone is none. */
export function solidPart(light: ArrayLike<number>): number {
  const shares = solidShares(light);
  return 2 * Math.min(shares.dark, shares.light);
}
