import { blurWeights, overlapWeights, SIGMA } from '../../score/contrast/blur.js';
import { gatherEven } from '../../score/contrast/line-samples.js';
import { type Ground, typesOf } from './bound-ground.js';

/**
 * T² as a quadratic form in the two orders: T² = s'As + t'Bt + 2s'Ct. s holds the elements of the warp order, t those
 * of the weft order and after them the tabby's colour, each +1 (light) or −1 (dark). The matrices depend on the weave,
 * the laying, the starts and the two lengths, not on the orders. See BOUNDS.md.
 */
export interface Form {
  /** Length of s (elements of the warp order), and of t (elements of the weft order, and one for the tabby). */
  readonly n: number;
  readonly m: number;
  readonly A: Float64Array;
  readonly B: Float64Array;
  readonly C: Float64Array;
}

/** Builds the form of one ground. `squareness`: picks per centimetre over ends per centimetre. */
export function toneForm({ cloth, ends, picks }: Ground, squareness: number): Form {
  const n = ends.elements;
  const m = picks.elements + 1;
  const e = typesOf(ends);
  const p = typesOf(picks);
  const E = e.element.length;
  const P = p.element.length;
  const across = gatherEven(overlapWeights(blurWeights(ends.length, SIGMA)), e.of, E);
  const along = gatherEven(overlapWeights(blurWeights(picks.length, SIGMA * squareness)), p.of, P);
  const isUp = (pick: number, end: number): number => cloth.up[p.kind[pick]! * cloth.endKinds + e.kind[end]!]!;
  const cells = ends.length * picks.length;
  const form: Form = {
    n,
    m,
    A: new Float64Array(n * n),
    B: new Float64Array(m * m),
    C: new Float64Array(n * m),
  };
  // Weights along the warp summed over the picks where an end is up; weights across summed over the ends that a pick
  // covers.
  const upAlong = (pick: number, end: number): number => {
    let sum = 0;
    for (let b = 0; b < P; b++) sum += along[b * P + pick]! * isUp(b, end);
    return sum;
  };
  const coverAcross = (pick: number, end: number): number => {
    let sum = 0;
    for (let a = 0; a < E; a++) sum += across[a * E + end]! * (1 - isUp(pick, a));
    return sum;
  };
  const up = table(P, E, upAlong);
  const cover = table(P, E, coverAcross);
  const bothUp = byKinds(cloth.endKinds, e.kind, (a, b) => {
    let sum = 0;
    for (let pick = 0; pick < P; pick++) sum += up[pick * E + a]! * isUp(pick, b);
    return sum;
  });
  const bothCover = byKinds(cloth.pickKinds, p.kind, (a, b) => {
    let sum = 0;
    for (let end = 0; end < E; end++) sum += cover[a * E + end]! * (1 - isUp(b, end));
    return sum;
  });
  const meanUp = new Float64Array(n);
  const meanCover = new Float64Array(m);
  for (let a = 0; a < E; a++) {
    let picksUp = 0;
    for (let pick = 0; pick < P; pick++) picksUp += isUp(pick, a) * p.count[pick]!;
    add(meanUp, e.element[a]!, (e.sign[a]! * e.count[a]! * picksUp) / cells);
    for (let b = 0; b < E; b++) {
      const weight = across[a * E + b]! * bothUp(a, b);
      add(form.A, e.element[a]! * n + e.element[b]!, (e.sign[a]! * e.sign[b]! * weight) / cells);
    }
  }
  for (let a = 0; a < P; a++) {
    let endsCovered = 0;
    for (let end = 0; end < E; end++) endsCovered += (1 - isUp(a, end)) * e.count[end]!;
    add(meanCover, p.element[a]!, (p.sign[a]! * p.count[a]! * endsCovered) / cells);
    for (let b = 0; b < P; b++) {
      const weight = along[a * P + b]! * bothCover(a, b);
      add(form.B, p.element[a]! * m + p.element[b]!, (p.sign[a]! * p.sign[b]! * weight) / cells);
    }
    for (let end = 0; end < E; end++) {
      const weight = up[a * E + end]! * cover[a * E + end]!;
      add(form.C, e.element[end]! * m + p.element[a]!, (e.sign[end]! * p.sign[a]! * weight) / cells);
    }
  }
  takeMeans(form.A, meanUp, meanUp);
  takeMeans(form.B, meanCover, meanCover);
  takeMeans(form.C, meanUp, meanCover);
  return form;
}

/** s'As for a square matrix. */
export function quadratic(A: Float64Array, s: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0, at = 0; i < s.length; i++) {
    let row = 0;
    for (let j = 0; j < s.length; j++, at++) row += A[at]! * s[j]!;
    sum += s[i]! * row;
  }
  return sum;
}

function table(rows: number, columns: number, say: (row: number, column: number) => number): Float64Array {
  const filled = new Float64Array(rows * columns);
  for (let r = 0; r < rows; r++) for (let c = 0; c < columns; c++) filled[r * columns + c] = say(r, c);
  return filled;
}

/** Memoizes a function of two threads whose value depends only on the kinds of interlacement of the two. */
function byKinds(
  kinds: number,
  kind: readonly number[],
  say: (a: number, b: number) => number,
): (a: number, b: number) => number {
  const known = new Float64Array(kinds * kinds).fill(Number.NaN);
  return (a, b) => {
    const at = kind[a]! * kinds + kind[b]!;
    if (Number.isNaN(known[at]!)) known[at] = say(a, b);
    return known[at]!;
  };
}

function add(sums: Float64Array, at: number, amount: number): void {
  sums[at] = sums[at]! + amount;
}

function takeMeans(matrix: Float64Array, rows: Float64Array, columns: Float64Array): void {
  for (let i = 0, at = 0; i < rows.length; i++) {
    for (let j = 0; j < columns.length; j++, at++) matrix[at] = matrix[at]! - rows[i]! * columns[j]!;
  }
}
