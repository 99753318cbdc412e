// T² of a pair of orders from its form, product by product.
import type { Form } from '../../src/search/bounded/pair-form.js';

/** Elements are ±1; the last number of `t` is the tabby's colour. */
export function toneSquared({ A, B, C }: Form, s: readonly number[], t: readonly number[]): number {
  const times = (matrix: Float64Array, left: readonly number[], right: readonly number[]): number =>
    left
      .flatMap((l, i) => right.map((r, j) => l * matrix[i * right.length + j]! * r))
      .reduce((sum, each) => sum + each, 0);
  return times(A, s, s) + times(B, t, t) + 2 * times(C, s, t);
}
