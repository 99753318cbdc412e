import type { Drawdown } from '../../cloth/drawdown.js';
import type { Face } from '../../cloth/face.js';
import { smallestPeriod } from '../../order/order.js';
import { blurWeights, overlapWeights, SMALL_SIGMA } from '../contrast/blur.js';
import { type Complex, real, transform } from '../contrast/fourier.js';

/** A variance below this is that of an even field. */
const EVEN = 1e-6;

/** A structure as its drawdown alone shows it, a little blurred: what a face is held against. */
export interface StructureAlone {
  /** Ends and picks of its smallest repeat. */
  readonly ends: number;
  readonly picks: number;
  /** Spectrum of the drawdown about its mean, blurred for both of the two that are compared. */
  readonly spectrum: Complex;
  /** Variance of the blurred drawdown. */
  readonly variance: number;
}

/** What a structure shows alone, all warp dark and all weft light. `squareness`: picks per cm over ends per cm. */
export function structureAlone(cloth: Drawdown, squareness: number): StructureAlone {
  const ends = smallestPeriod(cloth.endKind);
  const picks = smallestPeriod(cloth.pickKind);
  const cells = ends * picks;
  const up = Float64Array.from(
    { length: cells },
    (_, at) => cloth.up[cloth.pickKind[Math.floor(at / ends)]! * cloth.endKinds + cloth.endKind[at % ends]!]!,
  );
  const { re, im } = transform(real(up), picks, ends);
  const across = response(ends, SMALL_SIGMA);
  const along = response(picks, SMALL_SIGMA * squareness);
  re[0] = 0;
  let variance = 0;
  for (let at = 1; at < cells; at++) {
    const kept = along[Math.floor(at / ends)]! * across[at % ends]!;
    variance += ((re[at]! ** 2 + im[at]! ** 2) * kept) / cells ** 2;
    re[at] = re[at]! * kept;
    im[at] = im[at]! * kept;
  }
  return { ends, picks, spectrum: { re, im }, variance };
}

/**
 * How far the pattern of the colours differs from that of the structure alone: 1 minus the largest correlation, of
 * either sign and over all shifts, mirrors and half turns, of the face and the drawdown, both blurred by 0.5 ends. A
 * dark warp on a light weft gives 0, and so does an even face, since it has no pattern. If the drawdown is even and the
 * face is not, it is 1.
 *
 * The drawdown repeats within the face, so that the face is folded on one repeat of it first; and blurring the one
 * twice spares blurring the other. Mirrored and turned, its spectrum is the same with signs of frequencies changed.
 *
 * @param values 0 (dark) to 1 (light) of each palette index
 * @param variance of the little-blurred face
 */
export function unlikeStructure(
  face: Face,
  values: ArrayLike<number>,
  variance: number,
  { ends, picks, spectrum, variance: alone }: StructureAlone,
): number {
  if (variance < EVEN) return 0;
  if (alone < EVEN) return 1;
  const seen = transform(real(folded(face, values, ends, picks)), picks, ends);
  const most = Math.max(
    largestProduct(seen, spectrum, ends, picks, false),
    largestProduct(seen, spectrum, ends, picks, true),
  );
  const mean = most / (ends * picks) / (face.ends * face.picks);
  return Math.max(0, 1 - mean / Math.sqrt(variance * alone));
}

/**
 * The largest |Σ a(x)·b(g·x + t)| over all shifts t, with g nothing and a half turn (one transform for both, as its
 * real and its imaginary part), or `mirrored` the two mirrors; times the number of cells.
 */
function largestProduct(a: Complex, b: Complex, ends: number, picks: number, mirrored: boolean): number {
  const product = { re: new Float64Array(ends * picks), im: new Float64Array(ends * picks) };
  for (let l = 0, at = 0; l < picks; l++) {
    for (let k = 0; k < ends; k++, at++) {
      const there = mirrored && k > 0 ? l * ends + ends - k : at;
      const [re, im, otherRe, otherIm] = [a.re[at]!, a.im[at]!, b.re[there]!, b.im[there]!];
      // a·b̄ + i·a·b
      product.re[at] = re * otherRe + im * otherIm - (re * otherIm + im * otherRe);
      product.im[at] = im * otherRe - re * otherIm + (re * otherRe - im * otherIm);
    }
  }
  const sums = transform(product, picks, ends);
  let most = 0;
  for (const sum of sums.re) most = Math.max(most, Math.abs(sum));
  for (const sum of sums.im) most = Math.max(most, Math.abs(sum));
  return most;
}

/** Folds a face on a repeat of `ends` by `picks`: sums the values of the cells that fall on the same place. */
function folded(face: Face, values: ArrayLike<number>, ends: number, picks: number): Float64Array {
  const { rowKinds, columnKinds, colour } = face;
  const columns = countedKinds(face.column, columnKinds, ends);
  const rows = countedKinds(face.row, rowKinds, picks);
  const byRow = new Float64Array(rowKinds * ends);
  for (let r = 0; r < rowKinds; r++) {
    for (let i = 0; i < ends; i++) {
      let sum = 0;
      for (let c = 0; c < columnKinds; c++) {
        const count = columns[i * columnKinds + c]!;
        if (count > 0) sum += count * values[colour[r * columnKinds + c]!]!;
      }
      byRow[r * ends + i] = sum;
    }
  }
  const sums = new Float64Array(picks * ends);
  for (let j = 0; j < picks; j++) {
    for (let r = 0; r < rowKinds; r++) {
      const count = rows[j * rowKinds + r]!;
      if (count === 0) continue;
      for (let i = 0, at = j * ends; i < ends; i++, at++) sums[at] = sums[at]! + count * byRow[r * ends + i]!;
    }
  }
  return sums;
}

/** How many threads of each kind fall on each of `length` places. */
function countedKinds(kind: Uint16Array, kinds: number, length: number): Float64Array {
  const count = new Float64Array(length * kinds);
  for (let s = 0; s < kind.length; s++) {
    const at = (s % length) * kinds + kind[s]!;
    count[at] = count[at]! + 1;
  }
  return count;
}

/** What two blurs one after the other leave of each frequency of a repeat. */
function response(length: number, sigma: number): Float64Array {
  return transform(real(overlapWeights(blurWeights(length, sigma))), 1, length).re;
}
