import { gcd } from '../../order/necklace.js';
import { type Order, smallestPeriod } from '../../order/order.js';
import { OPERATIONS } from '../../score/model/figures.js';
import { IDENTITY, ISOMETRIES, type Isometry } from '../../score/symmetry/isometry.js';
import type { Ground } from './bound-ground.js';
import { ParityUnionFind, type SameElements } from './parity-union-find.js';

/** The point operations that raise symmetry, and last the exchange by a shift. */
const MAPS: readonly Isometry[] = [...OPERATIONS.map((op) => ISOMETRIES[op]), IDENTITY];
const POINT_OPERATIONS = OPERATIONS.length;
const SHIFT = POINT_OPERATIONS;

/**
 * An upper bound of the symmetry S of every pair of orders, as a table by classes of orders. An operation carries the
 * face to itself only if certain elements have the same colour (opposite colours, where it exchanges them). For nearly
 * every shift only orders that repeat a shorter one satisfy this, and such orders are never listed. The shifts that
 * remain give, for each operation, pairs of demands: one on the warp order, one on the weft order. See SYMMETRY.md.
 */
export interface SymmetryBound {
  /** Class of each warp order, and of each weft order. */
  readonly warpClass: Uint16Array;
  readonly weftClass: Uint16Array;
  readonly weftClasses: number;
  /** Largest possible S of a warp class with a weft class: `most[warpClass * weftClasses + weftClass]`. */
  readonly most: Float64Array;
}

/** The longest order whose elements are bits of one number. */
export const LONGEST_WORD = 24;

/** Orders of one length as bits. */
export interface Words {
  readonly length: number;
  /** Bit e is 1 where element e is of an odd colour: with two colours, where it is light. */
  readonly bits: Int32Array;
  /** Bits of the colours' other binary digits, where there are more than two. */
  readonly others: readonly Int32Array[];
  /** 1 for a word that does not repeat a shorter one. */
  readonly primitive: Uint8Array;
  /** A bit for each colour that a word has. */
  readonly colours: Uint32Array;
}

/** Orders of so many colours as bits. */
export function wordsOf(orders: readonly Order[], colours = 2): Words {
  const digit = (place: number): Int32Array =>
    Int32Array.from(orders, (order) => order.reduce((bits, colour, e) => bits | (((colour >> place) & 1) << e), 0));
  const digits = 32 - Math.clz32(colours - 1);
  return {
    length: orders[0]!.length,
    bits: digit(0),
    others: Array.from({ length: digits - 1 }, (_, place) => digit(place + 1)),
    primitive: Uint8Array.from(orders, (order) => (smallestPeriod(order) === order.length ? 1 : 0)),
    colours: Uint32Array.from(orders, (order) => order.reduce((all, colour) => all | (1 << colour), 0)),
  };
}

/** Whether the symmetry of orders of so many colours can be bounded: with three, a companion is no opposite. */
export function hasSymmetryBound({ ends, picks }: Ground, colours: number): boolean {
  const plain = !ends.slotCompanion.includes(1) && !picks.slotCompanion.includes(1);
  return Math.max(ends.elements, picks.elements) <= LONGEST_WORD && (colours === 2 || plain);
}

/** Bounds the symmetry of every pair of words on one ground. */
export function symmetryBound(ground: Ground, warps: Words, wefts: Words, squareCells: boolean): SymmetryBound {
  const isOfTwo = warps.others.length === 0;
  const demands = demandsOf(ground, squareCells, isOfTwo);
  const warp = classesOf(warps, demands.warpParts);
  const weft = classesOf(wefts, demands.weftParts);
  const most = new Float64Array(warp.members.length * weft.members.length);
  warp.members.forEach((a, row) => {
    weft.members.forEach((b, column) => {
      // Of two of three yarns, operations may exchange colours.
      const isKnown = isOfTwo || hasThree(a.colours | b.colours);
      most[row * weft.members.length + column] =
        a.set === undefined || b.set === undefined || !isKnown ? 1 : largest(demands, a.set, b.set);
    });
  });
  return { warpClass: warp.of, weftClass: weft.of, weftClasses: weft.members.length, most };
}

/** Whether a set of bits has three or more. */
function hasThree(bits: number): boolean {
  const less = bits & (bits - 1);
  return (less & (less - 1)) !== 0;
}

/** The demands of all operations. A pair of orders may satisfy an operation only if it satisfies one of its pairs. */
interface Demands {
  readonly warpParts: readonly SameElements[];
  readonly weftParts: readonly SameElements[];
  /** For each operation: pairs (index in `warpParts`, index in `weftParts`). */
  readonly pairs: readonly (readonly (readonly [number, number])[])[];
  /** For each operation: whether it was not examined and is assumed to hold. */
  readonly open: readonly boolean[];
}

function largest(demands: Demands, warpSet: Uint8Array, weftSet: Uint8Array): number {
  const possible = (op: number): boolean =>
    demands.open[op]! || demands.pairs[op]!.some(([w, f]) => warpSet[w] === 1 && weftSet[f] === 1);
  let operations = 1;
  for (let op = 0; op < POINT_OPERATIONS; op++) if (possible(op)) operations++;
  // Operations that hold form a group of 1, 2, 4 or 8.
  return (Math.floor(Math.log2(operations)) + (possible(SHIFT) ? 1 : 0)) / 4;
}

