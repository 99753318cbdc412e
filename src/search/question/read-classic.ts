import type { Yarn } from '../../colour/yarn.js';
import { type Order, parseOrder } from '../../order/order.js';
import { Problem, quote } from '../../problem.js';
import { classicNamed } from '../../score/likeness/classic-named.js';
import { findStructure, type Structure } from '../../structure/catalogue/catalogue.js';

/*
 * Weavers call some cloths by the name of their colour order, such as log cabin. An order is written by its letters, so
 * whoever writes such a name, or takes it for a structure, is told what to write.
 */

/** Reads an order. Throws a Problem where it is none, with its letters where it is the name of a classic order. */
export function orderOf(text: string, yarns: readonly Yarn[]): Order {
  return orClassic(text, 'its letters', () => parseOrder(text, yarns));
}

/** Finds a structure. Throws a Problem where there is none, with the letters where it is the name of a classic order. */
export function structureOf(name: string): Structure {
  return orClassic(name, 'a structure, with it among the orders', () => findStructure(name));
}

function orClassic<T>(text: string, expected: string, read: () => T): T {
  try {
    return read();
  } catch (error) {
    const classic = error instanceof Problem ? classicNamed(text) : undefined;
    if (classic === undefined) throw error;
    throw new Problem(`${quote(text)} is a colour order, ${classic}; expected ${expected}`);
  }
}
