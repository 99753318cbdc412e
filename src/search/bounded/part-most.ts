import { PART } from '../../score/parts/parts.js';

/** A variance below this may be that of an even face, whose figure is 0; a little more than its limit, for rounding. */
const EVEN = 1.1e-6;

/**
 * The most that figure and figured can be, of the variances of the little-blurred face, of its row means and of its
 * column means.
 */
export function figureMost(all: number, rows: number, columns: number): { figure: number; figured: number } {
  if (all < EVEN) return { figure: 1, figured: 1 };
  const figure = Math.min(1, Math.max(0, 1 - (rows + columns) / all));
  return { figure, figured: PART.figured.of({ figure } as never) };
}

/** The most that `solid` can be, of the variance of the face that is gathered over two ends. */
export function solidMost(variance: number): number {
  return Math.min(1, Math.max(0, variance) / 0.35 ** 2);
}

/**
 * The most that calm and lively can be, of the share of light cells and the shares of neighbours, across and down, of
 * which one is light and one is dark.
 */
export function busyMost(light: number, across: number, down: number): { calm: number; lively: number } {
  const one = entropy(light) + entropy(1 - light);
  const a = pairEntropy(light, across);
  const d = pairEntropy(light, down);
  // A patch holds each pair, and is known once one pair is and what follows from either of its cells.
  const [least, most] = [Math.max(a, d), Math.min(4, a + 2 * (d - one), d + 2 * (a - one))];
  return { calm: 1 - least / 8, lively: (most / 4 + 1) / 2 };
}

/** Bits of a pair of neighbours. */
function pairEntropy(light: number, differ: number): number {
  return entropy(light - differ / 2) + entropy(1 - light - differ / 2) + 2 * entropy(differ / 2);
}

function entropy(share: number): number {
  return share <= 0 ? 0 : -share * Math.log2(share);
}
