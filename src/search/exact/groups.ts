import { smallestPeriod } from '../../order/order.js';

/** What an order must satisfy for an operation: elements of each group alike, but for those that `flips` marks. */
export type Part = readonly { readonly mask: number; readonly flips: number }[];

/** Elements of the warp, of the weft and the tabby, joined as like or unlike: union and find with parity. */
export class Groups {
  private readonly n: number;
  private readonly m: number;
  private readonly parent: Int32Array;
  private readonly flip: Uint8Array;
  /** 1 where a group holds elements of the warp, 2 of the weft. */
  private readonly holds: Uint8Array;
  /** How many groups the warp's elements, and the weft's, still form. */
  private warpGroups = 0;
  private weftGroups = 0;
  private root = 0;
  private parity = 0;

  constructor(n: number, m: number) {
    this.n = n;
    this.m = m;
    this.parent = new Int32Array(n + m + 1);
    this.flip = new Uint8Array(n + m + 1);
    this.holds = new Uint8Array(n + m + 1);
  }

  /** Every element by itself again. */
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

  /** Joins two elements; false where that contradicts what is known, or leaves only orders of a shorter repeat. */
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
    // All in one group the order is settled but for an exchange; it must not repeat within itself.
    if ((both & 1) === 1 && --this.warpGroups === 1 && this.repeats(0, this.n)) return false;
    if ((both & 2) === 2 && --this.weftGroups === 1 && this.repeats(this.n, this.m)) return false;
    return true;
  }

  /** Whether some order of the warp, and some of the weft, that repeats no shorter one is left. */
  allowsOrders(): boolean {
    return !this.repeats(0, this.n) && !this.repeats(this.n, this.m);
  }

  /** The groups of a stretch of elements, as masks. */
  part(from: number, count: number): Part {
    const byRoot = new Map<number, { mask: number; flips: number }>();
    for (let e = 0; e < count; e++) {
      this.find(from + e);
      const group = byRoot.get(this.root) ?? { mask: 0, flips: 0 };
      group.mask |= 1 << e;
      group.flips |= this.parity << e;
      byRoot.set(this.root, group);
    }
    // Only likeness within a group counts: the first element's own flip says nothing.
    return [...byRoot.values()].map(({ mask, flips }) => {
      const first = mask & -mask;
      return { mask, flips: (flips & first) !== 0 ? flips ^ mask : flips };
    });
  }

  /** Whether every order that the groups allow repeats within itself. */
  private repeats(from: number, count: number): boolean {
    const place = Array.from({ length: count }, (_, e) => {
      this.find(from + e);
      return 2 * this.root + this.parity;
    });
    return smallestPeriod(place) < count;
  }

  /** Finds an element's group and whether it is unlike its root; hangs what it passes nearer to the root. */
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
