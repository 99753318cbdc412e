import { type Drawdown, drawdown, isUp } from '../cloth/drawdown.js';
import { endStrands, pickStrands, places, startCount } from '../order/lay.js';
import { leastRotation } from '../order/necklace.js';
import type { Order } from '../order/order.js';
import type { Block } from './block.js';
import { hasTabby } from './family.js';
import type { Question } from './question.js';
import { weaveShifts } from './starts.js';

/**
 * Which candidates of a block weave the same cloth because a symmetry of the weave, or exchanging the colours of both
 * orders, carries one to the other. One of them, the first in number, stands for all; the others need no scoring.
 */
export interface Orbits {
  /** Whether candidates with this warp order stand for themselves: always, never, or each to be asked for. */
  ofWarp(warp: number): 'all' | 'none' | 'some';
  /** Whether a candidate stands for those that weave the same cloth. Where the weft follows the warp, `weft` is 0. */
  stands(warp: number, weft: number, start: number): boolean;
  /** How many candidates stand for themselves, by Burnside's lemma: no list is made. */
  count(): number;
}

/** A symmetry that carries candidates to candidates. */
interface Carrier {
  readonly flipAcross: boolean;
  readonly flipDown: boolean;
  readonly shift: readonly [number, number];
  readonly exchange: boolean;
}

/** Where an order goes when it is turned round or its colours are exchanged: which order, begun how many elements on. */
interface Image {
  readonly order: Int32Array;
  readonly turn: Int32Array;
}

