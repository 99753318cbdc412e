import { type Drawdown, drawdown, isUp } from '../../cloth/drawdown.js';
import { endStrands, pickStrands, places, startCount } from '../../order/lay.js';
import { leastRotation } from '../../order/necklace.js';
import type { Order } from '../../order/order.js';
import type { Question } from '../question/question.js';
import { type Family, hasTabby } from './family.js';
import { startsOf, weaveShifts } from './starts.js';

/** A symmetry of a weave, with or without an exchange of colours. It maps a candidate to another of the same cloth. */
export interface WeaveSymmetry {
  readonly flipAcross: boolean;
  readonly flipDown: boolean;
  readonly shift: readonly [number, number];
  readonly exchange: boolean;
}

/**
 * The image of an order under a carrier: its canonical rotation, and by how many elements it was rotated to get there.
 */
interface Image {
  readonly order: Order;
  readonly turn: number;
}

export function imageOf(order: Order, flip: boolean, exchange: boolean): Image {
  const turned = flip ? order.toReversed() : order;
  const image = exchange ? turned.map((colour) => 1 - colour) : turned;
  const least = leastRotation(image);
  const n = order.length;
  return { order: least, turn: least.findIndex((_, t) => least.every((__, e) => image[e] === least[(e + t) % n])) };
}

/** Number of the listed start to which a carrier moves orders that begin on threads (units) `a` and `b`. */
export type StartsAlike = (
  weaveSymmetry: WeaveSymmetry,
  a: number,
  b: number,
  turnWarp: number,
  turnWeft: number,
) => number;

/** Follows starts of orders of n and m elements under carriers. Starts are numbered as `startsOf` lists them. */
export function startsAlike(question: Question, family: Family, n: number, m: number): StartsAlike {
  const { times } = family;
  const weave = family.weave([0], [0]);
  const by = { by: family.by === 'thread' ? 'thread' : 'unit', times } as const;
  const across = startCount(endStrands(weave), n, by);
  const down = startCount(pickStrands(weave), m, by);
  const shifts = family.by === 'thread' ? weaveShifts(weave) : [];
  const numbers = new Int32Array(across * down).fill(-1);
  startsOf(question.starts, family, n, m).forEach(([a, b], number) => {
    numbers[a * down + b] = number;
    for (const [x, y] of shifts) numbers[((a + x) % across) * down + ((b + y) % down)] = number;
  });
  const moved = (start: number, flip: boolean, shift: number, turn: number, of: number): number => {
    const begun = (flip ? shift - start + 1 : start - shift) - turn * times;
    return ((begun % of) + of) % of;
  };
  return ({ flipAcross, flipDown, shift: [x, y] }, a, b, turnWarp, turnWeft) =>
    numbers[moved(a, flipAcross, x, turnWarp, across) * down + moved(b, flipDown, y, turnWeft, down)]!;
}

/**
 * The carriers of a question, without the identity: each mirror and half turn with one shift, with and without
 * exchange.
 */
export function weaveSymmetries(question: Question, family: Family): WeaveSymmetry[] {
  // An operation moves the start of both orders, and may carry it to one that is not tried.
  if (question.starts !== 'all' || question.orders.length > 0 || !family.fixedWeave) return [];
  if (question.weft.rule === 'fixed' || question.warp !== undefined || family.fill === 'nest') return [];
  const own = question.weft.rule === 'own';
  const weave = family.weave([0], [0]);
  const exchange = question.same.includes('exchange') && question.yarns.length === 2 && !hasTabby(family);
  const mirror = question.same.includes('mirror');
  const halfTurn = mirror || question.same.includes('half-turn');
  const plain = weave.companions === undefined && places(pickStrands(weave), 'thread') === weave.treadling.length;
  // An order laid by unit, or stretched with the alternate fill, is in general not laid so when read backward.
  const turns = family.by === 'thread' && plain && (family.fill === 'solid' || family.times === 1);
  const shapes: (readonly [boolean, boolean])[] = [
    [false, false],
    ...(turns && halfTurn ? [[true, true] as const] : []),
    // A mirror reverses one order and not the other, so a weft that follows the warp would no longer follow it.
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

/** A shift that, after the flips, carries the weave to itself: D(±x + shift) = D(x). Undefined if there is none. */
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
