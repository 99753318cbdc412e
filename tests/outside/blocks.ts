import { type Drawdown, fromCells } from '../../src/cloth/drawdown.js';
import { type Face, faceFromRows } from '../../src/cloth/face.js';

/** Blocks are written as rows joined by `/`, first pick first; `#` is warp up or dark, `.` weft up or light. */
export const rowsOf = (block: string): string[] => block.split('/');

/** A block as a face: `#` dark (0), `.` light (1), `o` a third colour (2). */
export const faceOf = (block: string): Face => faceFromRows(rowsOf(block).map((row) => [...row].map(colourOf)));

/** A block as an interlacement: `#` warp up. */
export function weaveOf(block: string): Drawdown {
  const rows = rowsOf(block);
  return fromCells(rows[0]!.length, rows.length, (j, i) => rows[j]![i] === '#');
}

/** Palette index of a sign of a block, or of a letter of an order. */
export const colourOf = (sign: string): number => ({ '#': 0, D: 0, '.': 1, L: 1, o: 2, M: 2 })[sign]!;

/** Every block of two colours of this size, as rows of 0 and 1. */
export function* everyBlock(picks: number, ends: number): Generator<number[][]> {
  for (let bits = 0; bits < 2 ** (picks * ends); bits++) {
    yield Array.from({ length: picks }, (_, j) =>
      Array.from({ length: ends }, (__, i) => (bits >> (j * ends + i)) & 1),
    );
  }
}
