import { linearLight, luminance, type Yarn } from '../colour/yarn.js';

/** Steps of the lookup table for linear light: fine enough to reach every sRGB value, the darkest included. */
const STEPS = 65535;

const ENCODED = Uint8Array.from({ length: STEPS + 1 }, (_, step) => {
  const l = step / STEPS;
  return Math.round(255 * (l <= 0.0031308 ? 12.92 * l : 1.055 * l ** (1 / 2.4) - 0.055));
});

/** The 8-bit sRGB value (0–255) of linear light (0–1, clipped), by the transfer function of IEC 61966-2-1. */
export function encodeLight(linear: number): number {
  if (linear >= 1) return 255;
  return linear > 0 ? ENCODED[(linear * STEPS + 0.5) | 0]! : 0;
}

/** Linear red, green and blue of each yarn, three numbers per yarn; with `grey`, its luminance three times. */
export function yarnLight(yarns: readonly Yarn[], grey: boolean): Float64Array {
  return Float64Array.from(
    yarns.flatMap(({ hex }) => (grey ? [luminance(hex), luminance(hex), luminance(hex)] : linearLight(hex))),
  );
}
