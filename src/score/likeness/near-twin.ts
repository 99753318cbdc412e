import { colourAt, type Face } from '../../cloth/face.js';
import { gcd } from '../../order/necklace.js';
import { blurWeights } from '../contrast/blur.js';
import { type Complex, real, transform, transformDown } from '../contrast/fourier.js';

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
    const pair = { a, b, ends, picks, mirrored };
    const columns = amplitudesOf(pair);
    if (sumOf(columns) <= least) return false;
    const reaches = (turned: boolean): boolean => reachesOn(pair, turned, ways.exchange, least, columns);
    return reaches(false) || ((mirrored || ways.halfTurn) && reaches(true));
  };
  // A half turn leaves all amplitudes as they are, and makes one mirror the other.
  return isNear(false) || (ways.mirror && isNear(true));
}

/** Variance of a cloth's blurred values, averaged over all shifts by a smaller repeat. */
function varianceIn(cloth: BlurredCloth, ends: number, picks: number): number {
  const key = `${ends} ${picks}`;
  let variance = cloth.variances.get(key);
  if (variance === undefined) {
    variance = sumOf(amplitudesOf({ a: cloth, b: cloth, ends, picks, mirrored: false }));
    cloth.variances.set(key, variance);
  }
  return variance;
}

/** Two cloths on a common repeat, the second perhaps mirrored left to right. */
interface Pair {
  readonly a: BlurredCloth;
  readonly b: BlurredCloth;
  readonly ends: number;
  readonly picks: number;
  readonly mirrored: boolean;
}

/**
 * The product of the amplitudes, summed over the frequencies down, for each frequency across up to half of the ends: a
 * higher one is the conjugate of a lower one, and counted with it.
 */
function amplitudesOf({ a, b, ends, picks, mirrored }: Pair): Float64Array {
  const columns = new Float64Array((ends >> 1) + 1);
  const [stepA, stepB] = [a.ends / ends, b.ends / ends];
  for (let l = 0; l < picks; l++) {
    const rowA = l * (a.picks / picks) * a.ends;
    const rowB = l * (b.picks / picks) * b.ends;
    for (let k = 0; k < columns.length; k++) {
      const there = mirrored && k > 0 ? ends - k : k;
      columns[k] = columns[k]! + a.amplitude[rowA + k * stepA]! * b.amplitude[rowB + there * stepB]!;
    }
  }
  for (let k = 0; k < columns.length; k++) columns[k] = columns[k]! * timesOf(k, ends);
  return columns;
}

/** How many frequencies across are counted as one: itself, and its conjugate where that is another. */
function timesOf(k: number, ends: number): number {
  return k === 0 || 2 * k === ends ? 1 : 2;
}

/** The share of the least correlation that may be left out at first: the blur leaves little of high frequencies. */
const SLIGHT = 1e-3;

/**
 * Whether the mean of a(x)·b(g·x + t), of either sign or not, is more than the least at some shift t; `turned`: b turned
 * by a half, which makes its spectrum the conjugate. By the correlation theorem, first down all columns. At each shift
 * down, the correlation at any shift across is at most the sum of what the columns hold there, so that few rows need
 * be transformed. What is left out can neither raise nor lower it by more than it holds itself; where that would
 * decide, nothing is left out.
 */
function reachesOn(
  pair: Pair,
  turned: boolean,
  either: boolean,
  least: number,
  columns: Float64Array,
  slight = SLIGHT,
): boolean {
  let kept = columns.length;
  let out = 0;
  while (kept > 1 && out + columns[kept - 1]! <= slight * least) out += columns[--kept]!;
  const { ends, picks } = pair;
  const down = transformDown(productOf(pair, turned, kept), picks, kept);
  const row = real(new Float64Array(ends));
  for (let t = 0; t < picks; t++) {
    let most = out;
    for (let k = 0, at = t * kept; k < kept; k++, at++) {
      most += timesOf(k, ends) * Math.hypot(down.re[at]!, down.im[at]!);
    }
    if (most <= least) continue;
    row.re.fill(0);
    row.im.fill(0);
    for (let k = 0, at = t * kept; k < kept; k++, at++) {
      row.re[k] = timesOf(k, ends) * down.re[at]!;
      row.im[k] = timesOf(k, ends) * down.im[at]!;
    }
    // Of a frequency and its conjugate together the real part is left.
    let best = 0;
    for (const sum of transform(row, 1, ends).re) best = Math.max(best, either ? Math.abs(sum) : sum);
    if (best - out > least) return true;
    if (best + out > least) return reachesOn(pair, turned, either, least, columns, 0);
  }
  return false;
}

/** The product of a spectrum and the conjugate of another, for the lowest frequencies across. */
function productOf({ a, b, ends, picks, mirrored }: Pair, turned: boolean, kept: number): Complex {
  const product = real(new Float64Array(picks * kept));
  const { re, im } = product;
  const [stepA, stepB] = [a.ends / ends, b.ends / ends];
  const sign = turned ? -1 : 1;
  for (let l = 0, at = 0; l < picks; l++) {
    const rowA = l * (a.picks / picks) * a.ends;
    const rowB = l * (b.picks / picks) * b.ends;
    for (let k = 0; k < kept; k++, at++) {
      const hereA = rowA + k * stepA;
      const hereB = rowB + (mirrored && k > 0 ? ends - k : k) * stepB;
      const aRe = a.spectrum.re[hereA]!;
      const aIm = a.spectrum.im[hereA]!;
      const bRe = b.spectrum.re[hereB]!;
      const bIm = sign * b.spectrum.im[hereB]!;
      re[at] = aRe * bRe + aIm * bIm;
      im[at] = aIm * bRe - aRe * bIm;
    }
  }
  return product;
}

function sumOf(numbers: Float64Array): number {
  let sum = 0;
  for (const number of numbers) sum += number;
  return sum;
}
