import type { Yarn } from '../colour/yarn.js';
import { letters, readElements } from '../draft/notation.js';
import { Problem, quote } from '../problem.js';

export { smallestPeriod } from '../draft/repeat.js';

/** A colour order: a cyclic word of palette indices. */
export type Order = readonly number[];

/** More elements than any warp needs; guards against `(DL)999999999`. */
const LONGEST_ORDER = 4096;

/**
 * Reads an order: letters of yarns, spaces and commas allowed, a number after a letter or a bracket repeats it.
 * `D L D D L`, `DLDDL`, `D4 L4` and `(DL)4 (LD)4` are all orders. Throws on unknown letters and unmatched brackets.
 */
export function parseOrder(text: string, yarns: readonly Yarn[]): Order {
  if (text.trim() === '') throw new Problem('an order is empty; expected letters of yarns such as D L D D L');
  const known = yarns.map((yarn) => yarn.letter);
  const alphabet = { ...letters(known), expected: `a yarn (${known.join(' ')}), a bracket or a count` };
  return readElements(text, alphabet, LONGEST_ORDER, (place, found, expected) => {
    throw new Problem(`order ${quote(text)}, place ${place + 1}: found ${found}, expected ${expected}`);
  });
}

/** Writes an order as plain letters, `DLDDL`. */
export function formatOrder(order: ArrayLike<number>, yarns: readonly Yarn[]): string {
  return Array.from(order, (colour) => yarns[colour]!.letter).join('');
}

/** Least number of repeats of a pair of colours that is written in brackets. */
const TURNS_AT_LEAST = 3;

/**
 * Writes an order by its runs and its alternating pairs, in a form that `parseOrder` reads: `D4 L4` for DDDDLLLL,
 * `D L D2 L` for DLDDL, `(DL)4 (LD)4` for a log cabin.
 */
export function formatRuns(order: ArrayLike<number>, yarns: readonly Yarn[]): string {
  return runsOf(formatOrder(order, yarns));
}

/** Writes letters by their runs and alternating pairs, as `formatRuns` writes an order. */
export function runsOf(letters: string): string {
  const words: string[] = [];
  for (let at = 0; at < letters.length; ) {
    const letter = letters[at]!;
    const pair = letters.slice(at, at + 2);
    const turns = pair.length === 2 && pair[1] !== letter ? timesAt(letters, at, pair) : 0;
    if (turns >= TURNS_AT_LEAST) {
      words.push(`(${pair})${turns}`);
      at += 2 * turns;
    } else {
      const run = timesAt(letters, at, letter);
      words.push(run === 1 ? letter : `${letter}${run}`);
      at += run;
    }
  }
  return words.join(' ');
}

/** How many times in a row `part` occurs from index `at` on. */
function timesAt(letters: string, at: number, part: string): number {
  let times = 0;
  while (letters.startsWith(part, at + times * part.length)) times++;
  return times;
}

/** The order with each colour replaced by its companion: the next of the palette, the first after the last. */
export function exchanged(order: Order, colours: number): Order {
  return order.map((colour) => (colour + 1) % colours);
}

/**
 * Nests the order in itself (n → n² elements): each element is replaced by the whole order, with every colour moved on
 * in the palette by the element's own index. With two colours, the second is replaced by the order with colours
 * exchanged.
 */
export function nestedOrder(order: Order, colours: number): Order {
  return order.flatMap((element) => order.map((colour) => (colour + element) % colours));
}
