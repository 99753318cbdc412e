import { colourAt, type Face } from '../cloth/face.js';
import { gcd } from '../order/necklace.js';
import { blurWeights } from './blur.js';

/** Above this correlation two cloths look nearly the same. */
const TWIN = 0.97;

/** A cloth as the eye gathers it: blurred values about their mean, with their spectrum. */
export interface Gathered {
  readonly ends: number;
  readonly picks: number;
  /** Row by row. */
  readonly field: Float64Array;
  readonly energy: number;
  readonly spectrum: Spectrum;
}

interface Spectrum {
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/** B v about its mean. `squareness`: picks per centimetre over ends per centimetre. */
export function gathered(face: Face, values: ArrayLike<number>, squareness: number): Gathered {
  const { ends, picks } = face;
  const v = Float64Array.from({ length: ends * picks }, (_, at) => {
    return values[colourAt(face, Math.floor(at / ends), at % ends)]!;
  });
  const across = convolve(v, picks, ends, blurWeights(ends, 1.5), true);
  const field = convolve(across, picks, ends, blurWeights(picks, 1.5 * squareness), false);
  const mean = field.reduce((sum, cell) => sum + cell, 0) / field.length;
  for (let at = 0; at < field.length; at++) field[at] = field[at]! - mean;
  return { ends, picks, field, energy: energyOf(field), spectrum: transform(field, picks, ends) };
}

/**
 * Whether two cloths look nearly the same: correlation of their blurred values above 0.97 at the best shift, mirror or
 * half turn; either sign where the colours may be exchanged. Repeats of different size are compared on what they have
 * in common: averaged to the greatest common repeat, beyond which they are uncorrelated.
 */
export function nearTwins(
  a: Gathered,
  b: Gathered,
  ways: { mirror: boolean; halfTurn: boolean; exchange: boolean },
): boolean {
  const ends = gcd(a.ends, b.ends);
  const picks = gcd(a.picks, b.picks);
  const left = folded(a, ends, picks);
  const right = folded(b, ends, picks);
  // Per cell of the whole, so that fields of different size compare.
  const whole = Math.sqrt((a.energy / a.field.length) * (b.energy / b.field.length)) * ends * picks;
  if (whole === 0) return a.energy === b.energy;
  const least = TWIN * whole;
  if (Math.sqrt(left.energy * right.energy) <= least || spectralBound(left, right) <= least) return false;
  const turns: readonly (readonly [boolean, boolean])[] = [
    [false, false],
    ...(ways.halfTurn ? ([[true, true]] as const) : []),
    ...(ways.mirror
      ? ([
          [true, false],
          [false, true],
        ] as const)
      : []),
  ];
  return turns.some(([flipAcross, flipDown]) => {
    const best = bestCorrelation(left, right, flipAcross, flipDown, ways.exchange);
    return best > least;
  });
}

/** The field averaged over all shifts by the smaller repeat. */
function folded(cloth: Gathered, ends: number, picks: number): Gathered {
  if (ends === cloth.ends && picks === cloth.picks) return cloth;
  const field = new Float64Array(ends * picks);
  const share = (ends * picks) / cloth.field.length;
  cloth.field.forEach((cell, at) => {
    const to = (Math.floor(at / cloth.ends) % picks) * ends + ((at % cloth.ends) % ends);
    field[to] = field[to]! + cell * share;
  });
  return { ends, picks, field, energy: energyOf(field), spectrum: transform(field, picks, ends) };
}

/** No shift can correlate more than the product of the amplitudes, frequency by frequency. */
function spectralBound(a: Gathered, b: Gathered): number {
  let sum = 0;
  const flat = a.field.length;
  for (let at = 0; at < flat; at++) {
    sum += Math.hypot(a.spectrum.re[at]!, a.spectrum.im[at]!) * amplitude(b, at);
  }
  return sum / flat;
}

/** The larger amplitude of a frequency and its mirror, so that the bound holds for mirrored cloths too. */
function amplitude(b: Gathered, at: number): number {
  const k = at % b.ends;
  const mirrored = at - k + ((b.ends - k) % b.ends);
  return Math.max(
    Math.hypot(b.spectrum.re[at]!, b.spectrum.im[at]!),
    Math.hypot(b.spectrum.re[mirrored]!, b.spectrum.im[mirrored]!),
  );
}

/** Σ a(x)·b(g·x + t) at its best t, by the correlation theorem. */
function bestCorrelation(a: Gathered, b: Gathered, flipAcross: boolean, flipDown: boolean, either: boolean): number {
  const { ends, picks } = a;
  const re = new Float64Array(ends * picks);
  const im = new Float64Array(ends * picks);
  for (let l = 0; l < picks; l++) {
    for (let k = 0; k < ends; k++) {
      const at = l * ends + k;
      const from = (flipDown ? (picks - l) % picks : l) * ends + (flipAcross ? (ends - k) % ends : k);
      const [ar, ai] = [a.spectrum.re[at]!, a.spectrum.im[at]!];
      const [br, bi] = [b.spectrum.re[from]!, b.spectrum.im[from]!];
      re[at] = ar * br + ai * bi;
      im[at] = ai * br - ar * bi;
    }
  }
  // The forward transform of a spectrum is the correlation read backwards: all shifts are there all the same.
  const shifts = lines(lines({ re, im }, picks, ends, true), picks, ends, false).re;
  let best = 0;
  for (const sum of shifts) best = Math.max(best, either ? Math.abs(sum) : sum);
  return best / (ends * picks);
}

function energyOf(field: Float64Array): number {
  return field.reduce((sum, cell) => sum + cell * cell, 0);
}

function convolve(v: Float64Array, picks: number, ends: number, weights: Float64Array, across: boolean): Float64Array {
  const result = new Float64Array(v.length);
  for (let j = 0; j < picks; j++) {
    for (let i = 0; i < ends; i++) {
      let sum = 0;
      for (let d = 0; d < weights.length; d++) {
        const from = across ? j * ends + ((i + d) % ends) : ((j + d) % picks) * ends + i;
        sum += weights[d]! * v[from]!;
      }
      result[j * ends + i] = sum;
    }
  }
  return result;
}

/** Discrete Fourier transform of a real field, rows then columns, for any size. */
function transform(field: Float64Array, picks: number, ends: number): Spectrum {
  return lines(lines({ re: field, im: new Float64Array(field.length) }, picks, ends, true), picks, ends, false);
}

/** Transforms every row (or every column). */
function lines(s: Spectrum, picks: number, ends: number, across: boolean): Spectrum {
  const n = across ? ends : picks;
  const step = across ? 1 : ends;
  const re = new Float64Array(s.re.length);
  const im = new Float64Array(s.re.length);
  const cos = Float64Array.from({ length: n }, (_, k) => Math.cos((2 * Math.PI * k) / n));
  const sin = Float64Array.from({ length: n }, (_, k) => -Math.sin((2 * Math.PI * k) / n));
  for (let line = 0; line < s.re.length / n; line++) {
    const start = across ? line * ends : line;
    for (let k = 0; k < n; k++) {
      let sumRe = 0;
      let sumIm = 0;
      for (let x = 0, at = start, turn = 0; x < n; x++, at += step) {
        sumRe += s.re[at]! * cos[turn]! - s.im[at]! * sin[turn]!;
        sumIm += s.re[at]! * sin[turn]! + s.im[at]! * cos[turn]!;
        turn += k;
        if (turn >= n) turn -= n;
      }
      re[start + k * step] = sumRe;
      im[start + k * step] = sumIm;
    }
  }
  return { re, im };
}
