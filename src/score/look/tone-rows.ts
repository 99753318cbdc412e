import { roomy } from '../../cloth/scratch.js';
import type { Tones } from './tones.js';

/**
 * The rows of dark and of light cells of a face, by kinds: equal rows are of one kind. Most faces have few kinds, so that
 * runs are found once for each kind, and where runs touch once for each pair of kinds that follow one another. Runs are
 * numbered kind by kind, the dark ones of a kind before the light ones. Arrays may be longer than what they hold.
 */
export class ToneRows {
  kinds = 0;
  /** Kind of each row. */
  kind = new Int32Array(0);
  /** First run of each kind, and first light one; and after the last kind, the run after its last. */
  from = new Int32Array(0);
  fromLight = new Int32Array(0);
  /** Of each run: column of its first cell, length. It may go on over the edge of the repeat. */
  first = new Int32Array(0);
  length = new Int32Array(0);
  /** Where each pair begins in what follows; and after the last pair, where it ends. */
  at = new Int32Array(0);
  furtherAt = new Int32Array(0);
  /** For each run of the lower row, the first run of the upper row that it touches within the repeat; or −1. */
  touched = new Int32Array(0);
  /** All that touches besides: lower run, upper run, and how many repeats the lower one is then to the right of its place. */
  further = new Int32Array(0);
  private tones!: Tones;
  private ends = 0;
  private pairs = 0;
  /** The rows of the kinds, a bit for each end in their order, in so many words. */
  private words = 0;
  private dark = new Int32Array(0);
  private light = new Int32Array(0);
  /** Of each kind, where one of its rows begins in the tones, and a number that is equal for equal rows. */
  private place = new Int32Array(0);
  private sign = new Int32Array(0);
  /** The pair of two kinds, or −1. */
  private pairOf = new Int32Array(0);

  /** Turns to other rows. */
  turnTo(tones: Tones, ends: number, picks: number): void {
    this.tones = tones;
    this.ends = ends;
    this.kinds = this.pairs = 0;
    this.words = (ends + 31) >> 5;
    this.dark = roomy(this.dark, this.words * picks);
    this.light = roomy(this.light, this.words * picks);
    this.kind = roomy(this.kind, picks);
    this.place = roomy(this.place, picks);
    this.sign = roomy(this.sign, picks);
    this.fromLight = roomy(this.fromLight, picks);
    this.from = roomy(this.from, picks + 1);
    this.at = roomy(this.at, picks + 1);
    this.furtherAt = roomy(this.furtherAt, picks + 1);
    this.first = roomy(this.first, ends * picks);
    this.length = roomy(this.length, ends * picks);
    this.touched = roomy(this.touched, ends * picks);
    this.further = roomy(this.further, 3 * (ends + 2) * picks);
    this.from[0] = this.at[0] = this.furtherAt[0] = 0;
    for (let j = 0; j < picks; j++) this.kind[j] = this.kindOf(j * tones.groups * tones.words);
    this.pairOf = roomy(this.pairOf, this.kinds ** 2).fill(-1, 0, this.kinds ** 2);
  }

  /** The pair of a kind of row and the one below it. */
  pair(upper: number, lower: number): number {
    const place = upper * this.kinds + lower;
    const known = this.pairOf[place]!;
    if (known >= 0) return known;
    this.pairOf[place] = this.pairs;
    this.addPair(upper, lower);
    return this.pairs++;
  }

  /** The kind of the row that begins at a place of the tones. */
  private kindOf(from: number): number {
    const { kinds } = this;
    const { groups, words, dark, light } = this.tones;
    const to = from + groups * words;
    let sign = 0;
    for (let at = from; at < to; at++) {
      sign = Math.imul(sign ^ dark[at]!, 0x9e3779b1) + 1;
      sign = Math.imul(sign ^ light[at]!, 0x85ebca6b) + 1;
    }
    for (let kind = 0; kind < kinds; kind++) {
      if (this.sign[kind] !== sign) continue;
      const place = this.place[kind]!;
      if (isSame(dark, place, from, to) && isSame(light, place, from, to)) return kind;
    }
    this.place[kinds] = from;
    this.sign[kinds] = sign;
    this.ungroup(dark, from, this.dark);
    this.ungroup(light, from, this.light);
    this.fromLight[kinds] = this.addRuns(this.dark, this.from[kinds]!);
    this.from[kinds + 1] = this.addRuns(this.light, this.fromLight[kinds]!);
    return this.kinds++;
  }

  /** Puts the ends of a new row in their order. */
  private ungroup(given: Int32Array, from: number, to: Int32Array): void {
    const { words } = this;
    const { groups, words: inGroup } = this.tones;
    const row = this.kinds * words;
    if (groups === 1) {
      for (let w = 0; w < words; w++) to[row + w] = given[from + w]!;
      return;
    }
    for (let w = 0; w < words; w++) to[row + w] = 0;
    for (let group = 0, at = from; group < groups; group++) {
      for (let w = 0; w < inGroup; w++, at++) {
        for (let left = given[at]!; left !== 0; left &= left - 1) {
          const i = (32 * w + 31 - Math.clz32(left & -left)) * groups + group;
          const word = row + (i >> 5);
          to[word] = to[word]! | (1 << (i & 31));
        }
      }
    }
  }

