import { Problem, quote } from '../problem.js';
import { formatHex, parse } from './css-colour.js';

/** A yarn: the letter it is written with, its colour, and its size where known. */
export interface Yarn {
  /** One upper-case letter, as written in colour orders (D, L, …). */
  readonly letter: string;
  readonly name: string;
  /** sRGB, `#rrggbb`. */
  readonly hex: string;
  /** Grams per 1000 m. */
  readonly tex?: number;
}

/** Converts any CSS colour to `#rrggbb`. Throws a Problem if the text is no colour. */
export function hexOf(colour: string): string {
  const parsed = parsedColour(colour);
  if (parsed === undefined) throw new Problem(`${quote(colour)} is not a colour; expected one like "#1f2a44"`);
  return formatHex(parsed);
}

/** The parser throws an error of its own on a few texts that are no colour, as “color(” and “/1f2a44”. */
function parsedColour(colour: string): ReturnType<typeof parse> {
  try {
    return parse(colour);
  } catch {
    return undefined;
  }
}

/** The linear light (0–1) of each 8-bit sRGB value, by the transfer function of IEC 61966-2-1. */
export const LINEAR = Float64Array.from({ length: 256 }, (_, step) => {
  const v = step / 255;
  if (v <= 0.04045) return v / 12.92;
  const base = (v + 0.055) / 1.055;
  return base * base * fifthRoot(base) ** 2;
});

/**
 * The fifth root of a number from 0.09 to 1, by Newton's method. Engines differ in the last bit of their powers; sums,
 * products and quotients are the same in all of them, and so are then all figures.
 */
function fifthRoot(x: number): number {
  let root = 1;
  for (let step = 0; step < 12; step++) root = (4 * root + x / (root * root * root * root)) / 5;
  return root;
}

/** Red, green and blue in linear light, 0 to 1. */
export function linearLight(hex: string): readonly [number, number, number] {
  const rgb = Number.parseInt(hex.slice(1), 16);
  return [LINEAR[rgb >> 16]!, LINEAR[(rgb >> 8) & 255]!, LINEAR[rgb & 255]!];
}

/** Luminance Y, 0 to 1, with the weights of the standard rounded to four places (0.2126, 0.7152, 0.0722). */
export function luminance(hex: string): number {
  const [r, g, b] = linearLight(hex);
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

/** CIE L* (0–100) of a luminance Y (0–1), with the exact constants 216/24389 and 24389/27. */
export function lightness(y: number): number {
  return y > 216 / 24389 ? 116 * Math.cbrt(y) - 16 : (24389 / 27) * y;
}

/**
 * The value of each yarn: its L*, scaled so that the darkest yarn of the palette is 0 and the lightest 1. All values
 * are 0 if the yarns are equally light (L* within 1e-9).
 */
export function values(yarns: readonly Yarn[]): Float64Array {
  const light = yarns.map((yarn) => lightness(luminance(yarn.hex)));
  const darkest = Math.min(...light);
  const range = Math.max(...light) - darkest;
  return Float64Array.from(light, (l) => (range < 1e-9 ? 0 : (l - darkest) / range));
}
