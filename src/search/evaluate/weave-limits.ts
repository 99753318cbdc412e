import { type Drawdown, drawdown } from '../../cloth/drawdown.js';
import { type Floats, floatsOf } from '../../cloth/floats.js';
import { holdsTogether } from '../../cloth/holds-together.js';
import type { Sett, Weave } from '../../draft/draft.js';
import type { Ease } from '../../score/model/figures.js';
import { exceedsFloat } from '../../score/rank/rank.js';
import { obstacles } from '../../structure/loom/loom-fit.js';
import type { Question } from '../question/question.js';

/** The reason why no candidate on a weave may be shown; with the floats, if these are too long. */
export type Refused = { readonly fault: 'unsound' | 'limits' } | { readonly fault: 'float'; readonly floats: Floats };

/** The interlacement of a weave, and what follows from it. */
export interface Interlacement {
  readonly cloth: Drawdown;
  readonly holdsTogether: () => boolean;
  readonly floats: (sett: Sett) => Floats;
}

function interlacementOf(weave: Weave): Interlacement {
  const cloth = drawdown(weave);
  return { cloth, holdsTogether: () => holdsTogether(cloth), floats: (sett) => floatsOf(cloth, sett) };
}

/**
 * Checks a weave against the limits. Returns its drawdown and floats, or the reason to refuse it: it falls apart, its
 * floats are above the limit, it needs more shafts or treadles than allowed, or the loom cannot weave it.
 */
export function weaveWithin(
  { limits, loom, sett }: Pick<Question, 'limits' | 'loom' | 'sett'>,
  weave: Weave,
  interlacement = interlacementOf(weave),
): { readonly cloth: Drawdown; readonly floats: Floats } | Refused {
  if (!interlacement.holdsTogether()) return { fault: 'unsound' };
  const floats = interlacement.floats(sett);
  if (exceedsFloat(floats, limits.float)) return { fault: 'float', floats };
  if (areMoreThan(weave.treadling, limits.treadles) || areMoreThan(weave.threading, limits.shafts))
    return { fault: 'limits' };
  if (loom !== undefined && obstacles(weave, loom).length > 0) return { fault: 'limits' };
  return { cloth: interlacement.cloth, floats };
}

/** Whether lists hold more different numbers than they may. */
function areMoreThan(lists: readonly (readonly number[])[], limit: number | undefined): boolean {
  return limit !== undefined && new Set(lists.flat()).size > limit;
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
