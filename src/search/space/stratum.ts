import { distinctOrdersOf } from '../../order/necklace.js';
import type { Order } from '../../order/order.js';
import type { Question } from '../question/question.js';
import { type Candidate, weftOf } from './candidate.js';
import type { Family } from './family.js';
import { startsOf } from './starts.js';

/** A stratum of the space: the candidates of one family and two lengths, numbered by warp, then weft, then start. */
export interface Stratum {
  readonly family: Family;
  readonly warps: readonly Order[];
  /** Empty where the weft order follows from the warp's. */
  readonly wefts: readonly Order[];
  readonly starts: readonly (readonly [number, number])[];
  /** Number of its first candidate in the space. */
  readonly first: number;
  readonly count: number;
}

/** All candidates of a question, in blocks. */
export function strataOf(question: Question, families: readonly Family[]): Stratum[] {
  const own = question.weft.rule === 'own';
  const listed =
    question.orders.length > 0 ? question.orders : distinctOrdersOf(question.lengths, question.yarns.length);
  const strata: Stratum[] = [];
  let first = 0;
  for (const family of families) {
    // With the fill nest, a rotated order gives another cloth.
    const all = family.fill === 'nest' && question.orders.length === 0 ? listed.flatMap(rotations) : listed;
    // All blocks share the lists, so that results that depend on a list alone are computed once.
    const lists = byLength(all);
    for (const [n, warps] of question.warp ? byLength([question.warp]) : lists) {
      for (const [m, wefts] of own ? lists : [[0, []] as const]) {
        const starts = startsOf(question.starts, family, n, own ? m : weftOf(question, warps[0]!).length);
        const count = warps.length * Math.max(1, wefts.length) * starts.length;
        strata.push({ family, warps, wefts, starts, first, count });
        first += count;
      }
    }
  }
  return strata;
}

/** The candidate with number `offset` in a block, from 0 to below its count. */
export function candidateIn(question: Question, stratum: Stratum, offset: number): Candidate {
  const start = stratum.starts[offset % stratum.starts.length]!;
  const pair = Math.floor(offset / stratum.starts.length);
  const wefts = Math.max(1, stratum.wefts.length);
  const warp = stratum.warps[Math.floor(pair / wefts)]!;
  const weft = stratum.wefts[pair % wefts] ?? weftOf(question, warp);
  return { family: stratum.family, warp, weft, start };
}

function rotations(order: Order): Order[] {
  return order.map((_, from) => [...order.slice(from), ...order.slice(0, from)]);
}

function byLength(orders: readonly Order[]): [number, Order[]][] {
  const lengths = new Map<number, Order[]>();
  for (const order of orders) {
    const known = lengths.get(order.length);
    if (known) known.push(order);
    else lengths.set(order.length, [order]);
  }
  return [...lengths].sort(([a], [b]) => a - b);
}
