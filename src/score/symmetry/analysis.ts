import type { Face } from '../../cloth/face.js';
import { roomIn, scratch } from '../../cloth/scratch.js';
import { type CanonicalWord, canonicalReader, RepeatedWord } from './canonical-word.js';
import { IDENTITY, type Isometry, type Vector } from './isometry.js';
import type { Lattice } from './lattice.js';

/** The rows of a face's smallest repeat, or its columns, with their letters. */
export interface Side extends Pick<RepeatedWord, 'length' | 'kinds' | 'word' | 'first'> {
  readonly forward: CanonicalWord;
  readonly backward: CanonicalWord;
}

/** The smallest repeat of a face, stored by kinds of rows and columns. */
interface Repeat {
  readonly rows: Side;
  readonly columns: Side;
  /** How many colours the face shows; 3 stands for three and more. */
  readonly shown: 1 | 2 | 3;
  /** Palette index that cells of value 0 show (where three and more are shown, cells hold the index itself). */
  readonly low: number;
  /** Palette index of cells of value 1 where two colours are shown. */
  readonly high: number;
  /** `cells[rowKind * columnKinds + columnKind]`. */
  readonly cells: Uint8Array;
}

/** A face's smallest repeat with its translations, from which both its symmetry and its key are computed. */
export interface FaceAnalysis extends Repeat {
  /** Translations that keep the colours. */
  readonly lattice: Lattice;
  /** A translation that exchanges the two colours everywhere. */
  readonly exchange: Vector | undefined;
}

/** An operation found to carry the face to itself. */
interface Translation extends Vector {
  readonly keepsColours: boolean;
}

/** Analyses a face once for `symmetryOf` and `clothKey`. */
export function analyse(face: Face): FaceAnalysis {
  return analyser()(face);
}

/**
 * Analyses faces. What a word of kinds says by itself is kept in its rooms: many candidates have the same warp, or the
 * same weft. Each analysis is overwritten by the next.
 */
export function analyser(): (face: Face) => FaceAnalysis {
  const rowWordIn = roomIn(() => new RepeatedWord());
  const columnWordIn = roomIn(() => new RepeatedWord());
  const read = canonicalReader();
  const roomForCells = scratch(Uint8Array);
  return (face) => {
    const { shown, low, high } = coloursShown(face.colour);
    const { rowKinds, columnKinds } = face;
    const cells = roomForCells(face.colour.length);
    for (let at = 0; at < cells.length; at++) {
      const colour = face.colour[at]!;
      cells[at] = shown === 3 ? colour : Number(colour !== low);
    }
    const rowWord = rowWordIn(face.rowRooms);
    const columnWord = columnWordIn(face.columnRooms);
    rowWord.turnTo(face.row, rowKinds);
    columnWord.turnTo(face.column, columnKinds);
    const readings = read(rowWord, columnWord, cells, shown === 2);
    const rows = sideOf(rowWord, readings[0], readings[1]);
    const columns = sideOf(columnWord, readings[2], readings[3]);
    return withTranslations({ rows, columns, shown, low, high, cells });
  };
}

function sideOf(repeated: RepeatedWord, forward: CanonicalWord, backward: CanonicalWord): Side {
  const { length, kinds, word, first } = repeated;
  return { length, kinds, word, first, forward, backward };
}

/**
 * A translation that, after the isometry, carries the face to itself with colours kept or exchanged; undefined if there
 * is none. Such a translation maps kinds to kinds, so only whole steps of the two readings are tried, and along the
 * picks only those within the height of the lattice.
 */
export function findTranslation(face: FaceAnalysis, isometry: Isometry): Translation | undefined {
  const { rows, columns } = face;
  const y = firstStep(isometry.turned ? columns : rows, rows, isometry.along);
  const x = firstStep(isometry.turned ? rows : columns, columns, isometry.across);
  if (y < 0 || x < 0) return undefined;
  for (let b = y % rows.forward.step; b < face.lattice.height; b += rows.forward.step) {
    for (let a = x % columns.forward.step; a < columns.length; a += columns.forward.step) {
      const sign = carries(face, isometry, a, b);
      if (sign !== 0) return { x: a, y: b, keepsColours: sign === 1 };
    }
  }
  return undefined;
}

/**
 * The place of `to` to which place 0 of `from` must go so that the letters of `from`, read forward, meet those of `to`,
 * read forward (`sign` 1) or backward (−1). −1 if the letters differ.
 */
function firstStep(from: Side, to: Side, sign: 1 | -1): number {
  const target = sign === 1 ? to.forward : to.backward;
  if (from.forward.rank !== target.rank) return -1;
  const by = sign === 1 ? target.start - from.forward.start : from.forward.start - target.start;
  return by < 0 ? by + to.length : by;
}

/**
 * Finds the lattice of translations that keep the colours, and one translation that exchanges them, if there is one.
 */
function withTranslations(repeat: Repeat): FaceAnalysis {
  const { rows, columns, shown, low, high, cells } = repeat;
  const width = columns.length;
  let lattice: Lattice = { width, shift: 0, height: rows.length };
  let exchange: Vector | undefined;
  for (let y = 0; y < lattice.height; y += rows.forward.step) {
    for (let x = y === 0 ? columns.forward.step : 0; x < width; x += columns.forward.step) {
      const sign = carries(repeat, IDENTITY, x, y);
      if (sign === 1) lattice = { width, shift: x, height: y };
      if (sign === -1) exchange ??= { x, y };
    }
  }
  // Written out field by field: the search makes millions of these, and a spread is many times slower.
  return { rows, columns, shown, low, high, cells, lattice, exchange };
}

/**
 * Whether an isometry followed by the translation (x, y), 0 ≤ x < columns, 0 ≤ y < rows, carries the face to itself:
 * 1 with colours kept, −1 with the two exchanged, 0 not at all. Only one cell of each pair of kinds is compared, so the
 * translation must map kinds to kinds, as all translations do that `findCarry` tries.
 */
function carries(face: Repeat, { turned, across, along }: Isometry, x: number, y: number): 1 | 0 | -1 {
  const { rows, columns, cells } = face;
  const down = turned ? columns : rows;
  const level = turned ? rows : columns;
  const downStep = turned ? 1 : columns.kinds;
  const levelStep = turned ? columns.kinds : 1;
  const fromX = across === 1 ? x : x + columns.length;
  const fromY = along === 1 ? y : y + rows.length;
  let sign = 0;
  for (let u = 0; u < down.kinds; u++) {
    const row = rows.word[fromY + along * down.first[u]!]! * columns.kinds;
    for (let v = 0, at = u * downStep; v < level.kinds; v++, at += levelStep) {
      const same = cells[row + columns.word[fromX + across * level.first[v]!]!]! === cells[at]! ? 1 : -1;
      if (same === sign) continue;
      if (sign !== 0 || (same === -1 && face.shown !== 2)) return 0;
      sign = same;
    }
  }
  return sign as 1 | -1;
}

function coloursShown(colour: Uint8Array): Pick<FaceAnalysis, 'shown' | 'low' | 'high'> {
  const one = colour[0]!;
  let other = one;
  for (let at = 1; at < colour.length; at++) {
    const c = colour[at]!;
    if (c === one || c === other) continue;
    if (other !== one) return { shown: 3, low: 0, high: 0 };
    other = c;
  }
  return { shown: one === other ? 1 : 2, low: Math.min(one, other), high: Math.max(one, other) };
}
