import { type Draft, liftAt, shaftCount } from '../draft/draft.js';
import { countermarchTieUp, type Lift, liftsUsed, sinkingTieUp, twoFootTieUp } from '../structure/loom.js';
import { type Per, sayLength } from './measure.js';

/** How a loom opens its shed. */
export const LOOM_KINDS = ['rising', 'sinking', 'countermarch', 'table'] as const;
export type LoomKind = (typeof LOOM_KINDS)[number];

/** A loom as far as it limits what can be woven on it. What is not given does not limit. */
export interface Loom {
  readonly kind: LoomKind;
  readonly shafts?: number;
  readonly treadles?: number;
  /** Heddles on each shaft, shaft 1 first. */
  readonly heddles?: readonly number[];
  /** Weaving width in millimetres. */
  readonly width?: number;
  /** Shuttles that the weaver has, or is at ease with. */
  readonly shuttles?: number;
}

/** A draft tied up for one loom. */
export interface TiedUp {
  /** Shafts that each treadle raises (rising), lowers (sinking), or raises and lowers (countermarch). */
  readonly tieUp: readonly { readonly rise: Lift; readonly sink: Lift }[];
  /** Treadles pressed at each pick; empty for a lift plan. */
  readonly treadling: readonly (readonly number[])[];
  /** Shafts raised at each pick. */
  readonly lifts: readonly Lift[];
  readonly manner: 'one foot' | 'two feet' | 'lift plan';
}

/** What a warp asks of a loom. */
export interface Demand {
  readonly draft: Draft;
  /** Heddles on each shaft, shaft 1 first. */
  readonly heddles: readonly number[];
  /** Width in the reed, in millimetres. */
  readonly width: number;
  readonly shuttles: number;
}

/**
 * The tie-up of a draft on a loom: its lifts in the order in which they are first used, one foot where the treadles
 * are enough, two feet where they are not, a lift plan on a table loom or where nothing else will do.
 */
export function tiedUp(draft: Draft, loom: Pick<Loom, 'kind' | 'treadles' | 'shafts'>): TiedUp {
  const used = liftsUsed(draft);
  const lifts = draft.treadling.map((_, j) => liftAt(draft, j));
  const tied = loom.kind === 'table' ? undefined : twoFootTieUp(used, loom.treadles ?? used.length);
  if (tied === undefined) return { tieUp: [], treadling: [], lifts, manner: 'lift plan' };
  const shafts = Math.max(shaftCount(draft), loom.shafts ?? 0);
  const sinks = sinkingTieUp(tied.tieUp, shafts);
  const both = countermarchTieUp(tied.tieUp, shafts);
  const numbers = new Map(used.map((lift, at) => [lift.join(), tied.presses[at]!]));
  const treadling = lifts.map((lift) => numbers.get(lift.join())!);
  return {
    tieUp: tied.tieUp.map((rise, t) => {
      if (loom.kind === 'sinking') return { rise: [], sink: sinks[t]! };
      return loom.kind === 'countermarch' ? both[t]! : { rise, sink: [] };
    }),
    treadling,
    lifts,
    manner: treadling.some((pressed) => pressed.length > 1) ? 'two feet' : 'one foot',
  };
}

/** Why a warp cannot be woven on a loom, one clause each; none where it can. */
export function obstacles({ draft, heddles, width, shuttles }: Demand, loom: Loom, per: Per): string[] {
  const found: string[] = [];
  const shafts = heddles.length;
  if (loom.shafts !== undefined && shafts > loom.shafts)
    found.push(`needs ${shafts} shafts, the loom has ${loom.shafts}`);
  if (loom.width !== undefined && width > loom.width + 1e-6) {
    found.push(`needs ${sayLength(width, per)} in the reed, the loom has ${sayLength(loom.width, per)}`);
  }
  if (loom.shuttles !== undefined && shuttles > loom.shuttles) {
    found.push(`needs ${shuttles} shuttles, the weaver has ${loom.shuttles}`);
  }
  heddles.forEach((count, at) => {
    const there = loom.heddles?.[at];
    if (there !== undefined && count > there)
      found.push(`needs ${count} heddles on shaft ${at + 1}, the loom has ${there}`);
  });
  if (loom.kind !== 'table' && loom.treadles !== undefined && tiedUp(draft, loom).manner === 'lift plan') {
    found.push(`needs ${liftsUsed(draft).length} treadles, the loom has ${loom.treadles}, and two feet will not do it`);
  }
  // Two feet on a countermarch would have to raise and sink one shaft at once.
  if (loom.kind === 'countermarch' && tiedUp(draft, loom).manner === 'two feet') {
    found.push(`needs ${liftsUsed(draft).length} treadles on a countermarch, the loom has ${loom.treadles}`);
  }
  return found;
}
