import { EVEN_WIDTHS, type Weave } from '../draft/draft.js';
import { LONGEST_DRAFT, MOST_SHAFTS, MOST_TREADLES } from '../draft/limits.js';
import { oneRepeat } from '../draft/shortest-repeat.js';
import { Problem, quote } from '../problem.js';
import { type Drawdown, fromCells } from './drawdown.js';

/** Cells of a cloth: one row a pick, the first pick first; 1 where the end lies on the face. */
export type Cells = readonly Uint8Array[];

const UP = '#1xX█■';
const DOWN = '.0-_·□';

/**
 * Finds threading, tie-up and treadling of a cloth known only by its cells, with the fewest shafts and treadles. The
 * result is exact for one shaft per end and one treadle per pick: equal ends can share a shaft and different ends
 * cannot, and the same holds for picks and treadles. Shafts and treadles are numbered in order of first use; a cloth
 * that repeats is reduced to one repeat.
 *
 * @throws Problem if the cloth needs more shafts or treadles than shedlight reads and writes
 */
export function factor(cells: Cells): Weave {
  const whole = fromCells(cells[0]!.length, cells.length, (j, i) => cells[j]![i] === 1);
  const ends = oneRepeat([...whole.endKind]);
  const picks = oneRepeat([...whole.pickKind]);
  refuseBeyond(whole.endKinds, MOST_SHAFTS, 'different ends, as many shafts');
  refuseBeyond(whole.pickKinds, MOST_TREADLES, 'different picks, as many treadles');
  return {
    threading: Array.from(ends, (kind) => [kind + 1]),
    tieUp: Array.from({ length: whole.pickKinds }, (_, pick) => raised(whole, pick)),
    treadling: Array.from(picks, (kind) => [kind + 1]),
    pickKinds: Array.from(picks, () => 'ground'),
    endUnits: Array.from(ends, () => 1),
    pickUnits: Array.from(picks, () => 1),
    widths: EVEN_WIDTHS,
  };
}

/**
 * Reads cells written in rows, the first pick first: `#`, `1`, `x` or a full block where the end lies on the face,
 * `.`, `0`, `-` or an empty block where the pick does. Spaces in a row, empty rows and rows that begin with `;` are
 * passed over.
 *
 * @throws Problem with row and place of a character that is no cell, or with the row whose length differs from the
 *   first
 */
export function cellsFromText(text: string): Cells {
  const rows: Uint8Array[] = [];
  let number = 0;
  for (const line of text.split(/\r\n|\n|\r/)) {
    number++;
    const written = line.replace(/\s+/g, '');
    if (written === '' || written.startsWith(';')) continue;
    const row = rowOf(written, number);
    const wanted = rows[0]?.length ?? row.length;
    if (row.length !== wanted) {
      throw new Problem(`line ${number}: found ${row.length} cells; expected ${wanted}, as in the first row`);
    }
    rows.push(row);
    refuseBeyond(rows.length, LONGEST_DRAFT, 'picks');
  }
  if (rows.length === 0) throw new Problem('found no cells; expected rows as #.#. with # where the warp is up');
  return rows;
}

/** Throws a Problem if a count is above its limit; the wording is the same everywhere. */
export function refuseBeyond(count: number, most: number, what: string): void {
  if (count > most) throw new Problem(`found ${count} ${what}; expected ${most} at most`);
}

function rowOf(written: string, line: number): Uint8Array {
  refuseBeyond(written.length, LONGEST_DRAFT, 'ends');
  return Uint8Array.from(written, (sign, place) => {
    if (UP.includes(sign)) return 1;
    if (DOWN.includes(sign)) return 0;
    throw new Problem(
      `line ${line}: found ${quote(sign)} at place ${place + 1}; expected # where the warp is up, else .`,
    );
  });
}

/** Shafts that a kind of pick raises. */
function raised({ up, endKinds }: Drawdown, pick: number): number[] {
  return Array.from({ length: endKinds }, (_, end) => end + 1).filter((end) => up[pick * endKinds + end - 1] === 1);
}
