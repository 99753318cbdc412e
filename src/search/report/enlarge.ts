import { drawdown } from '../../cloth/drawdown.js';
import { type Floats, floatsOf, weftFloatsByKind } from '../../cloth/floats.js';
import { holdsTogether } from '../../cloth/holds-together.js';
import { type Draft, spacing, type Weave } from '../../draft/draft.js';
import type { By, Fill } from '../../order/laid-order.js';
import { endStrands, pickStrands, type Strands, spanOf } from '../../order/lay.js';
import type { Order } from '../../order/order.js';
import { Problem } from '../../problem.js';
import type { FloatLimit } from '../../score/model/float-limit.js';
import { exceedsFloat, nearerFloats } from '../../score/rank/rank.js';
import type { Question } from '../question/question.js';
import { draftOf, weftOf } from '../space/candidate.js';
import { familiesOf } from '../space/families.js';
import { elementsLaid, type Family } from '../space/family.js';
import { remedyInWords } from './remedy-words.js';

/** The ways of enlarging a motif, in the order in which they are shown. */
export const WAYS = ['thread', 'unit', 'alternate', 'block', 'nest'] as const;
export type Way = (typeof WAYS)[number];

/** Float limits against which every size is checked, in millimetres: 3/8 and 1/2 inch (common practice, no source). */
export const USUAL_LIMITS = [
  { name: '3/8 in', mm: 9.525 },
  { name: '1/2 in', mm: 12.7 },
] as const;

/** One size of the motif. */
export interface MotifSize {
  readonly way: Way;
  /** Threads or units that an element covers. */
  readonly times: number;
  /** Laid by thread or by unit. */
  readonly by: By;
  /** Ends, and picks, of the motif: the order laid once. */
  readonly ends: number;
  /** Ends where it begins on another unit, if units differ: the fewest and the most. */
  readonly range?: readonly [number, number];
  readonly picks: number;
  /** Ends and picks after which motif and weave begin again together. */
  readonly repeat: { readonly ends: number; readonly picks: number };
  /** Width of the motif in millimetres, in the loom's sett and finished. */
  readonly width: number;
  readonly finished: number;
  readonly draft: Draft;
  readonly floats: Floats;
  /** Longest float of the pattern weft, in ends and in millimetres; absent without a pattern weft. */
  readonly pattern?: { readonly ends: number | null; readonly mm: number | null };
  readonly holdsTogether: boolean;
  /** Whether the longest float is within each usual limit, and within the person's own. */
  readonly passes: { readonly usual: readonly boolean[]; readonly own: boolean };
}

/** A size that is not possible in one way, the reason, and the nearest possible size. */
export interface Refusal {
  readonly way: Way;
  /** Ends asked for; absent if the way has no size at all. */
  readonly ends?: number;
  readonly nearest?: number;
  readonly why: string;
}

/** A motif at all sizes laid, and the sizes refused. */
export interface Enlarged {
  readonly sizes: readonly MotifSize[];
  readonly refused: readonly Refusal[];
}

/** Widest element tried, in threads or units. */
const MOST_TIMES = 64;

/** The default sizes: four, eight and sixteen ends per element (5 elements: 20, 40, 80 ends). */
export function usualTargets(order: Order): number[] {
  return [4, 8, 16].map((times) => times * order.length);
}

/**
 * Lays one order in every way at every size asked for. A size that does not hold whole units is refused, and the
 * nearest possible size is laid instead.
 *
 * @param question one structure or draft, one order; its `by`, `fill` and `times` are not used
 * @param targets sizes asked for, in ends of the motif
 * @param shrinkage share of the width that is lost in finishing
 */
export function enlarge(question: Question, targets: readonly number[], shrinkage: number): Enlarged {
  const sizes: MotifSize[] = [];
  const refused: Refusal[] = [];
  const order = question.orders[0]!;
  for (const way of WAYS) {
    try {
      const laid = waysLaid(question, way, order, targets);
      refused.push(...laid.refused);
      for (const family of laid.families) sizes.push(sized(question, way, family, order, shrinkage));
    } catch (problem) {
      if (!(problem instanceof Problem)) throw problem;
      refused.push({ way, why: problem.message });
    }
  }
  if (sizes.length === 0) throw new Problem(refused.map(({ why }) => why).join('; '));
  return { sizes, refused };
}

/** The families of one way: for every size asked for, the family with that size, or with the nearest. */
function waysLaid(
  question: Question,
  way: Way,
  order: Order,
  targets: readonly number[],
): { families: Family[]; refused: Refusal[] } {
  if (way === 'nest') {
    const families = [familyOf(question, 'thread', 'nest', 1)];
    if (hasUnits(families[0]!.weave(order, order))) families.push(familyOf(question, 'unit', 'nest', 1));
    return { families, refused: [] };
  }
  const by = way === 'alternate' ? 'unit' : way;
  const fill = way === 'alternate' ? 'alternate' : 'solid';
  const first = familyOf(question, by, fill, 1);
  const weave = first.weave(order, weftOf(question, order));
  if (by === 'unit' && !hasUnits(weave))
    throw new Problem('the draft has no units; expected “units: 4” or the like in it');
  const known: { family: Family; ends: number }[] = [];
  const most = 2 * Math.max(...targets, order.length);
  for (let times = 1; times <= MOST_TIMES; times++) {
    const family = times === 1 ? first : familyOf(question, by, fill, times);
    const ends = motifOf(endStrands(family.weave(order, weftOf(question, order))), family, order);
    known.push({ family, ends });
    if (ends > most) break;
  }
  const chosen = new Set<Family>();
  const refused: Refusal[] = [];
  // By thread, the order as written is a size too: it is repeated until it is in step with the weave.
  if (way === 'thread') chosen.add(first);
  for (const target of targets) {
    const exact = known.find(({ ends }) => ends === target);
    if (exact !== undefined) {
      chosen.add(exact.family);
      continue;
    }
    const { family, ends } = known.reduce((best, next) =>
      Math.abs(next.ends - target) <= Math.abs(best.ends - target) ? next : best,
    );
    chosen.add(family);
    refused.push({ way, ends: target, nearest: ends, why: reason(way, weave, order, known) });
  }
  return { families: [...chosen].sort((a, b) => a.times - b.times), refused };
}

