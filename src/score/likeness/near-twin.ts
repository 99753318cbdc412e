import { colourAt, type Face } from '../../cloth/face.js';
import { gcd } from '../../order/necklace.js';
import { blurWeights } from '../contrast/blur.js';
import { type Complex, real, transform } from '../contrast/fourier.js';

/** Above this correlation two cloths look nearly the same. */
const TWIN = 0.97;
/** Below this variance a cloth counts as an even mixture; the rest is rounding error. */
const EVEN = 1e-24;

/** Operations, beside shifts, under which two cloths are compared. */
interface TwinWays {
  readonly mirror: boolean;
  readonly halfTurn: boolean;
  readonly exchange: boolean;
}

/** The spectrum of a cloth's blurred values about their mean, divided by the number of cells. */
export interface BlurredCloth {
  readonly ends: number;
  readonly picks: number;
  /** For each frequency down and across the repeat, row by row. */
  readonly spectrum: Complex;
  /** Absolute value of the spectrum. */
  readonly amplitude: Float64Array;
  /** Variance of the blurred values that lies in frequencies of a smaller repeat, by its ends and picks. */
  readonly variances: Map<string, number>;
}

/** B v about its mean. `squareness`: picks per centimetre over ends per centimetre. */
export function blurredCloth(face: Face, values: ArrayLike<number>, squareness: number): BlurredCloth {
  const { ends, picks } = face;
  const cells = ends * picks;
  const v = Float64Array.from({ length: cells }, (_, at) => values[colourAt(face, Math.floor(at / ends), at % ends)]!);
  const { re, im } = transform({ re: v, im: new Float64Array(cells) }, picks, ends);
  // A blur multiplies each frequency by that of its weights, which is real since they are even.
  const across = transform(real(blurWeights(ends, 1.5)), 1, ends).re;
  const down = transform(real(blurWeights(picks, 1.5 * squareness)), 1, picks).re;
  const amplitude = new Float64Array(cells);
  for (let at = 1; at < cells; at++) {
    const kept = (down[Math.floor(at / ends)]! * across[at % ends]!) / cells;
    re[at] = re[at]! * kept;
    im[at] = im[at]! * kept;
    amplitude[at] = Math.hypot(re[at]!, im[at]!);
  }
  // The mean is taken out.
  re[0] = im[0] = 0;
  return { ends, picks, spectrum: { re, im }, amplitude, variances: new Map() };
}

/**
 * Whether two cloths look nearly the same: correlation of their blurred values above 0.97 at the best shift, mirror or
 * half turn; either sign where the colours may be exchanged. Repeats of different size are compared on what they have
 * in common: the frequencies of their greatest common repeat, beyond which they are uncorrelated.
 *
 * Bounds decide nearly all pairs. The correlation at any shift is at most the sum over frequencies of the product of
 * the amplitudes, and this sum is at most the square root of the product of the variances.
 */
export function nearTwins(a: BlurredCloth, b: BlurredCloth, ways: TwinWays): boolean {
  const ends = gcd(a.ends, b.ends);
  const picks = gcd(a.picks, b.picks);
  const varianceA = varianceIn(a, a.ends, a.picks);
  const varianceB = varianceIn(b, b.ends, b.picks);
  if (Math.min(varianceA, varianceB) < EVEN) return Math.max(varianceA, varianceB) < EVEN;
  const least = TWIN * Math.sqrt(varianceA * varianceB);
  if (Math.sqrt(varianceIn(a, ends, picks) * varianceIn(b, ends, picks)) <= least) return false;
  const isNear = (mirrored: boolean): boolean => {
    if (amplitudeBound(a, b, ends, picks, mirrored) <= least) return false;
    const { as, turned } = bestCorrelations(a, b, ends, picks, mirrored, ways.exchange);
    return as > least || ((mirrored || ways.halfTurn) && turned > least);
  };
  // A half turn leaves all amplitudes as they are, and makes one mirror the other.
  return isNear(false) || (ways.mirror && isNear(true));
}

/** Variance of a cloth's blurred values, averaged over all shifts by a smaller repeat. */
function varianceIn(cloth: BlurredCloth, ends: number, picks: number): number {
  const key = `${ends} ${picks}`;
  let variance = cloth.variances.get(key);
  if (variance === undefined) {
    variance = amplitudeBound(cloth, cloth, ends, picks, false);
    cloth.variances.set(key, variance);
  }
  return variance;
}

/** The product of the amplitudes, summed over the frequencies of a common repeat; `b` mirrored or not. */
function amplitudeBound(a: BlurredCloth, b: BlurredCloth, ends: number, picks: number, mirrored: boolean): number {
  let sum = 0;
  for (let l = 0; l < picks; l++) {
    const rowA = ((l * a.picks) / picks) * a.ends;
    const rowB = ((l * b.picks) / picks) * b.ends;
    for (let k = 0; k < ends; k++) {
      const there = mirrored && k > 0 ? ends - k : k;
      sum += a.amplitude[rowA + (k * a.ends) / ends]! * b.amplitude[rowB + (there * b.ends) / ends]!;
    }
  }
  return sum;
}

/**
 * Mean of a(x)·b(g·x + t) at its best shift t (`either`: of either sign), by the correlation theorem: as b lies, or
 * mirrored left to right, and the same turned by a half. A half turn makes a spectrum its conjugate; so that one
 * transform serves both, the one correlation is its real part and the other its imaginary one.
 */
function bestCorrelations(
  a: BlurredCloth,
  b: BlurredCloth,
  ends: number,
  picks: number,
  mirrored: boolean,
  either: boolean,
): { readonly as: number; readonly turned: number } {
  const re = new Float64Array(ends * picks);
  const im = new Float64Array(ends * picks);
  const [stepA, stepB] = [a.ends / ends, b.ends / ends];
  for (let l = 0, at = 0; l < picks; l++) {
    const rowA = l * (a.picks / picks) * a.ends;
    const rowB = l * (b.picks / picks) * b.ends;
    for (let k = 0; k < ends; k++, at++) {
      const hereA = rowA + k * stepA;
      const hereB = rowB + (mirrored && k > 0 ? ends - k : k) * stepB;
      const aRe = a.spectrum.re[hereA]!;
      const aIm = a.spectrum.im[hereA]!;
      const bRe = b.spectrum.re[hereB]!;
      const bIm = b.spectrum.im[hereB]!;
      // The sum of a·b̄, and of a·b times i.
      re[at] = aRe * bRe + aIm * bIm - (aRe * bIm + aIm * bRe);
      im[at] = aIm * bRe - aRe * bIm + (aRe * bRe - aIm * bIm);
    }
  }
  // The forward transform of a spectrum is the correlation read backwards: all shifts are there all the same.
  const sums = transform({ re, im }, picks, ends);
  const best = (of: Float64Array): number => {
    let most = 0;
    for (let at = 0; at < of.length; at++) most = Math.max(most, either ? Math.abs(of[at]!) : of[at]!);
    return most;
  };
  return { as: best(sums.re), turned: best(sums.im) };
}
