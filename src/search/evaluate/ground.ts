import type { Drawdown } from '../../cloth/drawdown.js';
import type { Floats } from '../../cloth/floats.js';
import type { Weave } from '../../draft/draft.js';
import {
  colours,
  endStrands,
  type Layout,
  layout,
  pickStrands,
  threadingPeriod,
  treadlingPeriod,
} from '../../order/lay.js';
import { lcm } from '../../order/necklace.js';
import { type Order, smallestPeriod } from '../../order/order.js';
import { Problem } from '../../problem.js';
import type { Classic } from '../../score/likeness/novelty.js';
import type { StructureAlone } from '../../score/look/structure-likeness.js';
import { asksNovelty } from '../../score/rank/rank.js';
import type { Question } from '../question/question.js';
import type { Candidate } from '../space/candidate.js';
import { type Family, layingOf } from '../space/family.js';
import { memoized } from '../space/memoize.js';
import { classicsOf } from './classics-for.js';
import { type Refused, weaveWithin } from './weave-limits.js';

/** Most families whose weaves are cached: candidates come family by family, and a question may have thousands. */
const REMEMBERED = 400;

/** Values that all candidates on one weave share, computed once. */
export interface Ground {
  readonly weave: Weave;
  readonly cloth: Drawdown;
  readonly floats: Floats;
  readonly endPeriod: number;
  readonly pickPeriod: number;
  readonly classics: readonly Classic[];
  /** The look of the weave without colours, computed on first use. */
  alone: StructureAlone | undefined;
  readonly layouts: Map<string, Layout>;
}

type GroundOf = (family: Family, warp: Order, weft: Order) => Ground | Refused;

/** The grounds of a question; that of a family whose weave does not depend on the orders is remembered. */
export function groundsOf(question: Question): GroundOf {
  const classicsFor = classicsOf(question);
  const made: GroundOf = (family, warp, weft) => groundFor(question, family, warp, weft, classicsFor);
  const fixed = memoized(REMEMBERED, made);
  return (family, ...orders) => (family.fixedWeave ? fixed(family, ...orders) : made(family, ...orders));
}

/** The colours of a candidate's ends and picks over one whole repeat. */
export function laidOn(
  ground: Ground,
  { family, warp, weft, start }: Candidate,
  question: Question,
): { readonly warp: Uint8Array; readonly weft: Uint8Array } {
  return {
    warp: repeated(laid(ground, family, warp, start[0], 'ends', question), ground.endPeriod),
    weft: repeated(laid(ground, family, weft, start[1], 'picks', question), ground.pickPeriod),
  };
}

function laid(
  ground: Ground,
  family: Family,
  asked: Order,
  start: number,
  system: 'ends' | 'picks',
  { yarns, tabby }: Question,
): Uint8Array {
  const order = family.laid(asked, system, ground.weave);
  const sign = `${system}${order.length}/${start}`;
  let plan = ground.layouts.get(sign);
  if (plan === undefined) {
    const strands = system === 'picks' ? pickStrands(ground.weave) : endStrands(ground.weave);
    plan = layout(strands, order.length, layingOf(family, start));
    ground.layouts.set(sign, plan);
  }
  return colours(plan, order, yarns.length, tabby);
}

function groundFor(
  question: Question,
  family: Family,
  warp: Order,
  weft: Order,
  classicsFor: ReturnType<typeof classicsOf>,
): Ground | Refused {
  let weave: Weave;
  try {
    weave = family.weave(warp, weft);
  } catch (problem) {
    // Orders may choose blocks that cannot be neighbours (huck); the question is not at fault.
    if (problem instanceof Problem && !family.fixedWeave) return { fault: 'limits' };
    throw problem;
  }
  const within = weaveWithin(question, weave);
  if ('fault' in within) return within;
  return {
    weave,
    ...within,
    endPeriod: threadingPeriod(weave),
    pickPeriod: treadlingPeriod(weave),
    classics: asksNovelty(question.rank) ? classicsFor(family) : [],
    alone: undefined,
    layouts: new Map(),
  };
}

/** Extends the colours to the length after which weave and colours both begin again. */
function repeated(colours: Uint8Array, weavePeriod: number): Uint8Array {
  const length = lcm(weavePeriod, smallestPeriod(colours));
  const whole = new Uint8Array(length);
  for (let s = 0, from = 0; s < length; s++) {
    whole[s] = colours[from]!;
    if (++from === colours.length) from = 0;
  }
  return whole;
}
