import { scattered } from '../symmetry/hash.js';
import type { ToneRows } from './tone-rows.js';

/** Powers of an odd number modulo 2^32, and of its inverse. */
class Powers {
  private readonly base: number;
  private readonly inverse: number;
  private up = Int32Array.of(1);
  private down = Int32Array.of(1);

  constructor(base: number) {
    this.base = base;
    // By Newton's method, which doubles the bits that are right with every step, of five in an odd number itself.
    let inverse = base;
    for (let step = 0; step < 4; step++) inverse = Math.imul(inverse, 2 - Math.imul(base, inverse));
    this.inverse = inverse;
  }

  /** The power by a whole number, which may be negative. */
  of(exponent: number): number {
    if (exponent < 0) {
      if (-exponent >= this.down.length) this.down = powers(this.inverse, -2 * exponent);
      return this.down[-exponent]!;
    }
    if (exponent >= this.up.length) this.up = powers(this.base, 2 * exponent);
    return this.up[exponent]!;
  }
}

function powers(base: number, count: number) {
  const list = new Int32Array(count).fill(1);
  for (let n = 1; n < count; n++) list[n] = Math.imul(list[n - 1]!, base);
  return list;
}

/**
 * A sum modulo 2^32 over the runs of an area, which can be shifted: of each run a number for its tone and length, times a
 * power by its column and one by its row. So a shift of the area is a multiplication by two powers. Two shapes of one
 * cloth share two such sums by accident with odds below one in 10^12.
 */
class ShiftSum {
  readonly across: Powers;
  readonly along: Powers;

  constructor(across: number, along: number) {
    this.across = new Powers(across);
    this.along = new Powers(along);
  }

  /** A sum after a shift by so many ends and picks. */
  shifted(sum: number, ends: number, picks: number): number {
    return Math.imul(Math.imul(sum, this.across.of(ends)), this.along.of(picks));
  }
}

export const oneShift = new ShiftSum(0x9e3779b1, 0xc2b2ae35);
export const otherShift = new ShiftSum(0x85ebca6b, 0x27d4eb2f);

/** Writes what each run adds to the one sum and to the other, as if it were in row 0. */
export function addUp({ kinds, from, fromLight, first, length }: ToneRows, sums: Int32Array): void {
  for (let kind = 0; kind < kinds; kind++) {
    for (let run = from[kind]!; run < from[kind + 1]!; run++) {
      const tone = run < fromLight[kind]! ? 0 : 0x27d4eb2f;
      const sign = scattered(Math.imul(length[run]!, 0x239b961b) ^ tone);
      sums[2 * run] = Math.imul(sign, oneShift.across.of(first[run]!));
      sums[2 * run + 1] = Math.imul(sign ^ 0x5bd1e995, otherShift.across.of(first[run]!));
    }
  }
}
