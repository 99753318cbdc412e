import { scratch } from '../../cloth/scratch.js';
import { scattered } from '../symmetry/hash.js';
import type { LocalLight } from './local-light.js';
import { tonesOf } from './tones.js';

/** A cell is dark where its blurred value is below the first, light where it is above the second. */
const DARK = 0.4;
const LIGHT = 0.6;

/** Counts of the areas of a face. */
export interface Shapes {
  /** Closed dark shapes and closed light ones that differ by more than a shift. */
  readonly closed: number;
  /** Areas that run on from repeat to repeat: grounds, nets, stripes. */
  readonly endless: number;
}

/**
 * Counts the shapes of a repeat that has no edge: connected areas of dark places (below 0.4) and of light ones (above
 * 0.6); cells are connected where they share a side. Few (to four) are easily learnt, five and six lively, above eight
 * busy; none closed is stripes or a net (common practice).
 *
 * @param of values as they are gathered from two metres
 */
export function shapesOf(of: LocalLight): Shapes {
  const { words, dark, light } = tonesOf(of, DARK, LIGHT);
  const runs = new Runs(of.ends, of.picks, words);
  runs.addTone(dark);
  runs.addTone(light);
  return runs.shapes();
}

const rooms = Array.from({ length: 14 }, () => scratch(Int32Array));

/**
 * The runs of one tone along the rows of a face, joined to areas where they touch. Each run knows where it lies from its
 * parent, another run of its area, and so from the first run of the area. Where two ways to a run lead to different
 * places, the area has come round to itself in the next repeat: it is endless.
 */
class Runs {
  private readonly ends: number;
  private readonly picks: number;
  /** Words of 32 cells to a row. */
  private readonly words: number;
  private count = 0;
  /** How many runs are dark; light ones follow. */
  private darkRuns = 0;
  /** Of each row, its first run of the tone in hand; and after the last row, the one after its last. */
  private readonly firstIn: Int32Array;
  /** Of each run: column of its first cell, length. It may go on over the edge of the repeat. */
  private readonly first: Int32Array;
  private readonly length: Int32Array;
  /** Of each run its parent, an older one, and where it begins from there. The first of an area is its own parent. */
  private readonly parent: Int32Array;
  private readonly x: Int32Array;
  private readonly y: Int32Array;
  /** Of the first run of each area, whether it is endless. */
  private readonly endless: Int32Array;
  /** Of each run, the number of its area. */
  private readonly area: Int32Array;
  /** Of each area: its rectangle from its first run, its two sums, whether it is endless. */
  private readonly left: Int32Array;
  private readonly top: Int32Array;
  private readonly right: Int32Array;
  private readonly one: Int32Array;
  private readonly other: Int32Array;
  private readonly isEndless: Int32Array;

  constructor(ends: number, picks: number, words: number) {
    [this.ends, this.picks, this.words] = [ends, picks, words];
    const room = (at: number): Int32Array => rooms[at]!(ends * picks);
    this.firstIn = rooms[0]!(picks + 1);
    [this.first, this.length, this.parent, this.x] = [room(1), room(2), room(3), room(4)];
    [this.y, this.endless, this.area] = [room(5), room(6), room(7)];
    [this.left, this.top, this.right] = [room(8), room(9), room(10)];
    [this.one, this.other, this.isEndless] = [room(11), room(12), room(13)];
  }

  /** Adds all runs of a tone, given by a bit for each cell: first the dark ones, then the light ones. */
  addTone(cells: Int32Array): void {
    const { picks, words, firstIn } = this;
    this.darkRuns = this.count;
    for (let j = 0, row = 0; j < picks; j++, row += words) {
      firstIn[j] = this.count;
      this.addRow(cells, row);
      firstIn[j + 1] = this.count;
      if (j > 0) this.joinRows(cells, j, j - 1);
    }
    this.joinRows(cells, 0, picks - 1);
  }

  /** Finds the runs of the row that begins with the word `row`. */
  private addRow(cells: Int32Array, row: number): void {
    const { ends, words, length } = this;
    const from = this.count;
    let before = cells[row + words - 1]! >>> ((ends - 1) & 31);
    /** Where the last run ends that comes over the edge of the repeat. */
    let over = 0;
    for (let w = 0; w < words; w++) {
      const here = cells[row + w]!;
      const last = 32 * w + 32 >= ends ? (ends - 1) & 31 : 31;
      for (let left = (here ^ ((here << 1) | before)) & (-1 >>> (31 - last)); left !== 0; left &= left - 1) {
        const bit = 31 - Math.clz32(left & -left);
        const i = 32 * w + bit;
        if ((here >>> bit) & 1) this.add(i);
        else if (this.count > from) length[this.count - 1] = i - this.first[this.count - 1]!;
        else over = i;
      }
      before = here >>> 31;
    }
    const last = this.count - 1;
    if (last < from) {
      // No run begins in the row: it is of one tone all round.
      if ((cells[row]! & 1) === 0) return;
      this.add(0);
      length[from] = ends;
      this.endless[from] = 1;
    } else if (length[last] === 0) length[last] = ends - this.first[last]! + over;
  }

  private add(first: number): void {
    const run = this.count++;
    this.first[run] = first;
    this.parent[run] = run;
    this.length[run] = this.x[run] = this.y[run] = this.endless[run] = 0;
  }

