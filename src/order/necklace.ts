import { gcd } from '../draft/repeat.js';
import { type Order, smallestPeriod } from './order.js';

export { gcd, lcm } from '../draft/repeat.js';

/**
 * All necklaces: the cyclic words of `length` elements over `colours` colours, one per rotation class (the
 * lexicographically least word), in sorted order. The recursion of Ruskey, Savage and Wang (J. Algorithms 13, 1992)
 * extends prenecklaces and discards none, in constant amortised time per word.
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

/** The lexicographically least rotation of a word (Booth, Inf. Process. Lett. 10, 1980, in its two-pointer form). */
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
 * The different orders among all words of the given lengths. A word that repeats a shorter one (DLDL) weaves the same
 * cloth as the shorter one (DL). The result is therefore all aperiodic necklaces (Lyndon words) of every length that
 * divides a given one.
 */
export function distinctOrdersOf(lengths: readonly number[], colours: number): Order[] {
  const longest = Math.max(0, ...lengths);
  return Array.from({ length: longest }, (_, n) => n + 1)
    .filter((root) => lengths.some((length) => length % root === 0))
    .flatMap((root) => necklaces(root, colours).filter((word) => smallestPeriod(word) === root));
}

/** The number of orders that can be written: all words of all lengths, rotations and one-colour words included. */
export function writtenOrders(lengths: readonly number[], colours: number): number {
  return [...new Set(lengths)].reduce((sum, length) => sum + colours ** length, 0);
}

/**
 * The number of rotation classes (Burnside): the sum of φ(d)·k^(n/d) over all d dividing n, divided by n. Exact below
 * 2^53.
 */
export function countNecklaces(length: number, colours: number): number {
  let sum = 0;
  for (let r = 1; r <= length; r++) sum += colours ** gcd(r, length);
  return sum / length;
}
