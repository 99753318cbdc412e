import { type Descriptor, featureDistance, isNearer } from './descriptor.js';

/** Two cloths that are less unlike than this (0 to 1, a choice of ours, made by looking) are of one kind. */
export const SAME_KIND = 0.2;

/** Thresholds tried for a given number of cloths. */
const WIDEST = 0.5;
const STEP = 0.05;

/**
 * Chooses cloths that look unlike: the first, and then each that is at least `least` from all chosen before it, at most
 * `most`. Returns their places in the list, ascending.
 */
export function unlikeOnes(cloths: readonly Descriptor[], least: number, most = cloths.length): number[] {
  const chosen: number[] = [];
  for (let at = 0; at < cloths.length && chosen.length < most; at++) {
    // The one with the most similar traits is the likeliest to be near, and decides soonest.
    const far = new Map(chosen.map((one) => [one, featureDistance(cloths[one]!, cloths[at]!)]));
    const nearestFirst = [...far].sort(([, a], [, b]) => a - b);
    if (!nearestFirst.some(([one]) => isNearer(cloths[one]!, cloths[at]!, least))) chosen.push(at);
  }
  return chosen;
}

/** Chooses `count` cloths as {@link unlikeOnes} does, as far apart as still gives so many, in steps of a twentieth. */
export function mostUnlike(cloths: readonly Descriptor[], count: number): number[] {
  for (let least = WIDEST; least > STEP / 2; least -= STEP) {
    const chosen = unlikeOnes(cloths, least, count);
    if (chosen.length >= count) return chosen;
  }
  return unlikeOnes(cloths, 0, count);
}
