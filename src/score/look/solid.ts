import type { LocalLight } from './local-light.js';

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
  const { ends, picks, everyEnd, everyPick, byEnds, byPicks, leastEnds, mostEnds } = of;
  let dark = 0;
  let light = 0;
  for (let j = 0, line = 0; j < picks; j++) {
    const ofPick = j * everyEnd;
    let least = Number.POSITIVE_INFINITY;
    let most = Number.NEGATIVE_INFINITY;
    for (let x = 0; x < everyEnd; x++) {
      least = Math.min(least, leastEnds[line * everyEnd + x]! + byPicks[ofPick + x]!);
      most = Math.max(most, mostEnds[line * everyEnd + x]! + byPicks[ofPick + x]!);
    }
    // Most picks of a small motif have half-tones alone.
    if (least < DARKER || most > LIGHTER) {
      for (let i = 0, x = 0, from = line * ends; i < ends; i++) {
        const place = byEnds[from + i]! + byPicks[ofPick + x]!;
        dark += Number(place < DARKER);
        light += Number(place > LIGHTER);
        if (++x === everyEnd) x = 0;
      }
    }
    if (++line === everyPick) line = 0;
  }
  return { dark: dark / (ends * picks), light: light / (ends * picks) };
}

/** Twice the smaller of the clearly dark and the clearly light share: 0 for a cloth with only one of the two. */
export function solidShare(of: LocalLight): number {
  const shares = solidShares(of);
  return 2 * Math.min(shares.dark, shares.light);
}
