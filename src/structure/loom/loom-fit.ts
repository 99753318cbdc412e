import { liftAt, shaftCount, type Weave } from '../../draft/draft.js';
import { countermarchTieUp, type Lift, liftsUsed, sinkingTieUp, twoFootTieUp } from './lifts.js';

/** How a loom opens its shed. */
export const LOOM_KINDS = ['rising', 'sinking', 'countermarch', 'table'] as const;
export type LoomKind = (typeof LOOM_KINDS)[number];

/** The properties of a loom that limit a weave. An absent property sets no limit. */
export interface Loom {
  readonly kind: LoomKind;
  readonly shafts?: number;
  readonly treadles?: number;
  /** Heddles on each shaft, shaft 1 first; shafts beyond the list have enough. */
  readonly heddles?: readonly number[];
  /** Ends in the warp, for counting heddles. Default: one whole repeat. */
  readonly ends?: number;
  /** Most shuttles that the weaver wants to use. */
  readonly shuttles?: number;
  /** Weaving width in millimetres. */
  readonly width?: number;
}

/** Heddles on each shaft, shaft 1 first, for a warp of `ends` ends of the repeated threading. */
export function heddlesFor(weave: Pick<Weave, 'threading' | 'tieUp'>, ends: number): number[] {
  const counts = new Array<number>(shaftCount(weave)).fill(0);
  const { length } = weave.threading;
  weave.threading.forEach((shafts, end) => {
    const times = Math.max(0, Math.ceil((ends - end) / length));
    for (const shaft of shafts) counts[shaft - 1]! += times;
  });
  return counts;
}

/** A weave tied up for one loom. */
export interface LoomTieUp {
  /** Shafts that each treadle raises and lowers; empty for a lift plan. */
  readonly treadles: readonly { readonly rise: Lift; readonly sink: Lift }[];
  /** Treadles pressed at each pick, numbered from 1; empty for a lift plan. */
  readonly treadling: readonly (readonly number[])[];
  readonly manner: 'one foot' | 'two feet' | 'lift plan';
}

/**
 * Ties up a weave on a loom: one treadle per lift if there are enough, else two feet, else a lift plan. Two treadles of
 * a rising shed raise the union of their shafts; of a sinking shed they lower the union, so there the lowered shafts
 * are divided between them. On a countermarch two treadles would pull one shaft both ways (Booker), so only one foot is
 * used. A table loom has no treadles.
 */
export function tieUpOn(
  weave: Pick<Weave, 'threading' | 'tieUp' | 'treadling'>,
  loom: Pick<Loom, 'kind' | 'shafts' | 'treadles'>,
): LoomTieUp {
  const { kind, treadles = Number.POSITIVE_INFINITY } = loom;
  const lifts = liftsUsed(weave);
  const shafts = Math.max(shaftCount(weave), loom.shafts ?? 0);
  const isOneFoot = lifts.length <= treadles;
  if (kind === 'table' || (kind === 'countermarch' && !isOneFoot)) return LIFT_PLAN;
  const moved = kind === 'sinking' ? sinkingTieUp(lifts, shafts) : lifts;
  const tied = isOneFoot ? { tieUp: moved, presses: moved.map((_, at) => [at + 1]) } : twoFootTieUp(moved, treadles);
  if (tied === undefined) return LIFT_PLAN;
  const presses = new Map(lifts.map((lift, at) => [lift.join(), tied.presses[at]!]));
  return {
    treadles:
      kind === 'countermarch'
        ? countermarchTieUp(tied.tieUp, shafts)
        : tied.tieUp.map((tie) => (kind === 'sinking' ? { rise: [], sink: tie } : { rise: tie, sink: [] })),
    treadling: weave.treadling.map((_, j) => presses.get(liftAt(weave, j).join())!),
    manner: isOneFoot ? 'one foot' : 'two feet',
  };
}

const LIFT_PLAN: LoomTieUp = { treadles: [], treadling: [], manner: 'lift plan' };

/** Whether a loom can make the lifts of a weave. */
export function canBeTied(
  weave: Pick<Weave, 'threading' | 'tieUp' | 'treadling'>,
  loom: Pick<Loom, 'kind' | 'shafts' | 'treadles'>,
): boolean {
  return loom.kind === 'table' || loom.treadles === undefined || tieUpOn(weave, loom).manner !== 'lift plan';
}

/** The reasons why a weave cannot be woven on a loom, one clause each; empty if it can. Shuttles are not checked. */
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
