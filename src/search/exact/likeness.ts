import { gcd } from '../../order/necklace.js';
import { smallestPeriod } from '../../order/order.js';
import type { Ground, Side } from './ground.js';

/** The point operations that raise symmetry, and last the exchange by a shift. */
const MAPS: readonly ((i: number, j: number) => readonly [number, number])[] = [
  (i, j) => [-i, -j],
  (i, j) => [-i, j],
  (i, j) => [i, -j],
  (i, j) => [-j, i],
  (i, j) => [j, -i],
  (i, j) => [j, i],
  (i, j) => [-j, -i],
  (i, j) => [i, j],
];
const POINT_OPERATIONS = 7;
const UNTURNED = 3;
const SHIFT = 7;

/** What an order must satisfy for an operation: elements of each group alike, but for those that `flips` marks. */
type Part = readonly { readonly mask: number; readonly flips: number }[];

/**
 * A bound of symmetry for pairs of orders. That an operation carries the face to itself says, cell by cell, that one
 * element of the orders is like another (or unlike, with colours exchanged). These likenesses join the elements to a
 * few groups; for nearly every shift they leave only orders that repeat within themselves, which are not among orders
 * that differ. What is left, for each operation, is a list of demands on the warp order with one on the weft order.
 */
export interface SymmetryBound {
  /** Class of each warp order, and of each weft order. */
  readonly warpClass: Uint16Array;
  readonly weftClass: Uint16Array;
  readonly weftClasses: number;
  /** Largest possible S of a warp class with a weft class: `most[warpClass * weftClasses + weftClass]`. */
  readonly most: Float64Array;
}

/** Orders of one length as bits: bit e is 1 where element e is light. */
export interface Words {
  readonly length: number;
  readonly bits: Int32Array;
  /** 1 for a word that is no repetition of a shorter one. */
  readonly primitive: Uint8Array;
}

/** Bounds the symmetry of every pair of words on one ground. */
export function symmetryBound(ground: Ground, warps: Words, wefts: Words, squareCells: boolean): SymmetryBound {
  const demands = demandsOf(ground, squareCells);
  const warp = classesOf(warps, demands.warpParts);
  const weft = classesOf(wefts, demands.weftParts);
  const most = new Float64Array(warp.members.length * weft.members.length);
  warp.members.forEach((warpSet, a) => {
    weft.members.forEach((weftSet, b) => {
      most[a * weft.members.length + b] =
        warpSet === undefined || weftSet === undefined ? 1 : largest(demands, warpSet, weftSet);
    });
  });
  return { warpClass: warp.of, weftClass: weft.of, weftClasses: weft.members.length, most };
}

