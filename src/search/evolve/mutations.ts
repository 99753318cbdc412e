import type { Order } from '../../order/order.js';

/** A stream of random numbers: each call returns the next, from 0 to below 1. */
export type Rng = () => number;

/** What a mutation may use beside the order itself. */
export interface Around {
  readonly colours: number;
  /** The order of another elite. */
  readonly other: Order;
}

/** A mutation of an order; the result may have another length. */
type Mutation = (order: Order, rng: Rng, around: Around) => Order;

/** A whole number from 0 to below `below`. */
export function pickNumber(below: number, rng: Rng): number {
  return Math.floor(rng() * below);
}

/** A random entry of a list that is not empty. */
export function pickFrom<T>(list: readonly T[], rng: Rng): T {
  return list[pickNumber(list.length, rng)]!;
}

/** The mutations, which are the ways in which a weaver alters an order. */
export const MUTATIONS = {
  /** One element takes another colour. */
  'one element': (order, rng, { colours }) => {
    const at = pickNumber(order.length, rng);
    return order.with(at, (order[at]! + 1 + pickNumber(colours - 1, rng)) % colours);
  },

  /**
   * An element and its mirror image about a turning point take another colour, so that a mirrored order stays mirrored.
   */
  'one element and its mirror': (order, rng, { colours }) => {
    const n = order.length;
    const turns = order.map((_, axis) => axis).filter((axis) => order.every((c, e) => c === order[(axis - e + n) % n]));
    const axis = turns.length > 0 ? pickFrom(turns, rng) : pickNumber(n, rng);
    const at = pickNumber(n, rng);
    const colour = (order[at]! + 1 + pickNumber(colours - 1, rng)) % colours;
    return order.with(at, colour).with((axis - at + n) % n, colour);
  },

  /** Two colours change places throughout. */
  'two colours change places': (order, rng, { colours }) => {
    const a = pickNumber(colours, rng);
    const b = (a + 1 + pickNumber(colours - 1, rng)) % colours;
    return order.map((colour) => (colour === a ? b : colour === b ? a : colour));
  },

  /** One element is woven once more. */
  'one element more': (order, rng) => {
    const at = pickNumber(order.length, rng);
    return [...order.slice(0, at), order[at]!, ...order.slice(at)];
  },

  /** One element is left out. */
  'one element less': (order, rng) => {
    const at = pickNumber(order.length, rng);
    return order.length > 1 ? [...order.slice(0, at), ...order.slice(at + 1)] : order;
  },

  /** Two elements change places. */
  'two change places': (order, rng) => {
    const a = pickNumber(order.length, rng);
    const b = pickNumber(order.length, rng);
    return order.with(a, order[b]!).with(b, order[a]!);
  },

  /** A part begins later within its place. */
  rotate: (order, rng) => {
    const [before, part, after] = parted(order, rng);
    const by = pickNumber(part.length, rng);
    return [...before, ...part.slice(by), ...part.slice(0, by), ...after];
  },

  /** In a part, every colour is exchanged for the next. */
  exchange: (order, rng, { colours }) => {
    const [before, part, after] = parted(order, rng);
    return [...before, ...part.map((colour) => (colour + 1) % colours), ...after];
  },

  /** A part gives way to a part of another order. */
  splice: (order, rng, { other }) => {
    const [before, , after] = parted(order, rng);
    return [...before, ...parted(other, rng)[1], ...after];
  },

  /** A part is read backwards. */
  'turn a part': (order, rng) => {
    const [before, part, after] = parted(order, rng);
    return [...before, ...part.toReversed(), ...after];
  },

  /** The order runs up to a turn and back again, the turns single or double. */
  mirror: (order, rng) => {
    const half = order.slice(0, Math.ceil(order.length / (1 + pickNumber(2, rng))));
    const single = pickNumber(2, rng);
    return [...half, ...half.toReversed().slice(single, single === 0 || half.length < 3 ? undefined : -1)];
  },

  /** The order, then its exchange. */
  'exchange and repeat': (order, rng, { colours }) => {
    const half = order.slice(0, Math.ceil(order.length / (1 + pickNumber(2, rng))));
    return [...half, ...half.map((colour) => (colour + 1) % colours)];
  },

  /** Every element twice. */
  double: (order) => order.flatMap((colour) => [colour, colour]),

  /** Every other element. */
  halve: (order) => order.filter((_, e) => e % 2 === 0),

  /** A part is woven twice. */
  'repeat a part': (order, rng) => {
    const [before, part, after] = parted(order, rng);
    return [...before, ...part, ...part, ...after];
  },

  /** A part is left out. */
  'leave a part out': (order, rng) => {
    const [before, part, after] = parted(order, rng);
    return before.length + after.length > 0 ? [...before, ...after] : part;
  },
} as const satisfies Readonly<Record<string, Mutation>>;

export type MutationName = keyof typeof MUTATIONS;

/**
 * Cuts an order at two random places: the elements before a part, the part (at least one element), and those after it.
 */
function parted(order: Order, rng: Rng): [before: Order, part: Order, after: Order] {
  const from = pickNumber(order.length, rng);
  const to = from + 1 + pickNumber(order.length - from, rng);
  return [order.slice(0, from), order.slice(from, to), order.slice(to)];
}

/**
 * Brings an order to the nearest allowed length (of two equally near, the longer): cuts it off, or repeats it.
 *
 * @param lengths ascending
 */
export function fitted(order: Order, lengths: readonly number[]): Order {
  let nearest = lengths[0]!;
  for (const length of lengths) {
    if (Math.abs(length - order.length) <= Math.abs(nearest - order.length)) nearest = length;
  }
  return Array.from({ length: nearest }, (_, e) => order[e % order.length]!);
}
