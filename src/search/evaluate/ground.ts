import type { Drawdown } from '../../cloth/drawdown.js';
import { strandKinds, type Threads } from '../../cloth/face.js';
import type { Floats } from '../../cloth/floats.js';
import type { Weave } from '../../draft/draft.js';
import { shuttleCount } from '../../draft/shuttles.js';
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
import { changes } from '../../score/ease.js';
import type { Classic } from '../../score/likeness/novelty.js';
import type { StructureAlone } from '../../score/look/structure-likeness.js';
import { asksNovelty } from '../../score/rank/rank.js';
import type { Question } from '../question/question.js';
import { type Family, layingOf } from '../space/family.js';
import { memoized } from '../space/memoize.js';
import { classicsOf } from './classics-for.js';
import { type Refused, weaveWithin } from './weave-limits.js';

/** Most families whose weaves are cached: candidates come family by family, and a question may have thousands. */
const REMEMBERED = 400;

/**
 * Most warps and wefts that are kept as laid: enough for the lists of a stratum, and few enough for the memory of a
 * worker.
 */
const REMEMBERED_LAID = 2000;

/** The ends, or the picks, of a candidate in their colours over one whole repeat: what follows from one order alone. */
interface Laid extends Threads {
  /** Neighbouring threads of different colour, round the repeat. */
  readonly changes: number;
  readonly shuttles: number;
}

/** Values that all candidates on one weave share, computed once. */
export interface Ground {
  readonly weave: Weave;
  readonly cloth: Drawdown;
  readonly floats: Floats;
  readonly classics: readonly Classic[];
  /** The look of the weave without colours, computed on first use. */
  alone: StructureAlone | undefined;
  /** The ends and the picks under an order that begins at a place. */
  ends(order: Order, start: number): Laid;
  picks(order: Order, start: number): Laid;
}

type GroundOf = (family: Family, warp: Order, weft: Order) => Ground | Refused;

/** The grounds of a question; that of a family whose weave does not depend on the orders is remembered. */
export function groundsOf(question: Question): GroundOf {
  const classicsFor = classicsOf(question);
  const remember = laidOnce();
  const made: GroundOf = (family, warp, weft) => groundFor(question, family, warp, weft, classicsFor, remember);
  const fixed = memoized(REMEMBERED, made);
  return (family, ...orders) => (family.fixedWeave ? fixed(family, ...orders) : made(family, ...orders));
}

type Lay = (order: Order, start: number) => Laid;

/** Remembers what was laid, on all grounds together. Orders are told apart as objects: lists of orders share them. */
function laidOnce(): (lay: Lay) => Lay {
  let count = 0;
  let known = new Map<Lay, Map<Order, Laid[]>>();
  return (lay) => (order, start) => {
    let orders = known.get(lay);
    if (orders === undefined || count >= REMEMBERED_LAID) {
      if (count >= REMEMBERED_LAID) {
        known = new Map();
        count = 0;
      }
      orders = new Map();
      known.set(lay, orders);
    }
    let starts = orders.get(order);
    if (starts === undefined) {
      starts = [];
      orders.set(order, starts);
    }
    let laid = starts[start];
    if (laid === undefined) {
      laid = lay(order, start);
      starts[start] = laid;
      count++;
    }
    return laid;
  };
}

/** Lays orders on the ends (picks) of a weave. */
function layer(
  family: Family,
  weave: Weave,
  kinds: Uint16Array,
  system: 'ends' | 'picks',
  { yarns, tabby }: Question,
): Lay {
  const strands = system === 'picks' ? pickStrands(weave) : endStrands(weave);
  const period = system === 'picks' ? treadlingPeriod(weave) : threadingPeriod(weave);
  const layouts = new Map<number, Layout[]>();
  return (asked, start) => {
    const order = family.laid(asked, system, weave);
    let plans = layouts.get(order.length);
    if (plans === undefined) {
      plans = [];
      layouts.set(order.length, plans);
    }
    plans[start] ??= layout(strands, order.length, layingOf(family, start));
    const laid = repeated(colours(plans[start], order, yarns.length, tabby), period);
    return {
      ...strandKinds(kinds, laid),
      changes: changes(laid),
      shuttles: system === 'picks' ? shuttleCount(weave.pickKinds, laid) : 0,
    };
  };
}

function groundFor(
  question: Question,
  family: Family,
  warp: Order,
  weft: Order,
  classicsFor: ReturnType<typeof classicsOf>,
  remember: ReturnType<typeof laidOnce>,
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
  const ends = layer(family, weave, within.cloth.endKind, 'ends', question);
  const picks = layer(family, weave, within.cloth.pickKind, 'picks', question);
  return {
    weave,
    ...within,
    ends: family.fixedWeave ? remember(ends) : ends,
    picks: family.fixedWeave ? remember(picks) : picks,
    classics: asksNovelty(question.rank) ? classicsFor(family) : [],
    alone: undefined,
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
