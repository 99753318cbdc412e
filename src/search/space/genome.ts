import { leastRotation } from '../../order/necklace.js';
import { type Order, smallestPeriod } from '../../order/order.js';
import type { Candidate } from './candidate.js';
import type { Family } from './family.js';

/** Palette index 0 is written as this letter; larger ones as the letters after it. */
const FIRST = 'A'.charCodeAt(0);

/**
 * Writes a candidate as one line: number of the family, the two orders, the two starts. In an evolved search candidates
 * have no fixed numbers: this line is sent to the workers, and tells whether a candidate was tried before.
 */
export function genomeOf({ family, warp, weft, start }: Candidate, families: readonly Family[]): string {
  return [families.indexOf(family), letters(warp), letters(weft), ...start].join(' ');
}

/** Reads a line that `writtenOf` wrote. */
export function candidateOf(line: string, families: readonly Family[]): Candidate {
  const [family, warp, weft, a, b] = line.split(' ');
  return {
    family: families[Number(family)]!,
    warp: order(warp!),
    weft: order(weft!),
    start: [Number(a), Number(b)],
  };
}

/** The canonical form of an order: its smallest repeat, in the rotation that sorts first. */
export function canonicalOrder(order: Order): Order {
  return leastRotation(order.slice(0, smallestPeriod(order)));
}

function letters(order: Order): string {
  return String.fromCharCode(...order.map((colour) => FIRST + colour));
}

function order(word: string): Order {
  return Array.from(word, (letter) => letter.charCodeAt(0) - FIRST);
}
