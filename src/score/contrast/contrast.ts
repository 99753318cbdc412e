import type { Face } from '../../cloth/face.js';
import { scratch } from '../../cloth/scratch.js';
import type { Contrast } from '../model/figures.js';
import { type Gathered, gatherer } from './gathered.js';
import { energy, productsMet } from './products.js';

/** A face with less motif contrast than this is a fine texture, with no larger pattern (a choice of ours). */
export const FLAT = 0.05;

/** A variance below this, of the face under the small blur, is that of an even face. */
export const EVEN = 1e-6;

/** Measures faces; `values` holds the value (0 dark – 1 light) of each palette index. */
interface ContrastMeter {
  /** Motif contrast with tone and line, and the dark share. */
  motif(face: Face, values: Float64Array): Omit<Contrast, 'figure'>;
  /** The share of the pattern that is not stripes. */
  figure(face: Face, values: Float64Array): number;
  /** Variance of the face blurred as for `figure`. */
  variance(face: Face, values: Float64Array): number;
  /** All of it. */
  measure(face: Face, values: Float64Array): Contrast;
}

/**
 * Motif contrast and its parts, for faces of one sett. A sum of squares over the P·Q blurred cells is a double sum over
 * pairs of cells, weighted by their distances across and along. The weights are first summed by kinds of picks (`W`)
 * and of ends (`V`); the rest is a product of small matrices: Σ(Bg)² = Σ (W·G) ∘ (G·V). A cloth of 6400 cells and 8 × 8
 * kinds costs a few thousand multiplications, and the result is exact. See ../../cloth/KINDS.md.
 *
 * @param squareness picks per centimetre over ends per centimetre: σ down the warp is this times σ across.
 */
export function contrastMeter(squareness: number): ContrastMeter {
  const gatherEnds = gatherer(1);
  const gatherPicks = gatherer(squareness);
  const room = scratch(Float64Array);
  const lineOf = lineMeter();
  const figureShare = figureMeter();

  /** The value of each entry, for its kinds. */
  const valuesOf = ({ colour }: Face, values: Float64Array): Float64Array => {
    const g = room(colour.length);
    for (let at = 0; at < colour.length; at++) g[at] = values[colour[at]!]!;
    return g;
  };

  const motif: ContrastMeter['motif'] = (face, values) => {
    const { ends, picks, rowKinds, columnKinds } = face;
    const cells = ends * picks;
    const across = gatherEnds(face.column, columnKinds, face.columnRooms);
    const along = gatherPicks(face.row, rowKinds, face.rowRooms);
    const g = valuesOf(face, values);
    // First the boundaries, which are of the values themselves; then the values about their mean.
    const line = lineOf(g, along, across, cells);
    const mean = centre(g, along, across, cells);
    const tone = 2 * deviation(energy(along.tone, g, across.tone, rowKinds, columnKinds), cells);
    return { contrast: motifContrast(tone, line), tone, line, darkShare: 1 - mean };
  };

  /** Values about their mean, and the variance that is left of them under the small blur. */
  const blurred = (face: Face, values: Float64Array) => {
    const cells = face.ends * face.picks;
    const across = gatherEnds(face.column, face.columnKinds, face.columnRooms);
    const along = gatherPicks(face.row, face.rowKinds, face.rowRooms);
    const g = valuesOf(face, values);
    centre(g, along, across, cells);
    const variance = energy(along.small, g, across.small, face.rowKinds, face.columnKinds) / cells;
    return { g, across, along, variance };
  };

  const figure: ContrastMeter['figure'] = (face, values) => {
    const { g, across, along, variance } = blurred(face, values);
    return variance < EVEN ? 0 : figureShare(face, g, along, across, variance);
  };

  return {
    motif,
    figure,
    variance: (face, values) => blurred(face, values).variance,
    measure: (face, values) => ({ ...motif(face, values), figure: figure(face, values) }),
  };
}

