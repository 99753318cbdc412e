import { gcd } from '../draft/repeat.js';
import { type Order, smallestPeriod } from './order.js';

export { gcd, lcm } from '../draft/repeat.js';

/**
 * Every cyclic word of `length` elements over `colours` colours, each rotation class once, as the word of the class
 * that sorts first, in sorted order. Constant amortised time a word: the recursion of Ruskey, Savage and Wang
 * (J. Algorithms 13, 1992), which prolongs prenecklaces and never builds a word it would have to throw away.
 */
function necklaces(length: number, colours: number): Order[] {
  const word = new Array<number>(length + 1).fill(0);
  const found: Order[] = [];
  const prolong = (at: number, period: number): void => {
    if (at > length) {
      if (length % period === 0) found.push(word.slice(1));
      return;
    }
    word[at] = word[at - period]!;
    prolong(at + 1, period);
    for (let colour = word[at - period]! + 1; colour < colours; colour++) {
      word[at] = colour;
      prolong(at + 1, at);
    }
  };
  prolong(1, 1);
  return found;
}

/** The rotation of a word that sorts first (Booth, Inf. Process. Lett. 10, 1980, in its two-pointer form). */
export function leastRotation(word: Order): Order {
  const n = word.length;
  let first = 0;
  let rival = 1;
  let same = 0;
  while (first < n && rival < n && same < n) {
    const a = word[(first + same) % n]!;
    const b = word[(rival + same) % n]!;
    if (a === b) {
      same++;
      continue;
    }
    if (a > b) first += same + 1;
    else rival += same + 1;
    if (first === rival) rival++;
    same = 0;
  }
  const start = Math.min(first, rival);
  return [...word.slice(start), ...word.slice(0, start)];
}

/**
 * Orders that differ among all words of the asked lengths: a word that repeats a shorter one (DLDL) is that shorter
 * one (DL), which weaves the same cloth. So these are the necklaces without a shorter repeat, of every length that
 * divides an asked one.
 */
export function distinctOrdersOf(lengths: readonly number[], colours: number): Order[] {
  const longest = Math.max(0, ...lengths);
  return Array.from({ length: longest }, (_, n) => n + 1)
    .filter((root) => lengths.some((length) => length % root === 0))
    .flatMap((root) => necklaces(root, colours).filter((word) => smallestPeriod(word) === root));
}

/** Orders that can be written: every word of every length, rotations and one-colour words included. */
export function writtenOrders(lengths: readonly number[], colours: number): number {
  return [...new Set(lengths)].reduce((sum, length) => sum + colours ** length, 0);
}

/**
 * How many rotation classes there are (Burnside): the sum over d dividing n of φ(d)·k^(n/d), over n. Exact below
 * 2^53.
 */
export function countNecklaces(length: number, colours: number): number {
  let sum = 0;
  for (let r = 1; r <= length; r++) sum += colours ** gcd(r, length);
  return sum / length;
}
