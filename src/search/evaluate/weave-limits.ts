import { type Drawdown, drawdown } from '../../cloth/drawdown.js';
import { type Floats, floatsOf } from '../../cloth/floats.js';
import { holdsTogether } from '../../cloth/holds-together.js';
import type { Weave } from '../../draft/draft.js';
import type { Ease } from '../../score/model/figures.js';
import { exceedsFloat } from '../../score/rank/rank.js';
import { obstacles } from '../../structure/loom/loom-fit.js';
import type { Question } from '../question/question.js';

/** The reason why no candidate on a weave may be shown; with the floats, if these are too long. */
export type Refused = { readonly fault: 'unsound' | 'limits' } | { readonly fault: 'float'; readonly floats: Floats };

/**
 * Checks a weave against the limits. Returns its drawdown and floats, or the reason to refuse it: it falls apart, its
 * floats are above the limit, it needs more shafts or treadles than allowed, or the loom cannot weave it.
 */
export function weaveWithin(
  { limits, loom, sett }: Pick<Question, 'limits' | 'loom' | 'sett'>,
  weave: Weave,
  cloth = drawdown(weave),
): { readonly cloth: Drawdown; readonly floats: Floats } | Refused {
  if (!holdsTogether(cloth)) return { fault: 'unsound' };
  const floats = floatsOf(cloth, sett);
  if (exceedsFloat(floats, limits.float)) return { fault: 'float', floats };
  const treadles = new Set(weave.treadling.flat()).size;
  const shafts = new Set(weave.threading.flat()).size;
  if (treadles > (limits.treadles ?? Infinity) || shafts > (limits.shafts ?? Infinity)) return { fault: 'limits' };
  if (loom !== undefined && obstacles(weave, loom).length > 0) return { fault: 'limits' };
  return { cloth, floats };
}

/** Whether a cloth needs a longer repeat, more changes of colour or more shuttles than the question or loom allows. */
export function isBeyond(
  { limits, loom }: Pick<Question, 'limits' | 'loom'>,
  repeat: number,
  ease: Pick<Ease, 'warpChanges' | 'weftChanges' | 'shuttles'>,
): boolean {
  return (
    repeat > limits.repeat ||
    ease.warpChanges > (limits.warpChanges ?? Infinity) ||
    ease.weftChanges > (limits.weftChanges ?? Infinity) ||
    ease.shuttles > Math.min(limits.shuttles ?? Infinity, loom?.shuttles ?? Infinity)
  );
}
