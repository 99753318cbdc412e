import { scratch } from '../../cloth/scratch.js';
import type { LocalLight } from './local-light.js';

/**
 * Which cells of a cloth are dark and which are light, pick by pick, a bit for each end. Ends are grouped: every so many
 * ends are one group, so that end `i` is bit `i / groups` of group `i % groups`. Bits beyond the last end are 0.
 */
export interface Tones {
  readonly groups: number;
  /** Words of 32 bits to a group; the first end is the lowest bit of the first. */
  readonly words: number;
  /** `dark[(pick * groups + group) * words + word]` */
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
  const groups = of.order === undefined ? 1 : of.everyEnd;
  const words = (of.ends / groups + 31) >> 5;
  const dark = roomForDark(groups * words * of.picks);
  const light = roomForLight(groups * words * of.picks);
  if (of.order === undefined) compareCells(of, below, above, dark, light);
  else compareRanks(of, of.order, below, above, dark, light);
  return { groups, words, dark, light };
}

/** Compares the light of every cell. */
function compareCells(of: LocalLight, below: number, above: number, dark: Int32Array, light: Int32Array): void {
  const { ends, picks, everyEnd, everyPick, byEnds, byPicks } = of;
  for (let j = 0, place = 0, to = 0; j < picks; j++) {
    const from = place * ends;
    const ofPick = j * everyEnd;
    const isEven = ends > everyEnd && isBetween(of, place * everyEnd, ofPick, below, above);
    for (let first = 0, x = 0; first < ends; first += 32, to++) {
      const here = isEven ? 0 : Math.min(32, ends - first);
      let isDark = 0;
      let isLight = 0;
      for (let bit = 0; bit < here; bit++) {
        const cell = byEnds[from + first + bit]! + byPicks[ofPick + x]!;
        // Without a branch, which would often be guessed wrong.
        isDark |= Number(cell < below) << bit;
        isLight |= Number(cell > above) << bit;
        if (++x === everyEnd) x = 0;
      }
      dark[to] = isDark;
      light[to] = isLight;
    }
    if (++place === everyPick) place = 0;
  }
}

/** Whether all cells of a pick are neither dark nor light. */
function isBetween(of: LocalLight, line: number, ofPick: number, below: number, above: number): boolean {
  const { everyEnd, byPicks, leastEnds, mostEnds } = of;
  for (let x = 0; x < everyEnd; x++) {
    const pick = byPicks[ofPick + x]!;
    if (leastEnds[line + x]! + pick < below || mostEnds[line + x]! + pick > above) return false;
  }
  return true;
}

/**
 * The lighter a pick, the fewer ends at one place are dark under it, and the more are light. So the picks are gone through
 * in order, and each limit passes each end once.
 */
function compareRanks(
  { everyEnd, everyPick }: LocalLight,
  [ends, picks]: NonNullable<LocalLight['order']>,
  below: number,
  above: number,
  isDark: Int32Array,
  isLight: Int32Array,
): void {
  const { words, upTo, light } = ends;
  for (let line = 0, from = 0; line < everyPick; line++) {
    for (let x = 0; x < everyEnd; x++, from += ends.each + 1) {
      const last = from + ends.each;
      let dark = last;
      let notLight = last;
      const ofPicks = (x * everyPick + line) * (picks.each + 1);
      for (let k = ofPicks + 1; k <= ofPicks + picks.each; k++) {
        const pick = picks.light[k]!;
        while (!(light[dark]! + pick < below)) dark--;
        while (light[notLight]! + pick > above) notLight--;
        const to = (picks.threads[k]! * everyEnd + x) * words;
        for (let w = 0; w < words; w++) {
          isDark[to + w] = upTo[dark * words + w]!;
          isLight[to + w] = upTo[last * words + w]! ^ upTo[notLight * words + w]!;
        }
      }
    }
  }
}
