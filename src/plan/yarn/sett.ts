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

/** How a cloth is to hang, and the share of the closest sett that is usual for it (common practice, no source). */
export const HANDS = { general: 0.8, drape: 0.7 } as const;
export type Hand = keyof typeof HANDS;

/** The closest sett and the one advised, in ends per inch, with the figures they come from. */
export interface SettAdvice {
  /** Threads that lie side by side in an inch. */
  readonly diameters: number;
  /** Ends and intersections in one repeat of the weave, averaged over its picks. */
  readonly ends: number;
  readonly intersections: number;
  readonly closest: number;
  /** So much of the closest is advised. */
  readonly share: number;
  readonly advised: number;
}

/** Diameters in an inch of yarn of so many grams per 1000 m. */
export function diametersPerInch(tex: number, fibre: Fibre): number {
  return DIAMETERS[fibre] * Math.sqrt(lengthPerWeight(tex).yardsPerPound);
}

/**
 * The closest that ends can be set: diameters × ends / (ends + intersections) in the weave's repeat (Ashenhurst).
 * `diameters` may as well be wraps counted round a ruler.
 */
export function closestSett(diameters: number, ends: number, intersections: number): number {
  return (diameters * ends) / (ends + intersections);
}

/**
 * How often the weft passes from face to back or from back to face in one repeat, averaged over the picks. Pattern picks
 * lie on a ground that is cloth without them, and are left out.
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

/** The sett that a weave of this yarn bears. */
export function adviseSett(weave: Weave, diameters: number, hand: Hand): SettAdvice {
  const ends = threadingPeriod(weave);
  const intersections = (intersectionsOf(weave) * ends) / weave.threading.length;
  const closest = closestSett(diameters, ends, intersections);
  const share = HANDS[hand];
  return { diameters, ends, intersections, closest, share, advised: closest * share };
}
