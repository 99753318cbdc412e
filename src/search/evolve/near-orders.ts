import type { Order } from '../../order/order.js';

/** A symmetry of an order, by which each element repeats another: the place of that other, and its colour. */
interface OrderSymmetry {
  readonly place: (at: number) => number;
  readonly colour: (of: number) => number;
}

/**
 * The orders nearest to an order, in lengths that are asked. For each symmetry of the order: those with one element
 * changed, woven once more or left out, together with all that repeat it; then those with two changed. Last of all,
 * any order with one element changed, once more or left out.
 */
export function nearOrders(order: Order, colours: number, lengths: readonly number[]): Order[] {
  const symmetries = symmetriesOf(order, colours);
  const near = [
    ...symmetries.flatMap((symmetry) => [...recoloured(order, colours, symmetry), ...resized(order, symmetry)]),
    ...symmetries.flatMap((symmetry) => recolouredTwice(order, colours, symmetry)),
    ...recoloured(order, colours, NONE),
    ...resized(order, NONE),
  ].filter(({ length }) => lengths.includes(length));
  return [...new Map(near.map((each) => [each.join(), each])).values()];
}

/** The order with one element changed, and all that repeat it; only elements from this one on. */
function recoloured(order: Order, colours: number, symmetry: OrderSymmetry, from = 0): Order[] {
  return firstsOf(order, symmetry)
    .filter((at) => at >= from)
    .flatMap((at) =>
      Array.from({ length: colours - 1 }, (_, k) => (order[at]! + 1 + k) % colours).flatMap((to) =>
        repainted(order, at, to, symmetry),
      ),
    );
}

function recolouredTwice(order: Order, colours: number, symmetry: OrderSymmetry): Order[] {
  return recoloured(order, colours, symmetry).flatMap((once) => {
    const changed = once.findIndex((colour, at) => colour !== order[at]);
    return recoloured(once, colours, symmetry, changed + 1);
  });
}

/** The order with one element woven once more, or left out, and all that repeat it. */
function resized(order: Order, symmetry: OrderSymmetry): Order[] {
  const orbits = firstsOf(order, symmetry).map((at) => orbitOf(at, symmetry));
  return [
    ...orbits.map((orbit) => order.flatMap((colour, at) => (orbit.includes(at) ? [colour, colour] : [colour]))),
    ...orbits.map((orbit) => order.filter((_, at) => !orbit.includes(at))),
  ];
}

/** Each element repeats only itself. */
const NONE: OrderSymmetry = { place: (at) => at, colour: (of) => of };

/**
 * The symmetries of an order: turned about an element or between two, or moved on, its colours kept, or exchanged in
 * turn, or read backwards.
 */
function symmetriesOf(order: Order, colours: number): OrderSymmetry[] {
  const n = order.length;
  const found: OrderSymmetry[] = [];
  for (const [turn, by] of [-1, 1].flatMap((turn) => order.map((_, by) => [turn, by] as const))) {
    if (turn === 1 && by === 0) continue;
    for (const sign of colours > 2 ? [1, -1] : [1]) {
      for (let more = 0; more < colours; more++) {
        const place = (at: number): number => (((turn * at + by) % n) + n) % n;
        const colour = (of: number): number => (sign * of + more + colours) % colours;
        if (order.every((of, at) => order[place(at)] === colour(of))) found.push({ place, colour });
      }
    }
  }
  return found;
}

/** Of elements that repeat one another, the first. */
function firstsOf(order: Order, symmetry: OrderSymmetry): number[] {
  return order.map((_, at) => at).filter((at) => orbitOf(at, symmetry).every((other) => other >= at));
}

/** The place of an element and those of all that repeat it. */
function orbitOf(at: number, { place }: OrderSymmetry): number[] {
  const orbit = [at];
  for (let next = place(at); next !== at; next = place(next)) orbit.push(next);
  return orbit;
}

/** The order with an element and all that repeat it changed; none if one of them would need two colours. */
function repainted(order: Order, at: number, to: number, { place, colour }: OrderSymmetry): Order[] {
  const changed = order.with(at, to);
  let [next, needed] = [place(at), colour(to)];
  for (; next !== at; [next, needed] = [place(next), colour(needed)]) changed[next] = needed;
  return needed === to ? [changed] : [];
}
