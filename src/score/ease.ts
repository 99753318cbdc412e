import type { Draft } from '../draft/draft.js';
import { shuttleOfPick } from '../draft/shuttles.js';
import type { Ease } from './model/figures.js';

/**
 * The longest colour order, in ends, that is wound with one end from each package at once (common practice, no source).
 */
export const TOGETHER_AT_MOST = 8;

/** What a cloth costs to weave, counted round one whole repeat. */
export function easeOf(draft: Draft): Ease {
  const { warp, weft, pickKinds, yarns } = draft;
  const shuttles: number[][] = [];
  shuttleOfPick(pickKinds, weft).forEach((shuttle, pick) => {
    shuttles[shuttle] ??= [];
    shuttles[shuttle].push(pick);
  });
  const ends: Record<string, number> = {};
  warp.forEach((yarn) => {
    const { letter } = yarns[yarn]!;
    ends[letter] = (ends[letter] ?? 0) + 1;
  });
  const warpChanges = changes(warp);
  return {
    warpChanges,
    ends: Object.fromEntries(yarns.filter((y) => ends[y.letter]).map((y) => [y.letter, ends[y.letter]!])),
    winding: windings(warpChanges, warp.length),
    shuttles: shuttles.length,
    weftChanges: changes(weft),
    longestCarry: shuttles.length === 1 ? 0 : Math.max(...shuttles.map((picks) => longestWait(picks, weft.length))),
    // Crossing the shed an even number of times a repeat brings a shuttle back to the side from which it set out.
    sameSide: shuttles.length === 1 || shuttles.every((picks) => picks.length % 2 === 0),
  };
}

/** Counts neighbouring threads of different colour, round the repeat. */
export function changes(colours: ArrayLike<number>): number {
  let count = 0;
  for (let s = 0, before = colours[colours.length - 1]; s < colours.length; before = colours[s++]) {
    if (colours[s] !== before) count++;
  }
  return count;
}

/** The ways to wind the warp, each with its knots per repeat, fewest first. */
function windings(warpChanges: number, ends: number): Ease['winding'] {
  const inOrder = { way: 'in order, changing at the pegs', knots: warpChanges };
  if (warpChanges === 0) return [inOrder];
  const together = ends <= TOGETHER_AT_MOST ? [{ way: 'several ends together', knots: 0 }] : [];
  return [{ way: 'a separate chain per colour', knots: 0 }, ...together, inOrder];
}

/** Most picks strictly between two uses of a shuttle, round the repeat. */
function longestWait(picks: readonly number[], all: number): number {
  return Math.max(...picks.map((pick, k) => (k === 0 ? pick + all - picks.at(-1)! : pick - picks[k - 1]!) - 1));
}