/** The reason why not every size is possible. */
function reason(way: Way, weave: Weave, order: Order, known: readonly { ends: number }[]): string {
  const [one, two] = known.map(({ ends }) => ends);
  const step = two === undefined ? 0 : two - one!;
  if (way === 'thread') return `elements are whole threads, ${order.length} at a time`;
  const [least, most] = [Math.min(...weave.endUnits), Math.max(...weave.endUnits)];
  if (way !== 'block' && least < most) return `units of ${least} to ${most} ends do not make it up`;
  if (step === one) return `whole units make ${one} ends at a time`;
  return `with its incidental ends the smallest is ${one} ends, and then ${step} more at a time`;
}

/**
 * Says in a sentence what would bring the sizes of one way under the person's float limit; undefined if most are under
 * it.
 *
 * @param sizes the sizes of one way
 */
export function sizesRemedyInWords(question: Question, sizes: readonly MotifSize[]): string | undefined {
  const { float } = question.limits;
  const failing = sizes.filter(({ passes }) => !passes.own);
  if (failing.length <= sizes.length / 2) return undefined;
  const nearest = failing.map(({ floats }) => floats).reduce((a, b) => nearerFloats(a, b, float)!);
  const { way, by } = failing[0]!;
  const fill = way === 'nest' || way === 'alternate' ? way : 'solid';
  return remedyInWords(askedSo(question, by, fill, Math.max(...sizes.map(({ times }) => times))), nearest);
}

function askedSo(question: Question, by: By, fill: Fill, times: number): Question {
  // By block the order chooses the blocks at every size.
  const isOrder = question.profile === 'order';
  const profile = isOrder === (by === 'block') ? question.profile : [];
  return { ...question, profile, by: [by], fill: [fill], times: [times] };
}

function familyOf(question: Question, by: By, fill: Fill, times: number): Family {
  const [family, another] = familiesOf(askedSo(question, by, fill, times));
  if (family === undefined || another !== undefined) {
    throw new Problem('found several ways to weave; expected one structure and one treadling');
  }
  return family;
}

function hasUnits(weave: Weave): boolean {
  return [...weave.endUnits, ...weave.pickUnits].some((size) => size > 1);
}

/** The fewest and the most threads in so many units side by side, wherever the first of them is. */
function rangeOf(units: readonly number[], count: number): [number, number] {
  const spans = units.map((_, from) => {
    let span = 0;
    for (let k = 0; k < count; k++) span += units[(from + k) % units.length]!;
    return span;
  });
  return [Math.min(...spans), Math.max(...spans)];
}

/** Number of threads, from the first, that the order covers when it is laid once. */
function motifOf(strands: Strands, family: Family, order: Order): number {
  return spanOf(strands, elementsLaid(family, order.length) * family.times, family.by === 'thread' ? 'thread' : 'unit');
}

function sized(question: Question, way: Way, family: Family, order: Order, shrinkage: number): MotifSize {
  const weft = weftOf(question, order);
  const weave = family.weave(order, weft);
  const draft = draftOf({ family, warp: order, weft, start: [0, 0] }, question);
  const cloth = drawdown(draft);
  const floats = floatsOf(cloth, draft.sett);
  const { across } = spacing(draft.sett);
  const ends = motifOf(endStrands(weave), family, order);
  const elements = elementsLaid(family, order.length) * family.times;
  const [least, most] = family.by === 'unit' ? rangeOf(weave.endUnits, elements) : [0, 0];
  const width = ends * across;
  const within = (limit: FloatLimit): boolean => !exceedsFloat(floats, limit);
  const { pattern } = weftFloatsByKind(cloth, draft.pickKinds);
  const longest =
    pattern && (pattern.face === null || pattern.back === null ? null : Math.max(pattern.face, pattern.back));
  return {
    way,
    times: family.times,
    by: family.by,
    ends,
    ...(least < most && { range: [least, most] as const }),
    picks: motifOf(pickStrands(weave), family, weft),
    repeat: { ends: draft.warp.length, picks: draft.weft.length },
    width,
    finished: width * (1 - shrinkage),
    draft,
    floats,
    ...(longest !== undefined && { pattern: { ends: longest, mm: longest === null ? null : longest * across } }),
    holdsTogether: holdsTogether(cloth),
    passes: { usual: USUAL_LIMITS.map(({ mm }) => within({ mm })), own: within(question.limits.float) },
  };
}
