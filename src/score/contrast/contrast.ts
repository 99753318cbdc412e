import type { Face } from '../../cloth/face.js';
import type { Contrast } from '../model/figures.js';
import { blurWeights, overlapWeights } from './blur.js';
import { gather, gatherEven } from './line-samples.js';

/** Blur in which a motif is judged, and the small one in which its figure is, in ends. */
export const SIGMA = 1.5;
export const SMALL_SIGMA = 0.5;

/** A face with less motif contrast than this shows no pattern (a choice of ours). */
export const FLAT = 0.05;

/** Weights by distance along one system of threads. */
interface Reach {
  /** Cells of a field blurred by B. */
  readonly tone: Float64Array;
  /** Boundaries, each shared half and half between its two cells, blurred by B. */
  readonly edges: Float64Array;
  /** A boundary against a cell, blurred by B. */
  readonly cross: Float64Array;
  /** Cells of a field blurred by the small blur. */
  readonly small: Float64Array;
}

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
  const across = reaches(1);
  const along = reaches(squareness);

  const motif: ContrastMeter['motif'] = (face, values) => {
    const { ends, picks, rowKinds, columnKinds } = face;
    const cells = ends * picks;
    const h = across(ends);
    const v = along(picks);
    const g = Float64Array.from(face.colour, (colour) => values[colour]!);
    const rows = counts(face.row, rowKinds);
    const columns = counts(face.column, columnKinds);
    const W = gatherEven(v.tone, face.row, rowKinds);
    const V = gatherEven(h.tone, face.column, columnKinds);
    // First the boundaries, which are of the values themselves; then the values about their mean.
    const line = lineContrast(face, g, rows, columns, h, v, W, V);
    const mean = centre(g, rows, columns, cells);
    const tone = 2 * deviation(energy(W, g, V, rowKinds, columnKinds), cells);
    return { contrast: Math.min(1, Math.hypot(tone, line)), tone, line, darkShare: 1 - mean };
  };

  const figure: ContrastMeter['figure'] = (face, values) => {
    const g = Float64Array.from(face.colour, (colour) => values[colour]!);
    const rows = counts(face.row, face.rowKinds);
    const columns = counts(face.column, face.columnKinds);
    centre(g, rows, columns, face.ends * face.picks);
    return figureShare(face, g, rows, columns, across(face.ends), along(face.picks));
  };

  const variance: ContrastMeter['variance'] = (face, values) => {
    const { ends, picks, row, column, rowKinds, columnKinds } = face;
    const g = Float64Array.from(face.colour, (colour) => values[colour]!);
    centre(g, counts(row, rowKinds), counts(column, columnKinds), ends * picks);
    const W = gatherEven(along(picks).small, row, rowKinds);
    const V = gatherEven(across(ends).small, column, columnKinds);
    return energy(W, g, V, rowKinds, columnKinds) / (ends * picks);
  };

  return {
    motif,
    figure,
    variance,
    measure: (face, values) => ({ ...motif(face, values), figure: figure(face, values) }),
  };
}

/** Boundaries between neighbouring threads, by the kinds of the two. */
interface Boundaries {
  readonly kind: Uint16Array;
  readonly before: readonly number[];
  readonly after: readonly number[];
}

/** N: upright against level lines. o = u − h, where h and u share each boundary half and half between its cells. */
function lineContrast(
  face: Face,
  value: Float64Array,
  rows: Float64Array,
  columns: Float64Array,
  h: Reach,
  v: Reach,
  W: Float64Array,
  V: Float64Array,
): number {
  const { ends, picks, rowKinds, columnKinds } = face;
  const cells = ends * picks;
  const upright = boundaries(face.column, columnKinds);
  const level = boundaries(face.row, rowKinds);
  const E = upright.before.length;
  const F = level.before.length;

  const x = new Float64Array(rowKinds * E);
  for (let r = 0; r < rowKinds; r++) {
    const at = r * columnKinds;
    for (let e = 0; e < E; e++)
      x[r * E + e] = Math.abs(value[at + upright.before[e]!]! - value[at + upright.after[e]!]!);
  }
  const y = new Float64Array(F * columnKinds);
  for (let f = 0; f < F; f++) {
    const a = level.before[f]! * columnKinds;
    const b = level.after[f]! * columnKinds;
    for (let c = 0; c < columnKinds; c++) y[f * columnKinds + c] = Math.abs(value[a + c]! - value[b + c]!);
  }
  const meanX = centre(x, rows, counts(upright.kind, E), cells);
  const meanY = centre(y, counts(level.kind, F), columns, cells);
  if (meanX === 0 && meanY === 0) return 0;

  const hh = energy(W, x, gatherEven(h.edges, upright.kind, E), rowKinds, E);
  const uu = energy(gatherEven(v.edges, level.kind, F), y, V, F, columnKinds);
  const crossAlong = gather(v.cross, level.kind, F, face.row, rowKinds);
  const crossAcross = gather(h.cross, upright.kind, E, face.column, columnKinds);
  // Σ over boundary kinds e, f and cell kinds r, c of y[f][c]·x[r][e], each pair with its two weights.
  const lifted = multiplyTransposed(crossAlong, y, F, rowKinds, columnKinds);
  const carried = multiply(x, crossAcross, rowKinds, E, columnKinds);
  return deviation(uu + hh - 2 * dot(lifted, carried), cells);
}

