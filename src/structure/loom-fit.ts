import { shaftCount, type Weave } from '../draft/draft.js';
import { liftsUsed, MOST_LIFTS, twoFootTieUp } from './loom.js';

/** How a loom opens its shed. */
export const LOOM_KINDS = ['rising', 'sinking', 'countermarch', 'table'] as const;
export type LoomKind = (typeof LOOM_KINDS)[number];

/** A loom as far as it limits what can be woven on it. What is not given does not limit. */
export interface Loom {
  readonly kind: LoomKind;
  readonly shafts?: number;
  readonly treadles?: number;
  /** Heddles on each shaft, shaft 1 first; on shafts beyond the list there are as many as are wanted. */
  readonly heddles?: readonly number[];
  /** Ends in the warp, for which heddles are counted; one whole repeat where it is not given. */
  readonly ends?: number;
  /** Shuttles that the weaver has, or is at ease with. */
  readonly shuttles?: number;
}

/** Heddles that a warp of so many ends takes on each shaft, shaft 1 first, the repeat begun again until it is full. */
export function heddlesFor(weave: Pick<Weave, 'threading' | 'tieUp'>, ends: number): number[] {
  const counts = new Array<number>(shaftCount(weave)).fill(0);
  const { length } = weave.threading;
  weave.threading.forEach((shafts, end) => {
    const times = Math.max(0, Math.ceil((ends - end) / length));
    for (const shaft of shafts) counts[shaft - 1]! += times;
  });
  return counts;
}

/**
 * Whether the lifts of a weave can be had: one treadle each, or two feet. On a countermarch two treadles would have to
 * raise and sink one shaft at once (Booker), so there one foot must do. A table loom has no treadles.
 */
export function canBeTied(weave: Pick<Weave, 'tieUp' | 'treadling'>, loom: Pick<Loom, 'kind' | 'treadles'>): boolean {
  const { kind, treadles } = loom;
  if (kind === 'table' || treadles === undefined) return true;
  const lifts = liftsUsed(weave);
  if (lifts.length <= treadles) return true;
  return kind !== 'countermarch' && lifts.length <= MOST_LIFTS && twoFootTieUp(lifts, treadles) !== undefined;
}

/** Why a weave cannot be woven on a loom, one clause each; none where it can. Shuttles are the colours' affair. */
export function obstacles(weave: Weave, loom: Loom): string[] {
  const found: string[] = [];
  const wanted = heddlesFor(weave, loom.ends ?? weave.threading.length);
  if (loom.shafts !== undefined && wanted.length > loom.shafts) {
    found.push(`needs ${wanted.length} shafts, the loom has ${loom.shafts}`);
  }
  wanted.forEach((count, at) => {
    const owned = loom.heddles?.[at];
    if (owned !== undefined && count > owned) {
      found.push(`needs ${count} heddles on shaft ${at + 1}, the loom has ${owned}`);
    }
  });
  if (!canBeTied(weave, loom)) {
    const feet = loom.kind === 'countermarch' ? '' : ', and two feet will not do it';
    found.push(`needs ${liftsUsed(weave).length} treadles, the loom has ${loom.treadles}${feet}`);
  }
  return found;
}