/** For every operation, which demands on the warp go with which on the weft. */
interface Demands {
  readonly warpParts: readonly Part[];
  readonly weftParts: readonly Part[];
  /** For each operation, pairs of numbers of parts. */
  readonly pairs: readonly (readonly (readonly [number, number])[])[];
  /** Operations that could not be looked into and are taken to hold. */
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

function demandsOf(ground: Ground, squareCells: boolean): Demands {
  const { ends, picks } = ground;
  const warpParts = new Map<string, Part>();
  const weftParts = new Map<string, Part>();
  const warpNumbers = new Map<string, number>();
  const weftNumbers = new Map<string, number>();
  const numberOf = (part: Part, parts: Map<string, Part>, numbers: Map<string, number>): number => {
    const name = part.map(({ mask, flips }) => `${mask}:${flips}`).join();
    let number = numbers.get(name);
    if (number === undefined) {
      number = numbers.size;
      numbers.set(name, number);
      parts.set(name, part);
    }
    return number;
  };
  const square = ends.length === picks.length;
  const open = MAPS.map((_, op) => squareCells && op >= UNTURNED && op < SHIFT && !square && mayBeSquare(ground));
  const pairs = MAPS.map((map, op) => {
    const turned = op >= UNTURNED && op < SHIFT;
    const found = new Map<string, readonly [number, number]>();
    if (turned && !(squareCells && square)) return [];
    for (let y = 0; y < picks.length; y++) {
      for (let x = 0; x < ends.length; x++) {
        for (const unlike of op === SHIFT ? [1] : [0, 1]) {
          const likes = likenesses(ground, map, x, y, unlike as 0 | 1);
          if (likes === undefined) continue;
          const pair = [
            numberOf(likes.warp, warpParts, warpNumbers),
            numberOf(likes.weft, weftParts, weftNumbers),
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
 * Turned operations are allowed only where the smallest repeat is square, so where the two lengths differ the face
 * must recur after their greatest common divisor both ways; hardly any orders do.
 */
function mayBeSquare(ground: Ground): boolean {
  const side = gcd(ground.ends.length, ground.picks.length);
  const stay = MAPS[SHIFT]!;
  return (
    likenesses(ground, stay, side % ground.ends.length, 0, 0) !== undefined &&
    likenesses(ground, stay, 0, side % ground.picks.length, 0) !== undefined
  );
}

/**
 * The groups into which "A(g·x + t) is like (unlike) A(x) for all x" joins the elements; undefined where no pair of
 * orders that are no repetition of shorter ones can satisfy it.
 */
function likenesses(
  ground: Ground,
  map: (i: number, j: number) => readonly [number, number],
  x: number,
  y: number,
  unlike: 0 | 1,
): { warp: Part; weft: Part } | undefined {
  const { cloth, ends, picks } = ground;
  const n = ends.elements;
  const m = picks.elements;
  const groups = new Groups(n, m);
  const P = ends.length;
  const Q = picks.length;
  const node = (side: Side, s: number, from: number): number => from + side.element[s]!;
  for (let j = 0; j < Q; j++) {
    const row = picks.kind[j]! * cloth.endKinds;
    for (let i = 0; i < P; i++) {
      const [gi, gj] = map(i, j);
      const ti = (((gi + x) % P) + P) % P;
      const tj = (((gj + y) % Q) + Q) % Q;
      const here = cloth.up[row + ends.kind[i]!] === 1;
      const there = cloth.up[picks.kind[tj]! * cloth.endKinds + ends.kind[ti]!] === 1;
      const a = here ? node(ends, i, 0) : node(picks, j, n);
      const b = there ? node(ends, ti, 0) : node(picks, tj, n);
      const signs = (here ? ends.sign[i]! : picks.sign[j]!) * (there ? ends.sign[ti]! : picks.sign[tj]!);
      if (!groups.join(a, b, (signs < 0 ? 1 : 0) ^ unlike)) return undefined;
    }
  }
  return { warp: groups.part(0, n), weft: groups.part(n, m) };
}

/** Elements of the warp, of the weft and the tabby, joined as like or unlike: union and find with parity. */
class Groups {
  private readonly parent: Int32Array;
  private readonly flip: Uint8Array;
  private readonly n: number;
  private readonly m: number;
  /** How many separate groups the warp's elements, and the weft's, still form (counted where they begin apart). */
  private warpGroups: number;
  private weftGroups: number;
  private readonly holdsWarp: Uint8Array;
  private readonly holdsWeft: Uint8Array;

  constructor(n: number, m: number) {
    this.n = n;
    this.m = m;
    const size = n + m + 1;
    this.parent = Int32Array.from({ length: size }, (_, k) => k);
    this.flip = new Uint8Array(size);
    this.warpGroups = n;
    this.weftGroups = m;
    this.holdsWarp = Uint8Array.from({ length: size }, (_, k) => (k < n ? 1 : 0));
    this.holdsWeft = Uint8Array.from({ length: size }, (_, k) => (k >= n && k < n + m ? 1 : 0));
  }

  /** Joins two elements; false where that contradicts what is known, or leaves only orders of a shorter repeat. */
  join(a: number, b: number, unlike: number): boolean {
    const [ra, fa] = this.rootOf(a);
    const [rb, fb] = this.rootOf(b);
    if (ra === rb) return (fa ^ fb) === unlike;
    this.parent[rb] = ra;
    this.flip[rb] = fa ^ fb ^ unlike;
    const warps = this.holdsWarp[ra]! & this.holdsWarp[rb]!;
    const wefts = this.holdsWeft[ra]! & this.holdsWeft[rb]!;
    this.holdsWarp[ra] = this.holdsWarp[ra]! | this.holdsWarp[rb]!;
    this.holdsWeft[ra] = this.holdsWeft[ra]! | this.holdsWeft[rb]!;
    // All in one group the order is settled but for an exchange; it must not repeat within itself.
    if (warps === 1 && --this.warpGroups === 1 && this.repeats(0, this.n)) return false;
    if (wefts === 1 && --this.weftGroups === 1 && this.repeats(this.n, this.m)) return false;
    return true;
  }

  private repeats(from: number, count: number): boolean {
    return smallestPeriod(Array.from({ length: count }, (_, e) => this.rootOf(from + e)[1])) < count;
  }

  /** The groups of a stretch of elements, as masks. */
  part(from: number, count: number): Part {
    const byRoot = new Map<number, { mask: number; flips: number }>();
    for (let e = 0; e < count; e++) {
      const [root, flip] = this.rootOf(from + e);
      const group = byRoot.get(root) ?? { mask: 0, flips: 0 };
      group.mask |= 1 << e;
      group.flips |= flip << e;
      byRoot.set(root, group);
    }
    // Only likeness within a group counts: the first element's own flip says nothing.
    return [...byRoot.values()].map(({ mask, flips }) => {
      const first = mask & -mask;
      return { mask, flips: (flips & first) !== 0 ? flips ^ mask : flips };
    });
  }

  private rootOf(element: number): [number, number] {
    let at = element;
    let flip = 0;
    while (this.parent[at] !== at) {
      flip ^= this.flip[at]!;
      at = this.parent[at]!;
    }
    return [at, flip];
  }
}

/** Sorts words by which demands they satisfy; words that repeat within themselves are a class of which nothing is known. */
function classesOf(words: Words, parts: readonly Part[]): { of: Uint16Array; members: (Uint8Array | undefined)[] } {
  const known = new Map<string, number>();
  const members: (Uint8Array | undefined)[] = [];
  const of = new Uint16Array(words.bits.length);
  words.bits.forEach((bits, w) => {
    let name = 'any';
    let set: Uint8Array | undefined;
    if (words.primitive[w] === 1) {
      set = Uint8Array.from(parts, (part) => (satisfies(bits, part) ? 1 : 0));
      name = set.join('');
    }
    let number = known.get(name);
    if (number === undefined) {
      number = members.push(set) - 1;
      known.set(name, number);
    }
    of[w] = number;
  });
  return { of, members };
}

function satisfies(bits: number, part: Part): boolean {
  for (const { mask, flips } of part) {
    const alike = (bits ^ flips) & mask;
    if (alike !== 0 && alike !== mask) return false;
  }
  return true;
}
