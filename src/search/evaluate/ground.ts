import type { Drawdown } from '../../cloth/drawdown.js';
import type { Floats } from '../../cloth/floats.js';
import type { Weave } from '../../draft/draft.js';
import type { Order } from '../../order/order.js';
import { Problem } from '../../problem.js';
import type { Classic } from '../../score/likeness/novelty.js';
import { asksNovelty } from '../../score/rank/rank.js';
import type { Question } from '../question/question.js';
import type { Family } from '../space/family.js';
import { memoized } from '../space/memoize.js';
import { classicsOf } from './classics-for.js';
import { groupsFor, type Laid, laidOnce, layer } from './laid.js';
import { Sides } from './sides.js';
import { type Refused, weaveWithin } from './weave-limits.js';

/** Most families whose weaves are cached: candidates come family by family, and a question may have thousands. */
const REMEMBERED = 400;

/** Values that all candidates on one weave share, computed once. */
export interface Ground {
  readonly weave: Weave;
  readonly cloth: Drawdown;
  readonly floats: Floats;
  readonly classics: readonly Classic[];
  /** The ends and the picks under an order that begins at a place. */
  ends(order: Order, start: number): Laid;
  picks(order: Order, start: number): Laid;
}

/** What is remembered of orders as laid, and of threadings and treadlings that many weaves share. */
interface Remembered extends Readonly<Record<'ends' | 'picks', ReturnType<typeof laidOnce>>> {
  readonly sides: Sides;
}

type GroundOf = (family: Family, warp: Order, weft: Order) => Ground | Refused;

/** The grounds of a question; that of a family whose weave does not depend on the orders is remembered. */
export function groundsOf(question: Question): GroundOf {
  const classicsFor = classicsOf(question);
  const remember = { ends: laidOnce(), picks: laidOnce(), sides: new Sides() };
  const made: GroundOf = (family, warp, weft) => groundFor(question, family, warp, weft, classicsFor, remember);
  const fixed = memoized(REMEMBERED, made);
  let last: { readonly family: Family; readonly ground: Ground | Refused } | undefined;
  return (family, warp, weft) => {
    if (!family.fixedWeave) return made(family, warp, weft);
    if (last?.family !== family) last = { family, ground: fixed(family, warp, weft) };
    return last.ground;
  };
}

function groundFor(
  question: Question,
  family: Family,
  warp: Order,
  weft: Order,
  classicsFor: ReturnType<typeof classicsOf>,
  remember: Remembered,
): Ground | Refused {
  let weave: Weave;
  try {
    weave = family.weave(warp, weft);
  } catch (problem) {
    // Orders may choose blocks that cannot be neighbours (huck); the question is not at fault.
    if (problem instanceof Problem && !family.fixedWeave) return { fault: 'limits' };
    throw problem;
  }
  const sides = family.fixedWeave ? undefined : remember.sides;
  const within = weaveWithin(question, weave, sides?.interlacement(weave));
  if ('fault' in within) return within;
  const { endKind, endKinds, pickKind, pickKinds } = within.cloth;
  const lay = (system: 'ends' | 'picks'): Ground['ends'] => {
    const [kind, kinds] = system === 'ends' ? [endKind, endKinds] : [pickKind, pickKinds];
    return remember[system](layer(family, weave, kind, system, question), groupsFor(system, kinds, question));
  };
  const ends = sides ? sides.laid(weave.threading, () => lay('ends')) : lay('ends');
  const picks = sides ? sides.laid(weave.treadling, () => lay('picks')) : lay('picks');
  return {
    weave,
    ...within,
    ends,
    picks,
    classics: asksNovelty(question.rank) ? classicsFor(family) : [],
  };
}
