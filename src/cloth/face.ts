import type { Drawdown } from './drawdown.js';
import { scratch } from './scratch.js';

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
 * The ends, or the picks, of one whole repeat in their colours, by kinds: threads of one interlacement and one colour.
 */
export interface Threads {
  /** Kind of each thread, numbered in order of first appearance. */
  readonly kind: Uint16Array;
  /** Of each kind, its kind of end (pick) in the drawdown. */
  readonly weave: readonly number[];
  /** Of each kind, its palette index. */
  readonly colour: readonly number[];
}

/**
 * Lays warp and weft colours on an interlacement. The colour lists may be longer than the interlacement's repeat (a
 * whole multiple of it); their lengths are the repeat of the face.
 */
export function colourFace(cloth: Drawdown, warp: ArrayLike<number>, weft: ArrayLike<number>): Face {
  return faceMaker()(cloth, strandKinds(cloth.endKind, warp), strandKinds(cloth.pickKind, weft));
}

/**
 * Makes faces of ends and picks known by their kinds. The words of faces with the same ends (picks) are the same
 * objects, so that what is computed from a word alone can be remembered by it. The colours of each face are overwritten
 * by the next.
 */
export function faceMaker(): (cloth: Drawdown, ends: Threads, picks: Threads) => Face {
  const room = scratch(Uint8Array);
  const mergeEqual = merger();
  return (cloth, ends, picks) => {
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
    return mergeEqual(picks.kind, ends.kind, rows, columns, colour);
  };
}

/** A face known cell by cell: rows of palette indices, first pick first. */
export function faceFromRows(cells: readonly ArrayLike<number>[]): Face {
  const picks = cells.length;
  const ends = cells[0]?.length ?? 0;
  const colour = new Uint8Array(picks * ends);
  for (let j = 0; j < picks; j++) for (let i = 0; i < ends; i++) colour[j * ends + i] = cells[j]![i]!;
  const row = Uint16Array.from({ length: picks }, (_, j) => j);
  const column = Uint16Array.from({ length: ends }, (_, i) => i);
  return merger()(row, column, picks, ends, colour);
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

/** Merges the kinds of rows, and of columns, that look the same all along, as those of a hairline do. */
function merger() {
  const room = scratch(Uint8Array);
  const rowsMerged = mergedKinds();
  const columnsMerged = mergedKinds();
  return (row: Uint16Array, column: Uint16Array, rows: number, columns: number, colour: Uint8Array): Face => {
    const byRow = rowsMerged(row, colour, rows, columns, columns, 1);
    const byColumn = columnsMerged(column, colour, columns, rows, 1, columns);
    const rowKinds = byRow.kept.length;
    const columnKinds = byColumn.kept.length;
    const sizes = { ends: column.length, picks: row.length, rowKinds, columnKinds };
    if (rowKinds === rows && columnKinds === columns) return { ...sizes, row, column, colour };
    const merged = room(rowKinds * columnKinds);
    for (let a = 0, at = 0; a < rowKinds; a++) {
      const from = byRow.kept[a]! * columns;
      for (let b = 0; b < columnKinds; b++, at++) merged[at] = colour[from + byColumn.kept[b]!]!;
    }
    return { ...sizes, row: byRow.word, column: byColumn.word, colour: merged };
  };
}

/** A word of threads in which equal kinds have become one; of each new kind the first old one. */
interface Merged {
  readonly word: Uint16Array;
  readonly kept: readonly number[];
  /** New kind of each old one. */
  readonly kinds: Uint16Array;
}

/**
 * Finds the equal lines of a matrix, and renames the kinds of a word by them. The matrix has `lines` lines of `cells`
 * cells; a step from line to line, and from cell to cell, is given.
 */
function mergedKinds() {
  const room = scratch(Uint16Array);
  const known = new WeakMap<Uint16Array, Merged[]>();
  return (
    word: Uint16Array,
    colour: Uint8Array,
    lines: number,
    cells: number,
    lineStep: number,
    cellStep: number,
  ): Merged => {
    const kinds = room(lines);
    for (let a = 0, next = 0; a < lines; a++) {
      let b = 0;
      for (; b < a; b++) {
        let c = 0;
        while (c < cells && colour[a * lineStep + c * cellStep] === colour[b * lineStep + c * cellStep]) c++;
        if (c === cells) break;
      }
      kinds[a] = b === a ? next++ : kinds[b]!;
    }
    let before = known.get(word);
    if (before === undefined) {
      before = [];
      known.set(word, before);
    }
    for (const merged of before) if (equal(merged.kinds, kinds)) return merged;
    const kept = Array.from(kinds, (_, a) => a).filter((a) => kinds.indexOf(kinds[a]!) === a);
    const merged = {
      word: kept.length === lines ? word : word.map((kind) => kinds[kind]!),
      kept,
      kinds: kinds.slice(),
    };
    before.push(merged);
    return merged;
  };
}

function equal(a: Uint16Array, b: Uint16Array): boolean {
  for (let at = 0; at < a.length; at++) if (a[at] !== b[at]) return false;
  return true;
}
