import type { Yarn } from '../colour/yarn.js';
import { Problem } from '../problem.js';

/** A colour order: a cyclic word of palette indices. */
export type Order = readonly number[];

/** More elements than any warp needs; guards against `(DL)999999999`. */
const LONGEST_ORDER = 4096;

/**
 * Reads an order: letters of yarns, spaces allowed, a number after a letter or a bracket repeats it.
 * `D L D D L`, `DLDDL`, `D4 L4` and `(DL)4 (LD)4` are all orders. Refuses unknown letters and unmatched brackets.
 */
export function parseOrder(text: string, yarns: readonly Yarn[]): Order {
  const letters = yarns.map((yarn) => yarn.letter);
  const order: number[] = [];
  const open: number[] = [];
  let last = -1;
  const fail = (at: number, found: string): never => {
    throw new Problem(
      `order “${text}”, place ${at + 1}: found ${found}, expected one of ${letters.join(' ')}, a bracket or a count`,
    );
  };
  for (const token of text.matchAll(/\s+|\d+|[\s\S]/g)) {
    const sign = token[0];
    const at = token.index;
    if (/^\s/.test(sign)) continue;
    if (/^\d/.test(sign)) {
      const times = Number(sign);
      if (last < 0) fail(at, `the count ${sign} with nothing before it`);
      if (times < 1) fail(at, 'a count of 0');
      const part = order.slice(last);
      if (order.length + part.length * (times - 1) > LONGEST_ORDER) {
        throw new Problem(`order “${text}”: longer than ${LONGEST_ORDER} elements`);
      }
      for (let t = 1; t < times; t++) order.push(...part);
      last = -1;
    } else if (sign === '(') {
      open.push(order.length);
      last = -1;
    } else if (sign === ')') {
      last = open.pop() ?? fail(at, 'a closing bracket without its opening one');
      if (last === order.length) fail(at, 'an empty bracket');
    } else {
      const yarn = letters.indexOf(sign.toUpperCase());
      if (yarn < 0) fail(at, `“${sign}”`);
      last = order.push(yarn) - 1;
    }
  }
  if (open.length > 0) throw new Problem(`order “${text}”: a bracket is not closed`);
  if (order.length === 0) throw new Problem('an order is empty; expected letters of yarns such as D L D D L');
  if (order.length > LONGEST_ORDER) throw new Problem(`order “${text}”: longer than ${LONGEST_ORDER} elements`);
  return order;
}

/** Writes an order as plain letters, `DLDDL`. */
export function formatOrder(order: ArrayLike<number>, yarns: readonly Yarn[]): string {
  return Array.from(order, (colour) => yarns[colour]!.letter).join('');
}

/** Writes an order by its runs, as it is read back: `D4 L4` for DDDDLLLL, `D L D2 L` for DLDDL. */
export function formatRuns(order: ArrayLike<number>, yarns: readonly Yarn[]): string {
  const runs: { letter: string; length: number }[] = [];
  for (const letter of formatOrder(order, yarns)) {
    const run = runs.at(-1);
    if (run?.letter === letter) run.length++;
    else runs.push({ letter, length: 1 });
  }
  return runs.map((run) => (run.length === 1 ? run.letter : `${run.letter}${run.length}`)).join(' ');
}

/** The length of the smallest cyclic repeat of a word; it divides the word's length. */
export function smallestPeriod(word: ArrayLike<number>): number {
  const n = word.length;
  // Border array of Knuth, Morris and Pratt: n − longest border is the period where it divides n.
  const border = new Int32Array(n);
  for (let i = 1, k = 0; i < n; i++) {
    while (k > 0 && word[i] !== word[k]) k = border[k - 1]!;
    if (word[i] === word[k]) k++;
    border[i] = k;
  }
  const period = n - (border[n - 1] ?? 0);
  return n % period === 0 ? period : n;
}

/** The order with each colour replaced by its companion: the next of the palette, the first after the last. */
export function exchanged(order: Order, colours: number): Order {
  return order.map((colour) => (colour + 1) % colours);
}

/**
 * The order within itself: every element is replaced by the whole order, each colour moved on by as many places of the
 * palette as the element's own (n → n² elements). Of two colours, the second is replaced by the order's exchange.
 */
export function nested(order: Order, colours: number): Order {
  return order.flatMap((element) => order.map((colour) => (colour + element) % colours));
}
