import { type Draft, liftAt } from '../../draft/draft.js';
import { type Lift, liftsUsed } from '../../structure/loom/lifts.js';
import { canBeTied, type Loom, type LoomTieUp, tieUpOn } from '../../structure/loom/loom-fit.js';
import { type Per, sayLength } from '../../words/measure.js';

/** A draft tied up for one loom. */
export interface TiedUp extends LoomTieUp {
  /** Shafts raised at each pick. */
  readonly lifts: readonly Lift[];
}

/** What a warp asks of a loom. */
interface Demand {
  readonly draft: Draft;
  /** Heddles on each shaft, shaft 1 first. */
  readonly heddles: readonly number[];
  /** Width in the reed, in millimetres. */
  readonly width: number;
  readonly shuttles: number;
}

/** The tie-up of a draft on a loom, and the shafts raised at each pick. Shafts that carry no ends are left untied. */
export function tiedUpOn(draft: Draft, { kind, treadles }: Pick<Loom, 'kind' | 'treadles'>): TiedUp {
  const loom = { kind, ...(treadles !== undefined && { treadles }) };
  return { ...tieUpOn(draft, loom), lifts: draft.treadling.map((_, j) => liftAt(draft, j)) };
}

/** The reasons why a warp cannot be woven on a loom, one clause each; empty if it can. */
export function loomObstacles({ draft, heddles, width, shuttles }: Demand, loom: Loom, per: Per): string[] {
  const found: string[] = [];
  if (loom.shafts !== undefined && heddles.length > loom.shafts) {
    found.push(`needs ${heddles.length} shafts, the loom has ${loom.shafts}`);
  }
  if (loom.width !== undefined && width > loom.width + 1e-6) {
    found.push(`needs ${sayLength(width, per)} in the reed, the loom has ${sayLength(loom.width, per)}`);
  }
  if (loom.shuttles !== undefined && shuttles > loom.shuttles) {
    found.push(`needs ${shuttles} shuttles, the weaver has ${loom.shuttles}`);
  }
  heddles.forEach((count, at) => {
    const there = loom.heddles?.[at];
    if (there !== undefined && count > there) {
      found.push(`needs ${count} heddles on shaft ${at + 1}, the loom has ${there}`);
    }
  });
  if (!canBeTied(draft, loom)) {
    const feet = loom.kind === 'countermarch' ? '' : ', and two feet will not do it';
    found.push(`needs ${liftsUsed(draft).length} treadles, the loom has ${loom.treadles}${feet}`);
  }
  return found;
}
