import { FLOAT_SIDES, type Floats } from '../../cloth/floats.js';
import type { FloatLimit } from '../model/float-limit.js';
import { figuresFor } from '../parts/look-figures.js';
import { PARTS, type Part, type Weights } from '../parts/parts.js';

/** Whether two rankings weigh the same. */
export function sameWeights(a: Weights, b: Weights): boolean {
  return PARTS.every((part) => a[part] === b[part]);
}

/** The longest float in threads and in millimetres; a limit uses one of the two. */
interface LongestFloat {
  readonly longest: number | null;
  readonly longestMm: number | null;
}

/**
 * Scores cloths in one ranking: Σ weight·part / Σ weight, every part from 0 to 1; 0 where nothing is weighed. Parts
 * without weight are not asked for.
 */
export function scorer(weights: Weights): (partOf: (part: Part) => number) => number {
  const weighed = PARTS.filter((part) => weights[part] !== 0).map((part) => ({ part, weight: weights[part] }));
  const all = weighed.reduce((sum, { weight }) => sum + weight, 0);
  return (partOf) => {
    let sum = 0;
    for (const { part, weight } of weighed) sum += weight * partOf(part);
    return all === 0 ? 0 : sum / all;
  };
}

/** The score of a cloth whose parts are all known. */
export function rankScore(parts: Readonly<Record<Part, number>>, weights: Weights): number {
  return scorer(weights)((part) => parts[part]);
}

/** Whether a ranking asks how far a cloth is from the classic orders, for which these have to be measured. */
export function asksNovelty(weights: Weights): boolean {
  return figuresFor(weights).has('novelty');
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
