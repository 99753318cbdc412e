import { type Draft, spacing } from '../../draft/draft.js';
import { Problem } from '../../problem.js';
import type { PlanOptions } from '../options/plan-options.js';
import { balanceOf, evenFillings, nearestFillings } from '../warp/fill-width.js';

/** No hand-woven warp has more ends (a choice of ours). */
export const MOST_ENDS = 10_000;

/** How the width is filled: the repeats, what balances the last of them, and the borders. */
export function repeatsAcross(draft: Draft, options: PlanOptions) {
  const { across } = spacing(draft.sett);
  const wanted = Math.round(options.width / across + 1e-9);
  if (wanted > MOST_ENDS) {
    throw new Problem(`found room for ${wanted} ends in the width; expected ${MOST_ENDS} at most`);
  }
  const repeat = draft.warp.length;
  const balance = balanceIn(draft, options);
  const fixed = options.border?.ends ?? 0;
  if (fixed !== 'even' && fixed > 0 && 2 * fixed >= wanted) {
    throw new Problem(`border: found two of ${fixed} ends; expected fewer ends than the ${wanted} of the warp`);
  }
  const fillings =
    fixed === 'even' ? evenFillings(wanted, repeat, balance) : nearestFillings(wanted, repeat, balance + 2 * fixed);
  const filling = fillings.find(({ ends }) => ends <= roomOf(options, across)) ?? fillings[0]!;
  const border = filling.border ?? Number(fixed);
  return { wanted, balance, fillings, repeats: filling.repeats, count: filling.ends, border };
}

/** Ends that balance the last repeat, where that is asked for and can be had. */
function balanceIn({ warp, threading }: Draft, { balance, mirror }: PlanOptions): number {
  const ends = balanceOf(warp.map((yarn, i) => `${threading[i]} ${yarn}`)) ?? 0;
  if (balance === 'auto') return mirror.warp !== undefined || ends <= warp.length / 4 ? ends : 0;
  return balance === 'yes' ? ends : 0;
}

/** Ends that the loom has room for, a dent for each floating selvedge left free. */
function roomOf({ loom }: PlanOptions, across: number): number {
  return loom.width === undefined ? Number.POSITIVE_INFINITY : Math.floor(loom.width / across + 1e-9) - 4;
}