  /** Finds the runs of a new row, from the number `from` on; returns the number after the last. */
  private addRuns(cells: Int32Array, from: number): number {
    const { words, ends, first, length } = this;
    const row = this.kinds * words;
    let count = from;
    let before = cells[row + words - 1]! >>> ((ends - 1) & 31);
    /** Where the last run ends that comes over the edge of the repeat. */
    let over = 0;
    for (let w = 0; w < words; w++) {
      const here = cells[row + w]!;
      const last = 32 * w + 32 >= ends ? (ends - 1) & 31 : 31;
      for (let left = (here ^ ((here << 1) | before)) & (-1 >>> (31 - last)); left !== 0; left &= left - 1) {
        const bit = 31 - Math.clz32(left & -left);
        const i = 32 * w + bit;
        if ((here >>> bit) & 1) {
          length[count] = 0;
          first[count++] = i;
        } else if (count > from) length[count - 1] = i - first[count - 1]!;
        else over = i;
      }
      before = here >>> 31;
    }
    if (count > from) {
      if (length[count - 1] === 0) length[count - 1] = ends - first[count - 1]! + over;
    } else if (cells[row]! & 1) {
      // No run begins in the row: it is of one tone all round.
      length[count] = ends;
      first[count++] = 0;
    }
    return count;
  }

  /** Adds a pair of kinds: finds where the runs of the one touch those of the other, once for each stretch. */
  private addPair(upper: number, lower: number): void {
    const { from, fromLight, pairs } = this;
    const at = this.at[pairs]!;
    this.at[pairs + 1] = at + from[lower + 1]! - from[lower]!;
    this.furtherAt[pairs + 1] = this.furtherAt[pairs]!;
    for (let run = at; run < this.at[pairs + 1]!; run++) this.touched[run] = -1;
    this.compare(this.dark, lower, from[lower]!, fromLight[lower]!, upper, from[upper]!, fromLight[upper]!);
    this.compare(this.light, lower, fromLight[lower]!, from[lower + 1]!, upper, fromLight[upper]!, from[upper + 1]!);
  }

  /** The same for one tone, of which the runs in both rows are given. */
  private compare(
    cells: Int32Array,
    lower: number,
    fromA: number,
    toA: number,
    upper: number,
    fromB: number,
    toB: number,
  ): void {
    if (fromA === toA || fromB === toB) return;
    const { words, ends, first, length, from } = this;
    const rowA = lower * words;
    const rowB = upper * words;
    const zeroA = from[lower]!;
    const zeroB = from[upper]!;
    let before = (cells[rowA + words - 1]! & cells[rowB + words - 1]!) >>> ((ends - 1) & 31);
    let began = false;
    for (let w = 0, a = fromA, b = fromB; w < words; w++) {
      const here = cells[rowA + w]! & cells[rowB + w]!;
      for (let left = here & ~((here << 1) | before); left !== 0; left &= left - 1) {
        const i = 32 * w + 31 - Math.clz32(left & -left);
        while (a < toA && first[a]! <= i) a++;
        while (b < toB && first[b]! <= i) b++;
        // Before the first run of a row lies what comes over the edge from the last.
        const overA = a === fromA;
        const overB = b === fromB;
        this.touch((overA ? toA : a) - 1 - zeroA, (overB ? toB : b) - 1 - zeroB, Number(overB) - Number(overA));
        began = true;
      }
      before = here >>> 31;
    }
    if (!began && (cells[rowA]! & cells[rowB]! & 1) === 1) this.touch(fromA - zeroA, fromB - zeroB, 0);
    // A run all round touches what it touches in the next repeat too.
    const above = this.touched[this.at[this.pairs]! + fromA - zeroA]!;
    if (length[fromA] === ends && above >= 0) this.touch(fromA - zeroA, above, 1);
  }

  /** Notes in the last pair that a lower run touches an upper one. */
  private touch(lower: number, upper: number, across: number): void {
    const { pairs } = this;
    const place = this.at[pairs]! + lower;
    if (this.touched[place]! < 0 && across === 0) {
      this.touched[place] = upper;
      return;
    }
    const to = this.furtherAt[pairs + 1]!;
    this.further[to] = lower;
    this.further[to + 1] = upper;
    this.further[to + 2] = across;
    this.furtherAt[pairs + 1] = to + 3;
  }
}

/** Whether numbers from one place up to another are the same as those that begin at a third. */
function isSame(numbers: Int32Array, other: number, from: number, to: number): boolean {
  for (let at = from; at < to; at++) if (numbers[at] !== numbers[other + at - from]) return false;
  return true;
}
