import type { Order } from '../../order/order.js';

/**
 * The orders nearest to an order, in lengths that are asked: a mirrored order with one or two elements changed together
 * with their mirror images; then any order with one element changed, with one more, or with one less.
 */
export function nearOrders(order: Order, colours: number, lengths: readonly number[]): Order[] {
  const n = order.length;
  const places = order.map((_, at) => at);
  const recoloured = (from: Order, at: number, also: number): Order[] =>
    Array.from({ length: colours - 1 }, (_, k) => {
      const to = (from[at]! + 1 + k) % colours;
      return from.with(at, to).with(also, to);
    });
  const mirrored = places
    .filter((axis) => order.every((colour, at) => colour === order[(axis - at + n) % n]))
    .flatMap((axis) => {
      const image = (at: number): number => (axis - at + n) % n;
      const half = places.filter((at) => at <= image(at));
      const changed = (from: Order, at: number): Order[] => recoloured(from, at, image(at));
      const once = half.map((at) => changed(order, at));
      const twice = once.flatMap((list, k) =>
        list.flatMap((one) => half.slice(k + 1).flatMap((at) => changed(one, at))),
      );
      return [...once.flat(), ...twice];
    });
  return [
    ...mirrored,
    ...places.flatMap((at) => recoloured(order, at, at)),
    ...order.map((colour, at) => order.toSpliced(at, 0, colour)),
    ...places.map((at) => order.toSpliced(at, 1)),
  ].filter(({ length }) => lengths.includes(length));
}