  /** Joins the runs of a row to those that they touch in the row above, once for each stretch along which they touch. */
  private joinRows(cells: Int32Array, j: number, above: number): void {
    const { ends, words, firstIn } = this;
    const [row, rowAbove] = [j * words, above * words];
    const [fromA, toA, fromB, toB] = [firstIn[j]!, firstIn[j + 1]!, firstIn[above]!, firstIn[above + 1]!];
    if (fromA === toA || fromB === toB) return;
    let before = (cells[row + words - 1]! & cells[rowAbove + words - 1]!) >>> ((ends - 1) & 31);
    let began = false;
    for (let w = 0, a = fromA, b = fromB; w < words; w++) {
      const here = cells[row + w]! & cells[rowAbove + w]!;
      for (let left = here & ~((here << 1) | before); left !== 0; left &= left - 1) {
        const i = 32 * w + 31 - Math.clz32(left & -left);
        while (a < toA && this.first[a]! <= i) a++;
        while (b < toB && this.first[b]! <= i) b++;
        this.touch(a === fromA ? toA - 1 : a - 1, b === fromB ? toB - 1 : b - 1, i);
        began = true;
      }
      before = here >>> 31;
    }
    if (!began && (cells[row]! & cells[rowAbove]! & 1) === 1) this.touch(fromA, fromB, 0);
  }

  /** Joins two runs that touch at column `i`, the second in the row above the first. */
  private touch(a: number, b: number, i: number): void {
    const { ends, first, parent, x, y } = this;
    const inA = i - first[a]! + (i < first[a]! ? ends : 0);
    const inB = i - first[b]! + (i < first[b]! ? ends : 0);
    // Where the face has a single row, a run lies above itself.
    if (a <= b || parent[a] !== a || this.endless[a] === 1) {
      this.join(a, b, inA - inB);
      return;
    }
    // Most runs touch one above them before any other: they are of its area, whatever that will be.
    parent[a] = parent[b]!;
    x[a] = x[b]! + inB - inA;
    y[a] = y[b]! + 1;
  }

  /** Joins two runs, of which the second begins `across` cells after the first, one row above it. */
  private join(a: number, b: number, across: number): void {
    const { parent, x, y, endless } = this;
    const one = this.firstOf(a);
    const other = this.firstOf(b);
    // Where the first run of the second's area begins from that of the first's.
    const fromX = x[a]! + across - x[b]!;
    const fromY = y[a]! - 1 - y[b]!;
    if (one === other) {
      if (fromX !== 0 || fromY !== 0) endless[one] = 1;
      return;
    }
    // The older of the two stays first, so that the ways to it stay short.
    const kept = Math.min(one, other);
    const joined = Math.max(one, other);
    const sign = kept === one ? 1 : -1;
    parent[joined] = kept;
    x[joined] = sign * fromX;
    y[joined] = sign * fromY;
    endless[kept] = endless[kept]! | endless[joined]!;
  }

  /** The first run of a run's area, which becomes its parent. */
  private firstOf(run: number): number {
    const { parent, x, y } = this;
    for (let of = parent[run]!; parent[of] !== of; of = parent[run]!) {
      x[run] = x[run]! + x[of]!;
      y[run] = y[run]! + y[of]!;
      parent[run] = parent[of]!;
    }
    return parent[run]!;
  }

  /**
   * Counts the areas. A closed one has a name that does not change when it is shifted: its tone, its width, and two sums
   * over the places and lengths of its runs in the rectangle around it. Of its 64 bits 52 are kept, so two of a cloth's
   * areas share one by accident with odds below one in 10^15.
   */
  shapes(): Shapes {
    const { count, darkRuns, x, y, length, endless, area, left, top, right, one, other, isEndless } = this;
    let areas = 0;
    for (let run = 0; run < count; run++) {
      const first = this.firstOf(run);
      if (first === run) {
        left[areas] = top[areas] = right[areas] = one[areas] = 0;
        other[areas] = run < darkRuns ? 0 : 0x85ebca6b;
        isEndless[areas] = endless[run]!;
        area[run] = areas++;
      }
      const of = area[first]!;
      area[run] = of;
      if (x[run]! < left[of]!) left[of] = x[run]!;
      if (y[run]! < top[of]!) top[of] = y[run]!;
      if (x[run]! + length[run]! > right[of]!) right[of] = x[run]! + length[run]!;
    }
    for (let run = 0; run < count; run++) {
      const of = area[run]!;
      if (isEndless[of] === 1) continue;
      const place = (y[run]! - top[of]!) * (right[of]! - left[of]!) + x[run]! - left[of]!;
      const sign = scattered(Math.imul(place, 0x9e3779b1) ^ Math.imul(length[run]!, 0x239b961b));
      one[of] = one[of]! + sign;
      other[of] = other[of]! + Math.imul(sign, sign ^ (sign >>> 15));
    }
    const known = new Set<number>();
    let endlessAreas = 0;
    for (let of = 0; of < areas; of++) {
      if (isEndless[of] === 1) endlessAreas++;
      else {
        const width = scattered(right[of]! - left[of]!);
        known.add(((one[of]! ^ width) >>> 0) * 2 ** 20 + ((other[of]! + width) >>> 12));
      }
    }
    return { closed: known.size, endless: endlessAreas };
  }
}
