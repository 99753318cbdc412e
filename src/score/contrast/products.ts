/**
 * Σ (Aᵀ·x) ∘ (y·B), where ∘ multiplies entry by entry. `a` is n × rows, `x` n × columns, `y` rows × m, `b` m × columns.
 * Four columns are summed side by side, and neither product is stored: a processor adds four independent sums as fast as
 * one. Every sum keeps its own order, so the result does not depend on it.
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
  for (let r = 0; r < rows; r++) {
    const inY = r * m;
    let c = 0;
    for (; c + 4 <= columns; c += 4) {
      let p0 = 0;
      let p1 = 0;
      let p2 = 0;
      let p3 = 0;
      for (let j = 0, inA = r, inX = c; j < n; j++, inA += rows, inX += columns) {
        const weight = a[inA]!;
        p0 += weight * x[inX]!;
        p1 += weight * x[inX + 1]!;
        p2 += weight * x[inX + 2]!;
        p3 += weight * x[inX + 3]!;
      }
      let q0 = 0;
      let q1 = 0;
      let q2 = 0;
      let q3 = 0;
      for (let k = 0, inB = c; k < m; k++, inB += columns) {
        const value = y[inY + k]!;
        q0 += value * b[inB]!;
        q1 += value * b[inB + 1]!;
        q2 += value * b[inB + 2]!;
        q3 += value * b[inB + 3]!;
      }
      sum += p0 * q0;
      sum += p1 * q1;
      sum += p2 * q2;
      sum += p3 * q3;
    }
    for (; c < columns; c++) {
      let p = 0;
      for (let j = 0, inA = r, inX = c; j < n; j++, inA += rows, inX += columns) p += a[inA]! * x[inX]!;
      let q = 0;
      for (let k = 0, inB = c; k < m; k++, inB += columns) q += y[inY + k]! * b[inB]!;
      sum += p * q;
    }
  }
  return sum;
}

/** Σ (W·G) ∘ (G·V), with `w` (rows × rows) equal when turned over its diagonal, `g` rows × columns. */
export function energy(w: Float64Array, g: Float64Array, v: Float64Array, rows: number, columns: number): number {
  return productsMet(w, g, rows, g, v, columns, rows, columns);
}
