/*
 * A niche is a class of cloths of similar motif size, dark share and symmetry. Every axis is a whole number, so that no
 * rounding moves a cloth from one niche to another: size in doublings (0 for a motif of one thread, k for one of more
 * than 2^(k−1) up to 2^k threads, the longer side); dark share of the face in tenths, 0 to 9 (with colour exchange, the
 * share of the rarer of dark and light); symmetry in quarters, 0 to 4.
 */
const SIZES = 12;
const TENTHS = 10;
/** Niches that differ in symmetry alone have numbers that follow one another, from that without any. */
export const QUARTERS = 5;

/** Number of niches. */
export const NICHES = SIZES * TENTHS * QUARTERS;

/** What the kind of a cloth is found from. */
interface NicheFigures {
  /** Ends and picks of the smallest repeat of the face. */
  readonly ends: number;
  readonly picks: number;
  readonly darkShare: number;
  /** Symmetry S: 0, 0.25, 0.5, 0.75 or 1. */
  readonly symmetry: number;
}

/**
 * The share of the darker colour in a face of two colours, computed from the dark share and the values of the colours;
 * 0 where neither is darker.
 */
export function darkerOfTwo(darkShare: number, a: number, b: number): number {
  const light = Math.max(a, b);
  return a === b ? 0 : (darkShare - (1 - light)) / (light - Math.min(a, b));
}

/** The number of a cloth's niche. With `exchange`, cloths that differ by exchanging dark and light share a niche. */
export function nicheOf({ ends, picks, darkShare, symmetry }: NicheFigures, exchange: boolean): number {
  const size = Math.min(SIZES - 1, 32 - Math.clz32(Math.max(ends, picks) - 1));
  const dark = exchange ? Math.min(darkShare, 1 - darkShare) : darkShare;
  // The share is first rounded to billionths, so that rounding errors do not push a whole tenth down.
  const tenth = Math.min(TENTHS - 1, Math.floor(Math.round(dark * 1e9) / 1e8));
  return (size * TENTHS + tenth) * QUARTERS + Math.round(4 * symmetry);
}