/** The orbits of a block in which both orders run over all words of their lengths. */
export function orbitsOf(question: Question, block: Block): Orbits {
  const carriers = carriersOf(question, block);
  const { family, warps, starts } = block;
  if (carriers.length === 0) return { ofWarp: () => 'all', stands: () => true, count: () => block.count };
  const own = block.wefts.length > 0;
  const wefts = own ? block.wefts : warps;
  const { times } = family;
  const weave = family.weave(warps[0]!, wefts[0]!);
  const by = { by: family.by === 'thread' ? 'thread' : 'unit', times } as const;
  const across = startCount(endStrands(weave), warps[0]!.length, by);
  const down = startCount(pickStrands(weave), wefts[0]!.length, by);
  const startOf = startNumbers(starts, across, down, family.by === 'thread' ? weaveShifts(weave) : []);
  const moves = carriers.map((c) => ({
    ...c,
    warp: imageOf(warps, c.flipAcross, c.exchange),
    weft: imageOf(wefts, c.flipDown, c.exchange),
  }));
  /** Where an order that began on thread `start` begins after the move. */
  const moved = (start: number, flip: boolean, shift: number, turn: number, of: number): number => {
    const begun = (flip ? shift - start + 1 : start - shift) - turn * times;
    return ((begun % of) + of) % of;
  };
  const stands: Orbits['stands'] = (warp, weft, start) => {
    const [a, b] = starts[start]!;
    for (const move of moves) {
      const w = move.warp.order[warp]!;
      if (w > warp) continue;
      if (w < warp) return false;
      // Where the weft follows the warp, so does its image.
      const from = own ? weft : warp;
      const f = move.weft.order[from]!;
      if (own && f > weft) continue;
      if (own && f < weft) return false;
      const x = moved(a, move.flipAcross, move.shift[0], move.warp.turn[warp]!, across);
      const y = moved(b, move.flipDown, move.shift[1], move.weft.turn[from]!, down);
      if (startOf[x * down + y]! < start) return false;
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
    const stays = (a: number, b: number, start: number, turnW: number, turnF: number): boolean =>
      startOf[
        moved(a, move.flipAcross, move.shift[0], turnW, across) * down +
          moved(b, move.flipDown, move.shift[1], turnF, down)
      ] === start;
    let sum = 0;
    const warpTurns = turnsOfFixed(move.warp);
    for (const [turnW, countW] of warpTurns) {
      for (const [turnF, countF] of own ? turnsOfFixed(move.weft) : [[turnW, 1] as const]) {
        const still = starts.filter(([a, b], start) => stays(a, b, start, turnW, turnF)).length;
        sum += countW * countF * still;
      }
    }
    return sum;
  };
  const count = (): number => moves.reduce((sum, move) => sum + fixed(move), block.count) / (moves.length + 1);
  return { ofWarp, stands, count };
}

/** How many orders are their own image, by how far they are turned. */
function turnsOfFixed(image: Image): Map<number, number> {
  const turns = new Map<number, number>();
  image.order.forEach((to, from) => {
    if (to === from) turns.set(image.turn[from]!, (turns.get(image.turn[from]!) ?? 0) + 1);
  });
  return turns;
}

/** Number of the start that stands for every pair of starts. */
function startNumbers(
  starts: Block['starts'],
  across: number,
  down: number,
  shifts: readonly (readonly [number, number])[],
): Int32Array {
  const numbers = new Int32Array(across * down).fill(-1);
  starts.forEach(([a, b], number) => {
    numbers[a * down + b] = number;
    for (const [x, y] of shifts) numbers[((a + x) % across) * down + ((b + y) % down)] = number;
  });
  return numbers;
}

/** The symmetries of the weave that a question counts as the same cloth, each but for shifts, and with exchange. */
function carriersOf(question: Question, block: Block): Carrier[] {
  const { family, warps, wefts } = block;
  if (question.starts === 'first' || question.orders.length > 0 || !family.fixedWeave) return [];
  if (question.weft.rule === 'fixed' || question.warp !== undefined || family.fill === 'nest') return [];
  const own = wefts.length > 0;
  const weave = family.weave(warps[0]!, warps[0]!);
  const exchange = question.same.includes('exchange') && question.yarns.length === 2 && !hasTabby(family);
  const mirror = question.same.includes('mirror');
  const halfTurn = mirror || question.same.includes('half-turn');
  const plain = weave.companions === undefined && places(pickStrands(weave), 'thread') === weave.treadling.length;
  // Turned round, an order laid by unit, or stretched with its fill in turn, is in general no longer laid so.
  const turns = family.by === 'thread' && plain && (family.fill === 'solid' || family.times === 1);
  const shapes: (readonly [boolean, boolean])[] = [
    [false, false],
    ...(turns && halfTurn ? [[true, true] as const] : []),
    // A mirror turns one order and not the other: what follows the warp no longer would.
    ...(turns && mirror && own ? [[true, false] as const, [false, true] as const] : []),
  ];
  return shapes.flatMap(([flipAcross, flipDown]) => {
    const shift = flipAcross || flipDown ? carryingShift(drawdown(weave), flipAcross, flipDown) : ([0, 0] as const);
    if (shift === undefined) return [];
    const shape = { flipAcross, flipDown, shift };
    const kept = flipAcross || flipDown ? [{ ...shape, exchange: false }] : [];
    return exchange ? [...kept, { ...shape, exchange: true }] : kept;
  });
}

/** A shift after which the turned weave is the weave again: D(±x + shift) = D(x). */
function carryingShift(cloth: Drawdown, flipAcross: boolean, flipDown: boolean): readonly [number, number] | undefined {
  const { ends, picks } = cloth;
  const turn = (s: number, flip: boolean, shift: number, of: number): number => ((flip ? of - s : s) + shift) % of;
  for (let x = 0; x < ends; x++) {
    for (let y = 0; y < picks; y++) {
      let holds = true;
      for (let j = 0; holds && j < picks; j++) {
        for (let i = 0; holds && i < ends; i++) {
          holds = isUp(cloth, j, i) === isUp(cloth, turn(j, flipDown, y, picks), turn(i, flipAcross, x, ends));
        }
      }
      if (holds) return [x, y];
    }
  }
  return undefined;
}

const images = new WeakMap<readonly Order[], Map<string, Image>>();

/** The images of a list of orders, made once for all blocks that share the list. */
function imageOf(orders: readonly Order[], flip: boolean, exchange: boolean): Image {
  const known = images.get(orders) ?? new Map<string, Image>();
  images.set(orders, known);
  const sign = `${flip} ${exchange}`;
  const image = known.get(sign) ?? imagesOf(orders, flip, exchange);
  known.set(sign, image);
  return image;
}

function imagesOf(orders: readonly Order[], flip: boolean, exchange: boolean): Image {
  const number = new Map(orders.map((order, at) => [order.join(), at]));
  const order = new Int32Array(orders.length);
  const turn = new Int32Array(orders.length);
  orders.forEach((word, at) => {
    const turned = flip ? word.toReversed() : word;
    const image = exchange ? turned.map((colour) => 1 - colour) : turned;
    const least = leastRotation(image);
    order[at] = number.get(least.join())!;
    turn[at] = least.findIndex((_, t) => least.every((__, e) => image[e] === least[(e + t) % least.length]));
  });
  return { order, turn };
}
