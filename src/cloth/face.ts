import type { Drawdown } from './drawdown.js';
import { merger } from './merge.js';
import { type Rooms, scratch } from './scratch.js';

/**
 * The coloured face of one whole repeat, stored by kinds of rows and columns: `colour[rowKind * columnKinds +
 * columnKind]` is the palette index seen there. All kinds of row differ from one another, and so do all kinds of
 * column. Kinds are numbered in order of first appearance. Two faces are therefore the same exactly when all their
 * fields are (but for their rooms).
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
  /** In a search, where users keep what they compute from the word of rows alone; and of columns. */
  readonly rowRooms?: Rooms | undefined;
  readonly columnRooms?: Rooms | undefined;
}

/** Palette index on the face at pick `j`, end `i`. */
export function colourAt(face: Face, j: number, i: number): number {
  return face.colour[face.row[j]! * face.columnKinds + face.column[i]!]!;
}

/**
 * The ends, or the picks, of one whole repeat in their colours, by kinds: threads of one interlacement and one colour.
 */
export interface Threads {
  /** Kind of each thread, numbered in order of first appearance. */
  readonly kind: Uint16Array;
  /** Of each kind, its kind of end (pick) in the drawdown. */
  readonly weave: readonly number[];
  /** Of each kind, its palette index. */
  readonly colour: readonly number[];
  /** Where users keep what they compute from the word of kinds alone; absent where it is used but once. */
  readonly rooms?: Rooms;
}

/** A cloth in its colours, before it is looked at: its interlacement, its ends, its picks. */
export interface Woven {
  readonly cloth: Drawdown;
  readonly ends: Threads;
  readonly picks: Threads;
}

/** Warp and weft colours on an interlacement, as {@link colourFace} takes them. */
export function woven(cloth: Drawdown, warp: ArrayLike<number>, weft: ArrayLike<number>): Woven {
  return { cloth, ends: strandKinds(cloth.endKind, warp), picks: strandKinds(cloth.pickKind, weft) };
}

/**
 * Lays warp and weft colours on an interlacement. The colour lists may be longer than the interlacement's repeat (a
 * whole multiple of it); their lengths are the repeat of the face.
 */
export function colourFace(cloth: Drawdown, warp: ArrayLike<number>, weft: ArrayLike<number>): Face {
  return faceMaker()(woven(cloth, warp, weft));
}

/** Makes faces of ends and picks known by their kinds. The colours of each face are overwritten by the next. */
export function faceMaker(): (woven: Woven) => Face {
  const room = scratch(Uint8Array);
  const mergeEqual = faceMerger();
  return ({ cloth, ends, picks }) => {
    const columns = ends.weave.length;
    const rows = picks.weave.length;
    const colour = room(rows * columns);
    for (let r = 0, at = 0; r < rows; r++) {
      const up = picks.weave[r]! * cloth.endKinds;
      const weftColour = picks.colour[r]!;
      for (let c = 0; c < columns; c++, at++) {
        colour[at] = cloth.up[up + ends.weave[c]!] === 1 ? ends.colour[c]! : weftColour;
      }
    }
    return mergeEqual(ends, picks, columns, rows, colour);
  };
}

/** A face known cell by cell: one row of palette indices for each pick, one or more, first pick first. */
export function faceFromRows(cells: readonly ArrayLike<number>[]): Face {
  const picks = cells.length;
  const ends = cells[0]!.length;
  const colour = new Uint8Array(picks * ends);
  for (let j = 0; j < picks; j++) for (let i = 0; i < ends; i++) colour[j * ends + i] = cells[j]![i]!;
  const kind = (length: number): Uint16Array => Uint16Array.from({ length }, (_, s) => s);
  return faceMerger()({ kind: kind(ends) }, { kind: kind(picks) }, ends, picks, colour);
}

/** Merges the kinds of rows, and of columns, that look the same all along, as those of a hairline do. */
function faceMerger() {
  const room = scratch(Uint8Array);
  const mergeRows = merger();
  const mergeColumns = merger();
  type Word = Pick<Threads, 'kind' | 'rooms'>;
  return (ends: Word, picks: Word, columns: number, rows: number, colour: Uint8Array): Face => {
    const byRow = mergeRows(picks.kind, picks.rooms, colour, rows, columns, columns, 1);
    const byColumn = mergeColumns(ends.kind, ends.rooms, colour, columns, rows, 1, columns);
    const rowKinds = byRow === undefined ? rows : byRow.kept.length;
    const columnKinds = byColumn === undefined ? columns : byColumn.kept.length;
    let merged = colour;
    if (rowKinds < rows || columnKinds < columns) {
      merged = room(rowKinds * columnKinds);
      for (let a = 0, at = 0; a < rowKinds; a++) {
        const from = (byRow === undefined ? a : byRow.kept[a]!) * columns;
        for (let b = 0; b < columnKinds; b++, at++) {
          merged[at] = colour[from + (byColumn === undefined ? b : byColumn.kept[b]!)]!;
        }
      }
    }
    return {
      ends: ends.kind.length,
      picks: picks.kind.length,
      row: byRow === undefined ? picks.kind : byRow.word,
      column: byColumn === undefined ? ends.kind : byColumn.word,
      rowKinds,
      columnKinds,
      colour: merged,
      rowRooms: picks.rooms && (byRow === undefined ? picks.rooms : byRow.rooms),
      columnRooms: ends.rooms && (byColumn === undefined ? ends.rooms : byColumn.rooms),
    };
  };
}

/**
 * Gives strands with the same interlacement and colour the same kind; kinds are numbered in order of first appearance.
 */
export function strandKinds(weave: Uint16Array, colours: ArrayLike<number>): Threads {
  const known: number[] = [];
  const kind = new Uint16Array(colours.length);
  const ofWeave: number[] = [];
  const ofColour: number[] = [];
  for (let s = 0, w = 0; s < colours.length; s++, w++) {
    if (w === weave.length) w = 0;
    const sign = weave[w]! * 256 + colours[s]!;
    let number = known.indexOf(sign);
    if (number < 0) {
      number = known.push(sign) - 1;
      ofWeave.push(weave[w]!);
      ofColour.push(colours[s]!);
    }
    kind[s] = number;
  }
  return { kind, weave: ofWeave, colour: ofColour };
}