/** `exchanges`: whether operations may exchange colours, as they do where there are two. */
function demandsOf(ground: Ground, squareCells: boolean, exchanges: boolean): Demands {
  const { ends, picks } = ground;
  const warpParts = new Map<string, SameElements>();
  const weftParts = new Map<string, SameElements>();
  const numberOf = (part: SameElements, parts: Map<string, SameElements>, numbers: Map<string, number>): number => {
    const name = part.map(({ mask, flips }) => `${mask}:${flips}`).join();
    let number = numbers.get(name);
    if (number === undefined) {
      number = numbers.size;
      numbers.set(name, number);
      parts.set(name, part);
    }
    return number;
  };
  const warpNumbers = new Map<string, number>();
  const weftNumbers = new Map<string, number>();
  const cells = cellsOf(ground);
  const elements = new ParityUnionFind(ends.elements, picks.elements);
  const square = ends.length === picks.length;
  const open = MAPS.map(({ turned }) => squareCells && turned && !square && mayBeSquare(cells, elements));
  const pairs = MAPS.map((map, op) => {
    const found = new Map<string, readonly [number, number]>();
    if (map.turned && !(squareCells && square)) return [];
    const unlikes = [...(op === SHIFT ? [] : [0]), ...(exchanges ? [1] : [])];
    for (let y = 0; y < picks.length; y++) {
      for (let x = 0; x < ends.length; x++) {
        for (const unlike of unlikes) {
          if (!likenesses(cells, elements, map, x, y, unlike)) continue;
          const pair = [
            numberOf(elements.part(0, ends.elements), warpParts, warpNumbers),
            numberOf(elements.part(ends.elements, picks.elements), weftParts, weftNumbers),
          ] as const;
          found.set(pair.join(), pair);
        }
      }
    }
    return [...found.values()];
  });
  return { warpParts: [...warpParts.values()], weftParts: [...weftParts.values()], pairs, open };
}

/**
 * Whether the smallest repeat can be square though the two lengths differ: then the face repeats after the greatest
 * common divisor of the lengths in both directions. Quarter turns and diagonals need a square repeat; few orders give
 * one.
 */
function mayBeSquare(cells: Cells, elements: ParityUnionFind): boolean {
  const side = gcd(cells.ends, cells.picks);
  const stay = MAPS[SHIFT]!;
  return (
    likenesses(cells, elements, stay, side % cells.ends, 0, 0) &&
    likenesses(cells, elements, stay, 0, side % cells.picks, 0)
  );
}

/** What every cell shows: twice the number of its element (warp, then weft, then tabby), plus 1 for its companion. */
interface Cells {
  readonly ends: number;
  readonly picks: number;
  readonly shows: Uint16Array;
}

function cellsOf({ cloth, ends, picks }: Ground): Cells {
  const shows = new Uint16Array(ends.length * picks.length);
  for (let j = 0, at = 0; j < picks.length; j++) {
    const row = picks.kind[j]! * cloth.endKinds;
    const weft = 2 * (ends.elements + picks.element[j]!) + (picks.sign[j]! < 0 ? 1 : 0);
    for (let i = 0; i < ends.length; i++, at++) {
      shows[at] = cloth.up[row + ends.kind[i]!] === 1 ? 2 * ends.element[i]! + (ends.sign[i]! < 0 ? 1 : 0) : weft;
    }
  }
  return { ends: ends.length, picks: picks.length, shows };
}

/**
 * Collects in `groups` the demands of "A(g·x + t) equals (`unlike` 1: is opposite to) A(x) for all cells x", where g is
 * `map` and t is (`x`, `y`). False if only orders that repeat a shorter one satisfy them, or none do.
 */
function likenesses(
  cells: Cells,
  elements: ParityUnionFind,
  map: Isometry,
  x: number,
  y: number,
  unlike: number,
): boolean {
  const { ends, picks, shows } = cells;
  elements.reset();
  for (let j = 0, at = 0; j < picks; j++) {
    let ti = map.turned ? (map.across * j + x + 2 * ends * picks) % ends : x;
    let tj = map.turned ? y : (map.along * j + y + picks) % picks;
    for (let i = 0; i < ends; i++, at++) {
      const here = shows[at]!;
      const there = shows[tj * ends + ti]!;
      if (!elements.join(here >> 1, there >> 1, ((here ^ there) & 1) ^ unlike)) return false;
      if (map.turned) {
        tj += map.along;
        if (tj === picks) tj = 0;
        else if (tj < 0) tj = picks - 1;
      } else {
        ti += map.across;
        if (ti === ends) ti = 0;
        else if (ti < 0) ti = ends - 1;
      }
    }
  }
  return elements.allowsOrders();
}

/** Words that satisfy the same demands: these, unless nothing is known of them; and the colours that they have. */
interface Class {
  readonly set: Uint8Array | undefined;
  readonly colours: number;
}

/** Sorts words into classes by the demands that they satisfy. Nothing is known of words that repeat a shorter one. */
function classesOf(words: Words, parts: readonly SameElements[]): { of: Uint16Array; members: Class[] } {
  const known = new Map<string, number>();
  const members: Class[] = [];
  const of = new Uint16Array(words.bits.length);
  words.bits.forEach((_, w) => {
    const set =
      words.primitive[w] === 1 ? Uint8Array.from(parts, (part) => (satisfies(words, w, part) ? 1 : 0)) : undefined;
    const colours = words.others.length > 0 ? words.colours[w]! : 0;
    const name = `${colours} ${set?.join('')}`;
    let number = known.get(name);
    if (number === undefined) {
      number = members.push({ set, colours }) - 1;
      known.set(name, number);
    }
    of[w] = number;
  });
  return { of, members };
}

function satisfies({ bits, others }: Words, word: number, part: SameElements): boolean {
  for (const { mask, flips } of part) {
    const alike = (bits[word]! ^ flips) & mask;
    if (alike !== 0 && alike !== mask) return false;
    for (const digit of others) {
      const same = digit[word]! & mask;
      if (same !== 0 && same !== mask) return false;
    }
  }
  return true;
}
