import { FLOAT_SIDES, type Floats } from '../../cloth/floats.js';
import type { FloatLimit } from './float-limit.js';

export type { FloatLimit } from './float-limit.js';

/** The parts of a score. */
export const PARTS = [
  'contrast',
  'symmetry',
  'float',
  'figure',
  'figured',
  'ease',
  'novelty',
  'newness',
  'balance',
  'solid',
  'sharp',
  'calm',
  'lively',
  'unlike',
] as const;
export type Part = (typeof PARTS)[number];
export type Weights = Readonly<Record<Part, number>>;

/** Whether two rankings weigh the same. */
export function sameWeights(a: Weights, b: Weights): boolean {
  return PARTS.every((part) => a[part] === b[part]);
}

/** The longest float in threads and in millimetres; a limit uses one of the two. */
interface LongestFloat {
  readonly longest: number | null;
  readonly longestMm: number | null;
}

/** Σ weight·part / Σ weight, every part from 0 to 1; 0 where nothing is weighed. */
export function rankScore(parts: Readonly<Record<Part, number>>, weights: Weights): number {
  let sum = 0;
  let all = 0;
  for (const part of PARTS) {
    const weight = weights[part];
    if (weight === 0) continue;
    sum += weight * parts[part];
    all += weight;
  }
  return all === 0 ? 0 : sum / all;
}

/**
 * Shares of figure: up to the first it is a plaid, from the second to the third best, beyond it the structure shows
 * most.
 */
const PLAID = 0.1;
const FIGURE_FROM = 0.25;
const FIGURE_TO = 0.6;

/**
 * How good a share of figure is: 1 from 0.25 to 0.6, 0 for plaids below 0.1 (common practice) and for 1, figure alone.
 */
export function figuredPart(figure: number): number {
  return Math.max(0, Math.min(1, (figure - PLAID) / (FIGURE_FROM - PLAID), (1 - figure) / (1 - FIGURE_TO)));
}

/** From this difference to the nearest classic on (0 to 1), newness is 1. Few orders differ by more. */
const NOVEL = 0.1;

/** How new a cloth is: 1 from a difference of a tenth to the nearest classic on (a choice of ours), less towards 0. */
export function newnessPart(novelty: number): number {
  return Math.min(1, novelty / NOVEL);
}

/** Whether a ranking asks how far a cloth is from the classic orders, for which these have to be measured. */
export function asksNovelty(weights: Weights): boolean {
  return weights.novelty > 0 || weights.newness > 0;
}

/** Scores are compared rounded to nine decimals, so that rounding errors never decide a rank. */
export function comparable(score: number): number {
  return Math.round(score * 1e9);
}

/** Whether the longest float is above the limit; a strand that never interlaces always is. */
export function exceedsFloat(floats: LongestFloat, limit: FloatLimit): boolean {
  if (floats.longest === null || floats.longestMm === null) return true;
  return 'mm' in limit ? floats.longestMm > limit.mm + 1e-9 : floats.longest > limit.threads;
}

/**
 * Of the floats of two cloths, those nearer to a limit, in the unit of the limit; if one is undefined, the other. The
 * result does not depend on the order of the arguments.
 */
export function nearerFloats(a: Floats | undefined, b: Floats | undefined, limit: FloatLimit): Floats | undefined {
  if (a === undefined || b === undefined) return a ?? b;
  const [first, other] = [sizesFor(limit, a), sizesFor(limit, b)];
  const differs = first.findIndex((size, at) => size !== other[at]);
  return differs >= 0 && other[differs]! < first[differs]! ? b : a;
}

/** The keys by which floats are compared: first the one that the limit counts, then the others. */
function sizesFor(limit: FloatLimit, { longest, longestMm, ...sides }: Floats): number[] {
  const main = 'mm' in limit ? [longestMm, longest] : [longest, longestMm];
  return [...main, ...FLOAT_SIDES.map((side) => sides[side])].map((size) => size ?? Number.POSITIVE_INFINITY);
}

/**
 * F = clamp((limit − longest)/(limit − 1), 0, 1): 1 for floats of one thread, 0 at the limit. A limit in length is
 * counted in lengths, one thread being the larger `spacing` (mm).
 */
export function floatPart(floats: LongestFloat, limit: FloatLimit, spacing: number): number {
  if (floats.longest === null || floats.longestMm === null) return 0;
  const [most, longest, one] =
    'mm' in limit ? [limit.mm, floats.longestMm, spacing] : [limit.threads, floats.longest, 1];
  if (most - one <= 1e-12) return longest <= one + 1e-9 ? 1 : 0;
  return Math.min(1, Math.max(0, (most - longest) / (most - one)));
}
