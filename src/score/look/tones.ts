import { scratch } from '../../cloth/scratch.js';
import type { LocalLight } from './local-light.js';

/** Which cells of a cloth are dark and which are light, pick by pick, a bit for each end. */
export interface Tones {
  /** Words of 32 bits to a pick; the first end is the lowest bit of the first. Bits beyond the last end are 0. */
  readonly words: number;
  readonly dark: Int32Array;
  readonly light: Int32Array;
}

const roomForDark = scratch(Int32Array);
const roomForLight = scratch(Int32Array);

/**
 * Finds the cells whose light is less than `below`, and those where it is more than `above`. They are overwritten by the
 * next.
 */
export function tonesOf(of: LocalLight, below: number, above: number): Tones {
  const { ends, picks, everyEnd, everyPick, byEnds, byPicks } = of;
  const words = (ends + 31) >> 5;
  const dark = roomForDark(words * picks);
  const light = roomForLight(words * picks);
  for (let j = 0, from = 0, to = 0, ofPick = 0; j < picks; j++, from += ends, ofPick += everyEnd) {
    if (from === everyPick * ends) from = 0;
    for (let first = 0, x = 0; first < ends; first += 32, to++) {
      const here = Math.min(32, ends - first);
      let isDark = 0;
      let isLight = 0;
      for (let bit = 0; bit < here; bit++) {
        const place = byEnds[from + first + bit]! + byPicks[ofPick + x]!;
        // Without a branch, which would often be guessed wrong.
        isDark |= Number(place < below) << bit;
        isLight |= Number(place > above) << bit;
        if (++x === everyEnd) x = 0;
      }
      dark[to] = isDark;
      light[to] = isLight;
    }
  }
  return { words, dark, light };
}
