// The niche of a cloth cell by cell, and the best of each niche, from the definitions in words.
import { type Cells, symmetry } from './symmetry.js';

const columnsOf = (cells: Cells): Cells => cells[0]!.map((_, i) => cells.map((row) => row[i]!));

/** The fewest lines after which all begin again. */
const repeatOf = (lines: Cells): number => {
  let n = 1;
  while (lines.some((line, k) => line.join() !== lines[(k + n) % lines.length]!.join())) n++;
  return n;
};

interface NicheAsked {
  /** Lightness of each yarn, from 0 to 1. */
  readonly values: ArrayLike<number>;
  /** Whether dark and light may change places. */
  readonly exchange: boolean;
  /** Whether ends and picks lie equally close. */
  readonly square: boolean;
}

/** The number of the niche: size in doublings, then tenths of dark, then quarters of symmetry. */
export function nicheOfCells(cells: Cells, { values, exchange, square }: NicheAsked): number {
  const longer = Math.max(repeatOf(cells), repeatOf(columnsOf(cells)));
  let doublings = 0;
  while (doublings < 11 && 2 ** doublings < longer) doublings++;
  const yarns = cells.flat();
  const [one, other, ...more] = [...new Set(yarns)];
  const isPair = exchange && other !== undefined && more.length === 0;
  const all = yarns.length;
  const ones = yarns.filter((yarn) => yarn === one).length;
  const dark = yarns.reduce((sum, yarn) => sum + 1 - values[yarn]!, 0);
  const share = isPair ? Math.min(ones, all - ones) / all : dark / all;
  // A billionth is no difference.
  const tenths = [1, 2, 3, 4, 5, 6, 7, 8, 9].filter((tenth) => share >= tenth / 10 - 5e-10).length;
  return doublings * 50 + tenths * 5 + 4 * symmetry(cells, square).symmetry;
}

/** Of a ranking, those before which none of the same niche stands. */
export const firstOfEachNiche = <T extends { readonly niche: number }>(ranking: readonly T[]): T[] =>
  ranking.filter(({ niche }, place) => ranking.slice(0, place).every((before) => before.niche !== niche));
