import type { Order } from '../../order/order.js';
import type { Question } from '../question/question.js';
import type { Stratum } from './stratum.js';
import { imageOf, startsAlike, weaveSymmetries } from './weave-symmetries.js';

/**
 * The orbits of a block's candidates under the symmetries of the weave and the exchange of colours. All candidates of
 * an orbit weave the same cloth. The one with the lowest number represents them; the others are not scored. See
 * COUNTING.md.
 */
export interface Orbits {
  /** Whether all, none or some of the candidates with this warp order represent their orbit (`some`: ask `stands`). */
  ofWarp(warp: number): 'all' | 'none' | 'some';
  /** Whether a candidate represents its orbit. If the weft order follows from the warp's, `weft` is 0. */
  stands(warp: number, weft: number, start: number): boolean;
  /** How many orbits there are, by Burnside's lemma, without listing the candidates. */
  count(): number;
}

/** For each order of a list: the number of its image in the list, and by how many elements the image is rotated. */
interface Images {
  readonly order: Int32Array;
  readonly turn: Int32Array;
}

/** The orbits of a block. Both its lists hold every order of their length, so that images are in the list. */
export function orbitsOf(question: Question, stratum: Stratum): Orbits {
  const { family, warps, starts } = stratum;
  const carriers = weaveSymmetries(question, family);
  if (carriers.length === 0) return { ofWarp: () => 'all', stands: () => true, count: () => stratum.count };
  const own = stratum.wefts.length > 0;
  const wefts = own ? stratum.wefts : warps;
  const begun = startsAlike(question, family, warps[0]!.length, wefts[0]!.length);
  const moves = carriers.map((c) => ({
    ...c,
    warp: imagesOf(warps, c.flipAcross, c.exchange),
    weft: imagesOf(wefts, c.flipDown, c.exchange),
  }));
  const stands: Orbits['stands'] = (warp, weft, start) => {
    const [a, b] = starts[start]!;
    for (const move of moves) {
      const w = move.warp.order[warp]!;
      if (w > warp) continue;
      if (w < warp) return false;
      // If the weft order follows from the warp's, its image follows from the image of the warp order.
      const from = own ? weft : warp;
      const f = move.weft.order[from]!;
      if (own && f > weft) continue;
      if (own && f < weft) return false;
      if (begun(move, a, b, move.warp.turn[warp]!, move.weft.turn[from]!) < start) return false;
    }
    return true;
  };
  const ofWarp: Orbits['ofWarp'] = (warp) => {
    let verdict: 'all' | 'some' = 'all';
    for (const move of moves) {
      const w = move.warp.order[warp]!;
      if (w < warp) return 'none';
      if (w === warp) verdict = 'some';
    }
    return verdict;
  };
  const fixed = (move: (typeof moves)[number]): number => {
    let sum = 0;
    const warpTurns = turnsOfFixed(move.warp);
    for (const [turnW, countW] of warpTurns) {
      for (const [turnF, countF] of own ? turnsOfFixed(move.weft) : [[turnW, 1] as const]) {
        const still = starts.filter(([a, b], start) => begun(move, a, b, turnW, turnF) === start).length;
        sum += countW * countF * still;
      }
    }
    return sum;
  };
  const count = (): number => moves.reduce((sum, move) => sum + fixed(move), stratum.count) / (moves.length + 1);
  return { ofWarp, stands, count };
}

/** How many orders are their own image, by the number of elements of the rotation. */
function turnsOfFixed(image: Images): Map<number, number> {
  const turns = new Map<number, number>();
  image.order.forEach((to, from) => {
    if (to === from) turns.set(image.turn[from]!, (turns.get(image.turn[from]!) ?? 0) + 1);
  });
  return turns;
}

const images = new WeakMap<readonly Order[], Map<string, Images>>();

/** Images of a list of orders, computed once for all blocks that share the list. */
function imagesOf(orders: readonly Order[], flip: boolean, exchange: boolean): Images {
  const known = images.get(orders) ?? new Map<string, Images>();
  images.set(orders, known);
  const sign = `${flip} ${exchange}`;
  let list = known.get(sign);
  if (list === undefined) {
    const number = new Map(orders.map((order, at) => [order.join(), at]));
    list = { order: new Int32Array(orders.length), turn: new Int32Array(orders.length) };
    for (let at = 0; at < orders.length; at++) {
      const image = imageOf(orders[at]!, flip, exchange);
      list.order[at] = number.get(image.order.join())!;
      list.turn[at] = image.turn;
    }
    known.set(sign, list);
  }
  return list;
}
