import type { PlanOptions } from '../options/plan-options.js';
import type { WarpPlan } from '../piece/warp-plan.js';
import { narrower, warpFor, widthWords } from './deal.js';

/** What would help where a loom cannot weave a warp, one clause each. */
export function remedies(warp: WarpPlan, options: PlanOptions): string[] {
  const { cloth } = warp.pieces[0]!;
  const { loom } = options;
  const slim = narrower(cloth, options, loom);
  const { treadles: _, ...others } = loom;
  const lifted = warpFor(cloth, options, { ...others, kind: 'table' });
  return [
    ...(slim === undefined ? [] : [`it fits on ${slim.ends.length} ends: a width of ${widthWords(slim)}`]),
    ...(loom.kind !== 'table' && lifted.faults.length === 0
      ? ['a table loom would weave it, lifted shaft by shaft']
      : []),
    'explore with the same --loom shows only what it weaves',
  ];
}