/** Share of the variance of b·v left when row means and column means are taken out. */
function figureShare(
  face: Face,
  g: Float64Array,
  rows: Float64Array,
  columns: Float64Array,
  h: Reach,
  v: Reach,
): number {
  const { ends, picks, rowKinds, columnKinds } = face;
  const W = gatherEven(v.small, face.row, rowKinds);
  const V = gatherEven(h.small, face.column, columnKinds);
  const all = energy(W, g, V, rowKinds, columnKinds) / (ends * picks);
  if (all < 1e-6) return 0;
  const rowMean = new Float64Array(rowKinds);
  const columnMean = new Float64Array(columnKinds);
  for (let r = 0; r < rowKinds; r++) {
    for (let c = 0; c < columnKinds; c++) {
      const cell = g[r * columnKinds + c]!;
      rowMean[r] = rowMean[r]! + (cell * columns[c]!) / ends;
      columnMean[c] = columnMean[c]! + (cell * rows[r]!) / picks;
    }
  }
  const byRows = dot(multiply(W, rowMean, rowKinds, rowKinds, 1), rowMean) / picks;
  const byColumns = dot(multiply(V, columnMean, columnKinds, columnKinds, 1), columnMean) / ends;
  return Math.min(1, Math.max(0, 1 - (byRows + byColumns) / all));
}

/** The weights by distance for every repeat length, computed once each. */
function reaches(scale: number): (length: number) => Reach {
  const known = new Map<number, Reach>();
  return (length) => {
    let reach = known.get(length);
    if (reach === undefined) {
      const tone = overlapWeights(blurWeights(length, SIGMA * scale));
      const before = (d: number): number => tone[(d + length - 1) % length]!;
      const after = (d: number): number => tone[(d + 1) % length]!;
      reach = {
        tone,
        edges: tone.map((weight, d) => weight / 2 + (before(d) + after(d)) / 4),
        // A boundary lies before its own cell and after the one before it.
        cross: tone.map((weight, d) => (weight + before(d)) / 2),
        small: overlapWeights(blurWeights(length, SMALL_SIGMA * scale)),
      };
      known.set(length, reach);
    }
    return reach;
  };
}

function boundaries(kind: Uint16Array, kinds: number): Boundaries {
  const n = kind.length;
  const known = new Int32Array(kinds * kinds).fill(-1);
  const before: number[] = [];
  const after: number[] = [];
  const ofBoundary = new Uint16Array(n);
  for (let s = 0; s < n; s++) {
    const a = kind[s === 0 ? n - 1 : s - 1]!;
    const b = kind[s]!;
    let number = known[a * kinds + b]!;
    if (number < 0) {
      number = before.length;
      known[a * kinds + b] = number;
      before.push(a);
      after.push(b);
    }
    ofBoundary[s] = number;
  }
  return { kind: ofBoundary, before, after };
}

/** Subtracts the mean over all cells from a field stored by kinds, in place, and returns this mean. */
function centre(field: Float64Array, rows: Float64Array, columns: Float64Array, cells: number): number {
  const mean = weightedMean(field, rows, columns) / cells;
  for (let at = 0; at < field.length; at++) field[at] = field[at]! - mean;
  return mean;
}

function weightedMean(field: Float64Array, rows: Float64Array, columns: Float64Array): number {
  let sum = 0;
  for (let r = 0, at = 0; r < rows.length; r++) {
    let inRow = 0;
    for (let c = 0; c < columns.length; c++, at++) inRow += field[at]! * columns[c]!;
    sum += inRow * rows[r]!;
  }
  return sum;
}

function counts(kind: Uint16Array, kinds: number): Float64Array {
  const count = new Float64Array(kinds);
  for (let s = 0; s < kind.length; s++) count[kind[s]!] = count[kind[s]!]! + 1;
  return count;
}

/** Σ (W·G) ∘ (G·V). */
function energy(W: Float64Array, g: Float64Array, V: Float64Array, rows: number, columns: number): number {
  return dot(multiply(W, g, rows, rows, columns), multiply(g, V, rows, columns, columns));
}

/** Matrix product of `a` (n × m) and `b` (m × k). */
function multiply(a: Float64Array, b: Float64Array, n: number, m: number, k: number): Float64Array {
  const product = new Float64Array(n * k);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < m; j++) {
      const factor = a[i * m + j]!;
      if (factor === 0) continue;
      for (let c = 0, to = i * k, from = j * k; c < k; c++, to++, from++) {
        product[to] = product[to]! + factor * b[from]!;
      }
    }
  }
  return product;
}

/** Matrix product of `a` (m × n) turned over its diagonal and `b` (m × k). */
function multiplyTransposed(a: Float64Array, b: Float64Array, m: number, n: number, k: number): Float64Array {
  const product = new Float64Array(n * k);
  for (let j = 0; j < m; j++) {
    for (let i = 0; i < n; i++) {
      const factor = a[j * n + i]!;
      if (factor === 0) continue;
      for (let c = 0, to = i * k, from = j * k; c < k; c++, to++, from++) {
        product[to] = product[to]! + factor * b[from]!;
      }
    }
  }
  return product;
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let at = 0; at < a.length; at++) sum += a[at]! * b[at]!;
  return sum;
}

/**
 * Population standard deviation from a sum of squares about the mean; a variance that is only rounding error counts as
 * 0.
 */
function deviation(squares: number, cells: number): number {
  const variance = squares / cells;
  return variance < 1e-15 ? 0 : Math.sqrt(variance);
}
