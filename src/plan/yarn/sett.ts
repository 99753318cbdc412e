import { drawdown } from '../../cloth/drawdown.js';
import type { Weave } from '../../draft/draft.js';
import { threadingPeriod } from '../../order/lay.js';
import { type Fibre, lengthPerWeight } from './yarn-size.js';

/**
 * Threads that lie side by side in an inch, over the square root of yards per pound: T. R. Ashenhurst's rule for the
 * diameter of yarns, with the figures usual among handweavers (P. Osterkamp; articles on the calculated sett).
 */
const DIAMETERS: Readonly<Record<Fibre, number>> = {
  cotton: 0.92,
  silk: 0.92,
  linen: 0.92,
  worsted: 0.9,
  woollen: 0.85,
};

/** Share of the closest sett that is usual for general cloth and for cloth that drapes (common practice, no source). */
export const HANDS = { general: 0.8, drape: 0.7 } as const;
export type Hand = keyof typeof HANDS;

/** The closest and the advised sett, in ends per inch, with the figures they are computed from. */
export interface SettAdvice {
  /** Threads that lie side by side in an inch. */
  readonly diameters: number;
  /** Ends and intersections in one repeat of the weave, averaged over its picks. */
  readonly ends: number;
  readonly intersections: number;
  readonly closest: number;
  /** Advised sett divided by closest sett. */
  readonly share: number;
  readonly advised: number;
}

/** Yarn diameters in an inch, for a yarn of `tex` grams per 1000 m. */
export function diametersPerInch(tex: number, fibre: Fibre): number {
  return DIAMETERS[fibre] * Math.sqrt(lengthPerWeight(tex).yardsPerPound);
}

/**
 * The closest sett: diameters × ends / (ends + intersections), in one repeat of the weave (Ashenhurst).
 * `diameters` may as well be wraps counted round a ruler.
 */
export function closestSett(diameters: number, ends: number, intersections: number): number {
  return (diameters * ends) / (ends + intersections);
}

/**
 * The number of times that the weft passes between face and back in one repeat, averaged over the picks. Pattern picks
 * are left out: the ground is a cloth without them.
 */
export function intersectionsOf(weave: Weave): number {
  const { ends, picks, up, endKind, endKinds, pickKind } = drawdown(weave);
  const ground = Array.from({ length: picks }, (_, j) => j).filter((j) => weave.pickKinds[j] !== 'pattern');
  let changes = 0;
  for (const j of ground) {
    const row = pickKind[j]! * endKinds;
    for (let i = 0; i < ends; i++) {
      if (up[row + endKind[i]!] !== up[row + endKind[(i + 1) % ends]!]) changes++;
    }
  }
  return changes / ground.length;
}

/** Computes the closest and the advised sett of a weave in a yarn. */
export function adviseSett(weave: Weave, diameters: number, hand: Hand): SettAdvice {
  const ends = threadingPeriod(weave);
  const intersections = (intersectionsOf(weave) * ends) / weave.threading.length;
  const closest = closestSett(diameters, ends, intersections);
  const share = HANDS[hand];
  return { diameters, ends, intersections, closest, share, advised: closest * share };
}
