import { leastRotation } from '../../order/necklace.js';
import { type Order, smallestPeriod } from '../../order/order.js';
import type { Candidate } from '../candidate.js';
import type { Family } from '../family.js';

/** Palette index 0 is written as this letter; larger ones as the letters after it. */
const FIRST = 'A'.charCodeAt(0);

/**
 * A candidate written in one line: number of the family, the two orders, the two starts. Spaces beyond listing have no
 * numbers, so this is what goes to the threads, and what tells whether a candidate was tried before.
 */
export function writtenOf({ family, warp, weft, start }: Candidate, families: readonly Family[]): string {
  return [families.indexOf(family), letters(warp), letters(weft), ...start].join(' ');
}

/** The candidate of a line. */
export function candidateOf(line: string, families: readonly Family[]): Candidate {
  const [family, warp, weft, a, b] = line.split(' ');
  return {
    family: families[Number(family)]!,
    warp: order(warp!),
    weft: order(weft!),
    start: [Number(a), Number(b)],
  };
}

/** The word that stands for an order: without a shorter repeat, in the rotation that sorts first. */
export function standing(order: Order): Order {
  return leastRotation(order.slice(0, smallestPeriod(order)));
}

function letters(order: Order): string {
  return String.fromCharCode(...order.map((colour) => FIRST + colour));
}

function order(word: string): Order {
  return Array.from(word, (letter) => letter.charCodeAt(0) - FIRST);
}
