import seedrandom from 'seedrandom';
import { countNecklaces, distinctOrdersOf, leastRotation, writtenOrders } from '../order/necklace.js';
import type { Order } from '../order/order.js';
import { type Candidate, weftOf } from './candidate.js';
import { type Family, familiesOf, hasTabby } from './family.js';
import type { Question } from './question.js';
import { startsOf } from './starts.js';

/** A space of more candidates than this is sampled, not listed. */
export const LISTED_AT_MOST = 2_000_000;
/** How many candidates a sample draws. */
export const SAMPLE = 400_000;

/** Candidates of one family whose orders have the same two lengths. */
interface Block {
  readonly family: Family;
  readonly warps: readonly Order[];
  /** Empty where the weft order follows from the warp's. */
  readonly wefts: readonly Order[];
  readonly starts: readonly (readonly [number, number])[];
  readonly first: number;
  readonly count: number;
}

/** What there is to try. */
export interface Space {
  /** Orders that can be written, rotations and one-colour words included; squared where the weft has its own. */
  readonly written: number;
  /** Candidates: orders that differ, laid in every asked way, from every start that differs. */
  readonly count: number;
  /** How many will be tried: all, or a sample. */
  readonly tried: number;
  readonly exhaustive: boolean;
  readonly families: readonly Family[];
  /** The candidate of a number from 0 below `tried`; the same number is always the same candidate. */
  at(index: number): Candidate;
}

/** Counts the space of a question and makes every candidate addressable by its number. */
export function spaceOf(question: Question): Space {
  const families = familiesOf(question);
  const own = question.weft.rule === 'own';
  const writtenOnce =
    question.orders.length > 0 ? question.orders.length : writtenOrders(question.lengths, question.yarns.length);
  const written = own ? writtenOnce ** 2 : writtenOnce;
  // Exchange may halve what is listed, starts only add to it.
  if (estimated(question) * families.length > 2 * LISTED_AT_MOST) return sampledSpace(question, families, written);
  const blocks = listBlocks(question, families);
  const count = blocks.reduce((sum, block) => sum + block.count, 0);
  if (count > LISTED_AT_MOST) return sampledSpace(question, families, written, count);
  return {
    written,
    count,
    tried: count,
    exhaustive: true,
    families,
    at: (index) => {
      let low = 0;
      let high = blocks.length - 1;
      while (low < high) {
        const middle = (low + high + 1) >> 1;
        if (blocks[middle]!.first <= index) low = middle;
        else high = middle - 1;
      }
      return inBlock(question, blocks[low]!, index - blocks[low]!.first);
    },
  };
}

function inBlock(question: Question, block: Block, offset: number): Candidate {
  const start = block.starts[offset % block.starts.length]!;
  const pair = Math.floor(offset / block.starts.length);
  const wefts = Math.max(1, block.wefts.length);
  const warp = block.warps[Math.floor(pair / wefts)]!;
  const weft = block.wefts[pair % wefts] ?? weftOf(question, warp);
  return { family: block.family, warp, weft, start };
}

function listBlocks(question: Question, families: readonly Family[]): Block[] {
  const colourCount = question.yarns.length;
  const own = question.weft.rule === 'own';
  const all = question.orders.length > 0 ? question.orders : distinctOrdersOf(question.lengths, colourCount);
  // Where exchanging the colours of both orders weaves the same cloth, one of the two stands for both.
  const merges = question.same.includes('exchange') && question.weft.rule !== 'fixed' && question.orders.length === 0;
  const blocks: Block[] = [];
  let first = 0;
  for (const family of families) {
    const exchangeable = merges && family.by !== 'block' && !hasTabby(family);
    const warps = exchangeable ? distinctOrdersOf(question.lengths, colourCount, { exchange: true }) : all;
    for (const [n, ofLength] of byLength(warps)) {
      for (const [m, wefts] of own ? byLength(all) : [[0, []] as const]) {
        const starts = startsOf(question.starts, family, n, own ? m : weftOf(question, ofLength[0]!).length);
        const count = ofLength.length * Math.max(1, wefts.length) * starts.length;
        blocks.push({ family, warps: ofLength, wefts, starts, first, count });
        first += count;
      }
    }
  }
  return blocks;
}

function byLength(orders: readonly Order[]): [number, Order[]][] {
  const lengths = new Map<number, Order[]>();
  for (const order of orders) lengths.set(order.length, [...(lengths.get(order.length) ?? []), order]);
  return [...lengths].sort(([a], [b]) => a - b);
}

/** A rough count that needs no list. */
function estimated(question: Question): number {
  const orders =
    question.orders.length > 0
      ? question.orders.length
      : question.lengths.reduce((sum, length) => sum + countNecklaces(length, question.yarns.length), 0);
  return question.weft.rule === 'own' ? orders ** 2 : orders;
}

/** A space too large to list: candidates are drawn by chance, every family, length and start equally likely. */
function sampledSpace(question: Question, families: readonly Family[], written: number, listed?: number): Space {
  const palette = question.yarns.length;
  const given = question.orders;
  const own = question.weft.rule === 'own';
  const pick = <T>(list: readonly T[], chance: () => number): T => list[Math.floor(chance() * list.length)]!;
  const draw = (chance: () => number): Order => {
    if (given.length > 0) return pick(given, chance);
    // Longer orders are more, and drawn so much more often.
    const weights = question.lengths.map((length) => palette ** Math.min(length, 300) / length);
    let at = chance() * weights.reduce((a, b) => a + b, 0);
    let k = 0;
    while (k < weights.length - 1 && at >= weights[k]!) at -= weights[k++]!;
    const length = question.lengths[k]!;
    return leastRotation(Array.from({ length }, () => Math.floor(chance() * palette)));
  };
  const count = listed ?? estimated(question) * families.length;
  return {
    written,
    count,
    tried: SAMPLE,
    exhaustive: false,
    families,
    at: (index) => {
      // A stream of chance for every number, so that neither workers nor their turns can change a draw.
      const chance = seedrandom.alea(`${question.seed}/${index}`);
      const family = pick(families, chance);
      const warp = draw(chance);
      const weft = own ? draw(chance) : weftOf(question, warp);
      return { family, warp, weft, start: pick(startsOf(question.starts, family, warp.length, weft.length), chance) };
    },
  };
}
