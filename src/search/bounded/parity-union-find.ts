import { smallestPeriod } from '../../order/order.js';

/**
 * A demand on one order. `mask` has a bit for each element of a group: these elements must have the same colour once
 * the elements marked in `flips` are exchanged.
 */
export type SameElements = readonly { readonly mask: number; readonly flips: number }[];

/**
 * Union-find with parity over the elements of the warp order, the weft order and the tabby: which elements must have
 * the same colour, and which opposite colours. See SYMMETRY.md.
 */
export class ParityUnionFind {
  private readonly n: number;
  private readonly m: number;
  private readonly parent: Int32Array;
  private readonly flip: Uint8Array;
  /** At the root of a group: bit 1 is set if it holds an element of the warp, bit 2 if it holds one of the weft. */
  private readonly holds: Uint8Array;
  /** How many groups the elements of the warp, and of the weft, still form. */
  private warpGroups = 0;
  private weftGroups = 0;
  private root = 0;
  private parity = 0;
  /** Room for the group of each element of the warp, and of the weft. */
  private readonly warpPlace: Int32Array;
  private readonly weftPlace: Int32Array;

  constructor(n: number, m: number) {
    this.n = n;
    this.m = m;
    this.parent = new Int32Array(n + m + 1);
    this.flip = new Uint8Array(n + m + 1);
    this.holds = new Uint8Array(n + m + 1);
    this.warpPlace = new Int32Array(n);
    this.weftPlace = new Int32Array(m);
  }

  /** Puts every element back in a group of its own. */
  reset(): void {
    const { n, m, parent, holds } = this;
    for (let k = 0; k < parent.length; k++) {
      parent[k] = k;
      holds[k] = k < n ? 1 : k < n + m ? 2 : 0;
    }
    this.flip.fill(0);
    this.warpGroups = n;
    this.weftGroups = m;
  }

  /**
   * Demands that two elements have the same colour (`unlike` 0) or opposite colours (1). False if earlier demands
   * contradict this, or if an order can now only repeat a shorter one.
   */
  join(a: number, b: number, unlike: number): boolean {
    this.find(a);
    const ra = this.root;
    const fa = this.parity;
    this.find(b);
    const rb = this.root;
    const flip = fa ^ this.parity ^ unlike;
    if (ra === rb) return flip === 0;
    this.parent[rb] = ra;
    this.flip[rb] = flip;
    const both = this.holds[ra]! & this.holds[rb]!;
    this.holds[ra] = this.holds[ra]! | this.holds[rb]!;
    // With all elements in one group the order is known but for an exchange of colours; it must not repeat a shorter
    // one.
    if ((both & 1) === 1 && --this.warpGroups === 1 && this.repeats(0, this.n)) return false;
    if ((both & 2) === 2 && --this.weftGroups === 1 && this.repeats(this.n, this.m)) return false;
    return true;
  }

  /** Whether the demands allow a warp order and a weft order that do not repeat a shorter one. */
  allowsOrders(): boolean {
    return !this.repeats(0, this.n) && !this.repeats(this.n, this.m);
  }

  /** The demand on the `count` elements from `from` on, as bit masks. */
  part(from: number, count: number): SameElements {
    const byRoot = new Map<number, { mask: number; flips: number }>();
    for (let e = 0; e < count; e++) {
      this.find(from + e);
      const group = byRoot.get(this.root) ?? { mask: 0, flips: 0 };
      group.mask |= 1 << e;
      group.flips |= this.parity << e;
      byRoot.set(this.root, group);
    }
    // Only differences within a group matter, so each group is written with its first element unflipped.
    return [...byRoot.values()].map(({ mask, flips }) => {
      const first = mask & -mask;
      return { mask, flips: (flips & first) !== 0 ? flips ^ mask : flips };
    });
  }

  /** Whether every order that satisfies the demands repeats a shorter one. */
  private repeats(from: number, count: number): boolean {
    const place = from === 0 ? this.warpPlace : this.weftPlace;
    for (let e = 0; e < count; e++) {
      this.find(from + e);
      place[e] = 2 * this.root + this.parity;
    }
    return smallestPeriod(place) < count;
  }

  /**
   * Sets `root` to the root of an element's group and `parity` to 1 if the two are opposite. Halves the path it walks.
   */
  private find(element: number): void {
    const { parent, flip } = this;
    let at = element;
    let parity = 0;
    for (let up = parent[at]!; up !== at; up = parent[at]!) {
      const above = parent[up]!;
      if (above !== up) {
        flip[at] = flip[at]! ^ flip[up]!;
        parent[at] = above;
      }
      parity ^= flip[at]!;
      at = parent[at]!;
    }
    this.root = at;
    this.parity = parity;
  }
}
