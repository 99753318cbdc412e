import { leastRotation } from '../../order/necklace.js';
import { type Order, smallestPeriod } from '../../order/order.js';
import type { Candidate } from './candidate.js';
import type { Family } from './family.js';
import { profilesWritten, readProfiles } from './profile-search.js';

/** Palette index 0 is written as this letter; larger ones as the letters after it. */
const FIRST = 'A'.charCodeAt(0);

/**
 * Writes a candidate as one line: number of the family, the two orders, the two starts. In an evolved search candidates
 * have no fixed numbers: this line is sent to the workers, and tells whether a candidate was tried before.
 */
export function genomeOf({ family, warp, weft, start }: Candidate, families: readonly Family[]): string {
  return [familyWritten(family, families), letters(warp), letters(weft), ...start].join(' ');
}

/** The number of a family; where its block orders are searched, with these: `0/0.0.1/`. */
export function familyWritten(family: Family, families: readonly Family[]): string {
  const { searched } = family;
  if (searched === undefined) return String(families.indexOf(family));
  return `${families.indexOf(searched.base)}/${profilesWritten(searched.profiles)}`;
}

/** Reads a line that `genomeOf` wrote. */
export function candidateOf(line: string, families: readonly Family[]): Candidate {
  const [family, warp, weft, a, b] = line.split(' ');
  return {
    family: readFamily(family!, families),
    warp: order(warp!),
    weft: order(weft!),
    start: [Number(a), Number(b)],
  };
}

function readFamily(text: string, families: readonly Family[]): Family {
  const slash = text.indexOf('/');
  if (slash < 0) return families[Number(text)]!;
  return families[Number(text.slice(0, slash))]!.search!.family(readProfiles(text.slice(slash + 1)))!;
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
