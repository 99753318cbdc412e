import { scratch } from '../../cloth/scratch.js';

const room = scratch(Float64Array);

/**
 * Σ (Aᵀ·x) ∘ (y·B), where ∘ multiplies entry by entry. `a` is n × rows, `x` n × columns, `y` rows × m, `b` m × columns.
 * Neither product is stored. Two rows by four columns are summed side by side: a processor adds eight independent sums
 * in the time of one, and every number read serves several. Each sum keeps its own order, row after row, so the result
 * is the same to the last bit as one entry at a time.
 */
export function productsMet(
  a: Float64Array,
  x: Float64Array,
  n: number,
  y: Float64Array,
  b: Float64Array,
  m: number,
  rows: number,
  columns: number,
): number {
  let sum = 0;
  const below = room(columns);
  for (let r = 0; r < rows; r += 2) {
    // An odd last row stands for both.
    const next = r + 1 < rows ? 1 : 0;
    const inY = r * m;
    const inNext = inY + next * m;
    let c = 0;
    for (; c + 4 <= columns; c += 4) {
      let p0 = 0;
      let p1 = 0;
      let p2 = 0;
      let p3 = 0;
      let s0 = 0;
      let s1 = 0;
      let s2 = 0;
      let s3 = 0;
      for (let j = 0, inA = r, inX = c; j < n; j++, inA += rows, inX += columns) {
        const here = a[inA]!;
        const there = a[inA + next]!;
        const x0 = x[inX]!;
        const x1 = x[inX + 1]!;
        const x2 = x[inX + 2]!;
        const x3 = x[inX + 3]!;
        p0 += here * x0;
        p1 += here * x1;
        p2 += here * x2;
        p3 += here * x3;
        s0 += there * x0;
        s1 += there * x1;
        s2 += there * x2;
        s3 += there * x3;
      }
      let q0 = 0;
      let q1 = 0;
      let q2 = 0;
      let q3 = 0;
      let t0 = 0;
      let t1 = 0;
      let t2 = 0;
      let t3 = 0;
      for (let k = 0, inB = c; k < m; k++, inB += columns) {
        const here = y[inY + k]!;
        const there = y[inNext + k]!;
        const b0 = b[inB]!;
        const b1 = b[inB + 1]!;
        const b2 = b[inB + 2]!;
        const b3 = b[inB + 3]!;
        q0 += here * b0;
        q1 += here * b1;
        q2 += here * b2;
        q3 += here * b3;
        t0 += there * b0;
        t1 += there * b1;
        t2 += there * b2;
        t3 += there * b3;
      }
      sum += p0 * q0;
      sum += p1 * q1;
      sum += p2 * q2;
      sum += p3 * q3;
      below[c] = s0 * t0;
      below[c + 1] = s1 * t1;
      below[c + 2] = s2 * t2;
      below[c + 3] = s3 * t3;
    }
    for (; c < columns; c++) {
      let p = 0;
      let s = 0;
      for (let j = 0, inA = r, inX = c; j < n; j++, inA += rows, inX += columns) {
        p += a[inA]! * x[inX]!;
        s += a[inA + next]! * x[inX]!;
      }
      let q = 0;
      let t = 0;
      for (let k = 0, inB = c; k < m; k++, inB += columns) {
        q += y[inY + k]! * b[inB]!;
        t += y[inNext + k]! * b[inB]!;
      }
      sum += p * q;
      below[c] = s * t;
    }
    for (let d = 0; d < columns * next; d++) sum += below[d]!;
  }
  return sum;
}

/** Σ (W·G) ∘ (G·V), with `w` (rows × rows) equal when turned over its diagonal, `g` rows × columns. */
export function energy(w: Float64Array, g: Float64Array, v: Float64Array, rows: number, columns: number): number {
  return productsMet(w, g, rows, g, v, columns, rows, columns);
}
