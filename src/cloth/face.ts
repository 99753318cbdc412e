import type { Drawdown } from './drawdown.js';

/**
 * The coloured face of one whole repeat, stored by kinds of rows and columns: `colour[rowKind * columnKinds +
 * columnKind]` is the palette index seen there. All kinds of row differ from one another, and so do all kinds of
 * column. Kinds are numbered in order of first appearance. Two faces are therefore the same exactly when all their
 * fields are.
 */
export interface Face {
  readonly ends: number;
  readonly picks: number;
  /** Kind of row that each pick shows. */
  readonly row: Uint16Array;
  /** Kind of column that each end shows. */
  readonly column: Uint16Array;
  readonly rowKinds: number;
  readonly columnKinds: number;
  readonly colour: Uint8Array;
}

/** Palette index on the face at pick `j`, end `i`. */
export function colourAt(face: Face, j: number, i: number): number {
  return face.colour[face.row[j]! * face.columnKinds + face.column[i]!]!;
}

/**
 * Lays warp and weft colours on an interlacement. The colour lists may be longer than the interlacement's repeat (a
 * whole multiple of it); their lengths are the repeat of the face.
 */
export function colourFace(cloth: Drawdown, warp: ArrayLike<number>, weft: ArrayLike<number>): Face {
  const ends = warp.length;
  const picks = weft.length;
  const column = strandKinds(cloth.endKind, warp);
  const row = strandKinds(cloth.pickKind, weft);
  const columns = column.weave.length;
  const rows = row.weave.length;
  const colour = new Uint8Array(rows * columns);
  for (let r = 0; r < rows; r++) {
    const up = row.weave[r]! * cloth.endKinds;
    const weftColour = row.colour[r]!;
    for (let c = 0; c < columns; c++) {
      colour[r * columns + c] = cloth.up[up + column.weave[c]!] === 1 ? column.colour[c]! : weftColour;
    }
  }
  return mergeEqual(ends, picks, row.kind, column.kind, rows, columns, colour);
}

/** A face known cell by cell: rows of palette indices, first pick first. */
export function faceFromRows(cells: readonly ArrayLike<number>[]): Face {
  const picks = cells.length;
  const ends = cells[0]?.length ?? 0;
  const colour = new Uint8Array(picks * ends);
  for (let j = 0; j < picks; j++) for (let i = 0; i < ends; i++) colour[j * ends + i] = cells[j]![i]!;
  const row = Uint16Array.from({ length: picks }, (_, j) => j);
  const column = Uint16Array.from({ length: ends }, (_, i) => i);
  return mergeEqual(ends, picks, row, column, picks, ends, colour);
}

/**
 * Gives strands with the same interlacement and colour the same kind; kinds are numbered in order of first appearance.
 */
function strandKinds(
  weave: Uint16Array,
  colours: ArrayLike<number>,
): { kind: Uint16Array; weave: number[]; colour: number[] } {
  const known = new Map<number, number>();
  const kind = new Uint16Array(colours.length);
  const ofWeave: number[] = [];
  const ofColour: number[] = [];
  for (let s = 0, w = 0; s < colours.length; s++, w++) {
    if (w === weave.length) w = 0;
    const sign = weave[w]! * 256 + colours[s]!;
    let number = known.get(sign);
    if (number === undefined) {
      number = ofWeave.length;
      known.set(sign, number);
      ofWeave.push(weave[w]!);
      ofColour.push(colours[s]!);
    }
    kind[s] = number;
  }
  return { kind, weave: ofWeave, colour: ofColour };
}

/** Merges the kinds of rows, and of columns, that look the same all along, as those of a hairline do. */
function mergeEqual(
  ends: number,
  picks: number,
  row: Uint16Array,
  column: Uint16Array,
  rows: number,
  columns: number,
  colour: Uint8Array,
): Face {
  const newRow = new Uint16Array(rows);
  const keptRows: number[] = [];
  for (let r = 0; r < rows; r++) {
    let same = keptRows.findIndex((k) => {
      for (let c = 0; c < columns; c++) if (colour[k * columns + c] !== colour[r * columns + c]) return false;
      return true;
    });
    if (same < 0) same = keptRows.push(r) - 1;
    newRow[r] = same;
  }
  const newColumn = new Uint16Array(columns);
  const keptColumns: number[] = [];
  for (let c = 0; c < columns; c++) {
    let same = keptColumns.findIndex((k) => keptRows.every((r) => colour[r * columns + k] === colour[r * columns + c]));
    if (same < 0) same = keptColumns.push(c) - 1;
    newColumn[c] = same;
  }
  const merged = new Uint8Array(keptRows.length * keptColumns.length);
  keptRows.forEach((r, a) => {
    keptColumns.forEach((c, b) => {
      merged[a * keptColumns.length + b] = colour[r * columns + c]!;
    });
  });
  return {
    ends,
    picks,
    row: row.map((r) => newRow[r]!),
    column: column.map((c) => newColumn[c]!),
    rowKinds: keptRows.length,
    columnKinds: keptColumns.length,
    colour: merged,
  };
}
