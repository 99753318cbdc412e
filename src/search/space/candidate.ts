import type { Draft, Weave } from '../../draft/draft.js';
import { beginInWords } from '../../order/laid-order.js';
import {
  colours,
  endStrands,
  layout,
  pickStrands,
  threadingPeriod,
  treadlingPeriod,
  wholeRepeat,
} from '../../order/lay.js';
import { lcm } from '../../order/necklace.js';
import { exchanged, formatOrder, type Order, runsOf, smallestPeriod } from '../../order/order.js';
import { counted } from '../../words/counts.js';
import type { Question } from '../question/question.js';
import { type Family, layingOf } from './family.js';
import { memoized } from './memoize.js';

/** One candidate: a few small things from which everything else is computed. */
export interface Candidate {
  readonly family: Family;
  readonly warp: Order;
  readonly weft: Order;
  /** Thread (or unit) on which the warp order, and the weft order, begins. */
  readonly start: readonly [number, number];
}

/** The weft order where it does not have orders of its own. */
export function weftOf(question: Question, warp: Order): Order {
  switch (question.weft.rule) {
    case 'fixed':
      return question.weft.order;
    case 'exchange':
      return exchanged(warp, question.yarns.length);
    default:
      return warp;
  }
}

/** The whole draft of a candidate. */
export function draftOf(candidate: Candidate, question: Question): Draft {
  const weave = candidate.family.weave(candidate.warp, candidate.weft);
  const [ends, picks] = [laidOn(weave, candidate, 'ends', question), laidOn(weave, candidate, 'picks', question)];
  return { ...wholeRepeat(weave, ends, picks), yarns: question.yarns, sett: question.sett };
}

/** The colours of the ends, or the picks, until their layout begins again. */
function laidOn(
  weave: Weave,
  { family, warp, weft, start }: Candidate,
  system: 'ends' | 'picks',
  { yarns, tabby }: Question,
): Uint8Array {
  const [strands, asked, from] =
    system === 'ends' ? [endStrands(weave), warp, start[0]] : [pickStrands(weave), weft, start[1]];
  const order = family.laid(asked, system, weave);
  return colours(layout(strands, order.length, layingOf(family, from)), order, yarns.length, tabby);
}

/** Words of colours that are remembered. */
const REMEMBERED = 4096;

/**
 * Compares candidates by the colours of their ends, then by those of their picks, in palette order. Many candidates
 * share a warp or a weft, each of which is laid once.
 */
export function colourOrder(question: Question): (a: Candidate, b: Candidate) => number {
  const numbers = new Map<Family, number>();
  const numberOf = (family: Family): number => {
    const number = numbers.get(family) ?? numbers.size;
    numbers.set(family, number);
    return number;
  };
  const wordOf = memoized(
    REMEMBERED,
    (candidate: Candidate, system: 'ends' | 'picks'): readonly number[] => {
      const weave = candidate.family.weave(candidate.warp, candidate.weft);
      const laid = laidOn(weave, candidate, system, question);
      const length = lcm(system === 'ends' ? threadingPeriod(weave) : treadlingPeriod(weave), smallestPeriod(laid));
      return Array.from({ length }, (_, s) => laid[s % laid.length]!);
    },
    ({ family, warp, weft, start }, system) =>
      // Where orders choose the blocks, the weft may have a say in which ends take companions.
      `${numberOf(family)} ${system} ${start} ${system === 'ends' ? warp : weft}${family.fixedWeave ? '' : `/${Math.max(...warp, ...weft)}`}`,
  );
  return (a, b) =>
    compareWords(wordOf(a, 'ends'), wordOf(b, 'ends')) || compareWords(wordOf(a, 'picks'), wordOf(b, 'picks'));
}

function compareWords(a: readonly number[], b: readonly number[]): number {
  const n = Math.min(a.length, b.length);
  for (let s = 0; s < n; s++) if (a[s] !== b[s]) return a[s]! - b[s]!;
  return a.length - b.length;
}

/** A block order as it is read back: `A A B`, or where blocks are wide `A3 B3 C4`. */
export function profileInLetters(blocks: readonly string[]): string {
  const letters = blocks.join('');
  return /(.)\1\1/.test(letters) ? runsOf(letters) : blocks.join(' ');
}

/**
 * How a candidate is made, in one line of parts with commas between them; and the same without its orders and where
 * these begin, for where the threads themselves stand beside it.
 */
export function recipesOf(candidate: Candidate, question: Question): { recipe: string; shortRecipe: string } {
  const { family, warp, weft } = candidate;
  const wefts = weftInWords(candidate, question);
  const begins = beginInWords({ by: family.by, start: candidate.start });
  const [weave, laid] = [weaveInWords(candidate, question), laidInWords(family)];
  const from = begins === undefined ? [] : [begins];
  if (question.onTheLoom) {
    // A warp on the loom is the same in every recipe, and may be hundreds of letters long.
    const isTied = family.weave(warp, weft).tieUp === question.draft?.draft.tieUp;
    const there = isTied ? 'warp and tie-up on the loom' : 'warp on the loom with a new tie-up';
    const short = [...weave, there, ...laid];
    return { recipe: [...short, wefts, ...from].join(', '), shortRecipe: short.join(', ') };
  }
  const order = formatOrder(warp, question.yarns);
  return {
    recipe: [...weave, order, ...laid, wefts, ...from].join(', '),
    shortRecipe: [...weave, ...laid].join(', '),
  };
}

/** The weft: as the warp, or its order. Where colours carry the blocks (turned taqueté), its order is one of blocks. */
function weftInWords({ family, warp, weft }: Candidate, question: Question): string {
  const { weft: asked, yarns } = question;
  const order = asked.rule === 'same' ? 'as warp' : formatOrder(weft, yarns);
  if (family.letters !== undefined && asked.rule !== 'fixed' && family.weave(warp, weft).companions !== undefined) {
    return `weft ${yarns[0]!.letter} in blocks ${order}`;
  }
  return asked.rule === 'exchange' ? 'weft with colours swapped' : `weft ${order}`;
}

/** What is woven: the structure, its manner of treadling, its blocks. */
function weaveInWords({ family }: Candidate, question: Question): string[] {
  const isTreadled = question.draft !== undefined && family.manner !== '';
  const weave = family.structure + (family.manner ? `${isTreadled ? ' treadled' : ''} ${family.manner}` : '');
  const blocks = family.profile.length > 1 ? `blocks ${profileInLetters(family.profile)}` : undefined;
  const named = family.called === undefined ? blocks : `name draft ${family.called}`;
  const treadled = family.treadled && `treadled in blocks ${profileInLetters(family.treadled)}`;
  return [weave, named, treadled].filter((part) => part !== undefined);
}

/** How an order is laid: `4 units each`, `alternating`. */
function laidInWords({ by, fill, times, letters }: Family): string[] {
  const chooses = letters !== undefined;
  const what = chooses ? 'unit' : by;
  const one = chooses ? [] : [`${what} by ${what}`];
  const each = times === 1 ? one : [`${counted(times, what)} each`];
  const fills = { solid: [], alternate: ['alternating'], nest: ['nested'] } as const;
  return [...(chooses ? ['as block order'] : []), ...each, ...fills[fill]];
}
