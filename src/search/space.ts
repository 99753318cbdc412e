import seedrandom from 'seedrandom';
import { countNecklaces, leastRotation, writtenOrders } from '../order/necklace.js';
import type { Order } from '../order/order.js';
import { type Block, blocksOf, candidateIn } from './block.js';
import { type Candidate, weftOf } from './candidate.js';
import { type Family, familiesOf } from './family.js';
import { type Orbits, orbitsOf } from './orbit.js';
import type { Question } from './question.js';
import { startsOf } from './starts.js';

/** Up to so many candidates every one is scored. */
const SCORED_AT_MOST = 50_000;
/** Up to so many every one is scored where bounds cannot be had. */
const LISTED_AT_MOST = 2_000_000;
/** Up to so many every one is held against bounds where they can. */
const BOUNDED_AT_MOST = 20_000_000_000;
/** How many candidates a sample draws of a space that is larger still. */
const SAMPLE = 400_000;
/** Elements of an order that fit the bounds' words of bits. */
const LONGEST_BOUNDED = 24;

/** What there is to try. */
export interface Space {
  /** Orders that can be written, rotations and one-colour words included; squared where the weft has its own. */
  readonly written: number;
  /** Candidates that differ: orders laid in every asked way, from every start, but for symmetries of the weave. */
  readonly count: number;
  /**
   * How it is searched. All scored; or all held against a bound, and scored where they may reach the best; or a
   * sample scored.
   */
  readonly way: 'scored' | 'bounded' | 'sampled';
  /** Candidates are numbered from 0 to before this. */
  readonly numbers: number;
  readonly families: readonly Family[];
  readonly blocks: readonly Block[];
  /** The candidate of a number; the same number is always the same candidate. */
  at(index: number): Candidate;
  /** Whether it is to be scored, or another that weaves the same cloth stands for it. */
  stands(index: number): boolean;
}

/** Counts the space of a question and makes every candidate addressable by its number. */
export function spaceOf(question: Question): Space {
  const families = familiesOf(question);
  const orders =
    question.orders.length > 0 ? question.orders.length : writtenOrders(question.lengths, question.yarns.length);
  const written = pairsOf(question, orders);
  const estimate = estimated(question) * families.length;
  const bounded = canBeBounded(question, families);
  if (estimate > (bounded ? BOUNDED_AT_MOST : LISTED_AT_MOST)) {
    return sampledSpace(question, families, written, estimate);
  }
  const blocks = blocksOf(question, families);
  const numbers = blocks.reduce((sum, block) => sum + block.count, 0);
  if (numbers > LISTED_AT_MOST && !bounded) return sampledSpace(question, families, written, numbers);
  const orbits = new Map<Block, Orbits>();
  const orbitsIn = (block: Block): Orbits => {
    let known = orbits.get(block);
    if (known === undefined) {
      known = orbitsOf(question, block);
      orbits.set(block, known);
    }
    return known;
  };
  const blockOf = (index: number): Block => {
    let low = 0;
    let high = blocks.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (blocks[middle]!.first <= index) low = middle;
      else high = middle - 1;
    }
    return blocks[low]!;
  };
  return {
    written,
    count: blocks.reduce((sum, block) => sum + orbitsIn(block).count(), 0),
    way: bounded && numbers > SCORED_AT_MOST ? 'bounded' : 'scored',
    numbers,
    families,
    blocks,
    at: (index) => {
      const block = blockOf(index);
      return candidateIn(question, block, index - block.first);
    },
    stands: (index) => {
      const block = blockOf(index);
      const offset = index - block.first;
      const pair = Math.floor(offset / block.starts.length);
      const wefts = Math.max(1, block.wefts.length);
      return orbitsIn(block).stands(Math.floor(pair / wefts), pair % wefts, offset % block.starts.length);
    },
  };
}

/** Bounds are had for two yarns, weft orders of their own, and weaves that the orders do not choose. */
function canBeBounded(question: Question, families: readonly Family[]): boolean {
  return (
    question.yarns.length === 2 &&
    question.weft.rule === 'own' &&
    question.orders.length === 0 &&
    question.warp === undefined &&
    question.rank.contrast > 0 &&
    Math.max(...question.lengths) <= LONGEST_BOUNDED &&
    families.every((family) => family.fixedWeave && family.fill !== 'nest')
  );
}

/** A rough count that needs no list. */
function estimated(question: Question): number {
  const orders =
    question.orders.length > 0
      ? question.orders.length
      : question.lengths.reduce((sum, length) => sum + countNecklaces(length, question.yarns.length), 0);
  return pairsOf(question, orders);
}

/** Pairs of a warp and a weft order, of so many orders. */
function pairsOf(question: Question, orders: number): number {
  const own = question.weft.rule === 'own';
  if (question.warp !== undefined) return own ? orders : 1;
  return own ? orders ** 2 : orders;
}

/** A space too large to list: candidates are drawn by chance, every family, length and start equally likely. */
function sampledSpace(question: Question, families: readonly Family[], written: number, count: number): Space {
  const palette = question.yarns.length;
  const given = question.orders;
  const own = question.weft.rule === 'own';
  const pick = <T>(list: readonly T[], chance: () => number): T => list[Math.floor(chance() * list.length)]!;
  // Longer orders are more, and drawn so much more often.
  const weights = question.lengths.map((length) => palette ** Math.min(length, 300) / length);
  const all = weights.reduce((a, b) => a + b, 0);
  const draw = (chance: () => number): Order => {
    if (given.length > 0) return pick(given, chance);
    let at = chance() * all;
    let k = 0;
    while (k < weights.length - 1 && at >= weights[k]!) at -= weights[k++]!;
    return leastRotation(Array.from({ length: question.lengths[k]! }, () => Math.floor(chance() * palette)));
  };
  return {
    written,
    count,
    way: 'sampled',
    numbers: SAMPLE,
    families,
    blocks: [],
    at: (index) => {
      // A stream of chance for every number, so that neither workers nor their turns can change a draw.
      const chance = seedrandom.alea(`${question.seed}/${index}`);
      const family = pick(families, chance);
      const warp = question.warp ?? draw(chance);
      const weft = own ? draw(chance) : weftOf(question, warp);
      return { family, warp, weft, start: pick(startsOf(question.starts, family, warp.length, weft.length), chance) };
    },
    stands: () => true,
  };
}