/** N: upright against level lines. o = u − h, where h and u share each boundary half and half between its cells. */
function lineMeter(): (value: Float64Array, along: Gathered, across: Gathered, cells: number) => number {
  const roomX = scratch(Float64Array);
  const roomY = scratch(Float64Array);
  return (value, along, across, cells) => {
    const rowKinds = along.kinds;
    const columnKinds = across.kinds;
    const upright = across.boundaries;
    const level = along.boundaries;
    const E = upright.kinds;
    const F = level.kinds;

    const x = roomX(rowKinds * E);
    for (let r = 0, to = 0; r < rowKinds; r++) {
      const at = r * columnKinds;
      for (let e = 0; e < E; e++, to++) {
        x[to] = Math.abs(value[at + upright.before[e]!]! - value[at + upright.after[e]!]!);
      }
    }
    const y = roomY(F * columnKinds);
    for (let f = 0, to = 0; f < F; f++) {
      const a = level.before[f]! * columnKinds;
      const b = level.after[f]! * columnKinds;
      for (let c = 0; c < columnKinds; c++, to++) y[to] = Math.abs(value[a + c]! - value[b + c]!);
    }
    const meanX = centre(x, along, upright, cells);
    const meanY = centre(y, level, across, cells);
    if (meanX === 0 && meanY === 0) return 0;

    const hh = energy(along.tone, x, upright.edges, rowKinds, E);
    const uu = energy(level.edges, y, across.tone, F, columnKinds);
    // Σ over boundary kinds e, f and cell kinds r, c of y[f][c]·x[r][e], each pair with its two weights.
    const both = productsMet(level.cross, y, F, x, upright.cross, E, rowKinds, columnKinds);
    return deviation(uu + hh - 2 * both, cells);
  };
}

/** Share of the variance of b·v left when row means and column means are taken out. */
function figureMeter() {
  const roomForRows = scratch(Float64Array);
  const roomForColumns = scratch(Float64Array);
  return (face: Face, g: Float64Array, along: Gathered, across: Gathered, variance: number): number => {
    const { ends, picks, rowKinds, columnKinds } = face;
    const rowMean = roomForRows(rowKinds).fill(0);
    const columnMean = roomForColumns(columnKinds).fill(0);
    for (let r = 0, at = 0; r < rowKinds; r++) {
      for (let c = 0; c < columnKinds; c++, at++) {
        const cell = g[at]!;
        rowMean[r] = rowMean[r]! + (cell * across.counts[c]!) / ends;
        columnMean[c] = columnMean[c]! + (cell * along.counts[r]!) / picks;
      }
    }
    const byRows = form(along.small, rowMean) / picks;
    const byColumns = form(across.small, columnMean) / ends;
    return Math.min(1, Math.max(0, 1 - (byRows + byColumns) / variance));
  };
}

/** Subtracts the mean over all cells from a field stored by kinds, in place, and returns this mean. */
function centre(field: Float64Array, rows: Counted, columns: Counted, cells: number): number {
  let sum = 0;
  for (let r = 0, at = 0; r < rows.kinds; r++) {
    let inRow = 0;
    for (let c = 0; c < columns.kinds; c++, at++) inRow += field[at]! * columns.counts[c]!;
    sum += inRow * rows.counts[r]!;
  }
  const mean = sum / cells;
  for (let at = 0; at < field.length; at++) field[at] = field[at]! - mean;
  return mean;
}

type Counted = Pick<Gathered, 'kinds' | 'counts'>;

/** Σ (W·m) ∘ m. */
function form(w: Float64Array, m: Float64Array): number {
  const n = m.length;
  let sum = 0;
  for (let r = 0, at = 0; r < n; r++) {
    let product = 0;
    for (let j = 0; j < n; j++, at++) product += w[at]! * m[j]!;
    sum += product * m[r]!;
  }
  return sum;
}

/** Motif contrast: tone and line together, 1 at most. */
export function motifContrast(tone: number, line: number): number {
  return Math.min(1, Math.sqrt(tone * tone + line * line));
}

/**
 * Population standard deviation from a sum of squares about the mean; a variance that is only rounding error counts as
 * 0.
 */
export function deviation(squares: number, cells: number): number {
  const variance = squares / cells;
  return variance < 1e-15 ? 0 : Math.sqrt(variance);
}
