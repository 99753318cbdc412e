import { roomy } from '../../cloth/scratch.js';
import { addUp, oneShift, otherShift } from './shift-sums.js';
import { ToneRows } from './tone-rows.js';
import type { Tones } from './tones.js';

/** From so many times enough areas in half of the rows on it is worth counting whether they are enough. */
const CROWDED = 6;

/** Counts of the areas of a face. */
export interface Shapes {
  /** Closed dark shapes and closed light ones that differ by more than a shift. */
  readonly closed: number;
  /** Areas that run on from repeat to repeat: grounds, nets, stripes; those met so far where counting stopped early. */
  readonly endless: number;
}

/** Of an area: the older one that it was joined to, or itself; how many repeats right of its place and below it is there. */
const PARENT = 0;
const RIGHT = 1;
const BELOW = 2;
/** Its two sums; the first cell of its uppermost row; the row that it was last seen in, or one of the states below. */
const ONE = 3;
const OTHER = 4;
const X = 5;
const Y = 6;
const STATE = 7;
const FIELDS = 8;

/** States: run on from repeat to repeat; closed, and counted. */
const ENDLESS = -1;
const COUNTED = -2;

/**
 * The dark and the light areas of a face. Runs are followed row by row. A run belongs to the area of the first run above
 * that it touches, or begins one of its own; where it touches more, areas are joined. Of each area is known how many
 * repeats to the right of its place, and below it, it lies as seen from the one that it was joined to. Where two ways to
 * an area lead to different places, it has come round to itself in the next repeat: it is endless.
 *
 * Closed areas are of one shape where their two sums are equal, both shifted so that the first cell of their uppermost
 * row is at place 0. See `ShiftSum`.
 */
export class ToneAreas {
  private ends = 0;
  private picks = 0;
  private count = 0;
  private readonly rows = new ToneRows();
  /** The areas, one record of `FIELDS` numbers after another. */
  private area = new Int32Array(0);
  /** What each run of the rows adds to the two sums in row 0. */
  private sums = new Int32Array(0);
  /** The area of each run of the first row, of the row in hand, and of the one above it. */
  private firstRow = new Int32Array(0);
  private lower = new Int32Array(0);
  private upper = new Int32Array(0);
  /** How many closed shapes there are, and an area of each. */
  private closed = 0;
  private shapes = new Int32Array(0);
  /** Where the area that `firstOf` was asked for lies in the one found. */
  private right = 0;
  private below = 0;

  /** Counts the areas of a face of so many ends and picks, until there are enough closed ones. */
  counted(tones: Tones, ends: number, picks: number, enough: number): Shapes {
    this.ends = ends;
    this.picks = picks;
    this.count = this.closed = 0;
    this.area = roomy(this.area, FIELDS * ends * picks);
    this.shapes = roomy(this.shapes, ends * picks);
    this.sums = roomy(this.sums, 2 * ends * picks);
    this.firstRow = roomy(this.firstRow, ends);
    this.lower = roomy(this.lower, ends);
    this.upper = roomy(this.upper, ends);
    this.rows.turnTo(tones, ends, picks);
    addUp(this.rows, this.sums);
    this.begin();
    const half = picks >> 1;
    for (let j = 1; j < picks && this.closed < enough; j++) {
      this.addRow(j);
      if (j === half && this.count >= CROWDED * enough) this.countClosed(j);
    }
    if (this.closed < enough) {
      this.comeRound();
      this.countClosed(picks);
    }
    let endless = 0;
    for (let one = 0, at = 0; one < this.count; one++, at += FIELDS) {
      if (this.area[at] === one && this.area[at + STATE] === ENDLESS) endless++;
    }
    return { closed: Math.min(enough, this.closed), endless };
  }

  /** Begins with the first row. */
  private begin(): void {
    const { rows, firstRow } = this;
    const from = rows.from[rows.kind[0]!]!;
    for (let run = from; run < rows.from[rows.kind[0]! + 1]!; run++) firstRow[run - from] = this.add(run, 0);
  }

  /** Adds an area that begins with a run in row `j`. */
  private add(run: number, j: number): number {
    const { rows, area } = this;
    const at = this.count * FIELDS;
    area[at + PARENT] = this.count;
    area[at + RIGHT] = area[at + BELOW] = 0;
    area[at + ONE] = Math.imul(this.sums[2 * run]!, oneShift.along.of(j));
    area[at + OTHER] = Math.imul(this.sums[2 * run + 1]!, otherShift.along.of(j));
    area[at + X] = rows.first[run]!;
    area[at + Y] = j;
    area[at + STATE] = rows.length[run]! === this.ends ? ENDLESS : 0;
    return this.count++;
  }

  /** Adds the runs of a row to the areas above it. */
  private addRow(j: number): void {
    const { rows, area, sums } = this;
    const upper = j === 1 ? this.firstRow : this.lower;
    const lower = this.upper;
    this.upper = this.lower;
    this.lower = lower;
    const pair = rows.pair(rows.kind[j - 1]!, rows.kind[j]!);
    const { touched, further } = rows;
    const one = oneShift.along.of(j);
    const other = otherShift.along.of(j);
    const at = rows.at[pair]!;
    const count = rows.at[pair + 1]! - at;
    for (let k = 0, run = rows.from[rows.kind[j]!]!; k < count; k++, run++) {
      const above = touched[at + k]!;
      if (above < 0) {
        lower[k] = this.add(run, j);
        continue;
      }
      lower[k] = upper[above]!;
      const record = upper[above]! * FIELDS;
      area[record + ONE] = area[record + ONE]! + Math.imul(sums[2 * run]!, one);
      area[record + OTHER] = area[record + OTHER]! + Math.imul(sums[2 * run + 1]!, other);
    }
    for (let k = rows.furtherAt[pair]!; k < rows.furtherAt[pair + 1]!; k += 3) {
      this.join(lower[further[k]!]!, upper[further[k + 1]!]!, further[k + 2]!, 0);
    }
  }

  /** Joins the first row to the last. */
  private comeRound(): void {
    const { rows, picks, firstRow } = this;
    const upper = picks === 1 ? this.firstRow : this.lower;
    const pair = rows.pair(rows.kind[picks - 1]!, rows.kind[0]!);
    for (let run = 0, at = rows.at[pair]!; at < rows.at[pair + 1]!; run++, at++) {
      if (rows.touched[at]! >= 0) this.join(firstRow[run]!, upper[rows.touched[at]!]!, 0, 1);
    }
    for (let k = rows.furtherAt[pair]!; k < rows.furtherAt[pair + 1]!; k += 3) {
      this.join(firstRow[rows.further[k]!]!, upper[rows.further[k + 1]!]!, rows.further[k + 2]!, 1);
    }
  }

  /** Joins an area to another, by whose places its own are so many repeats farther to the right and below. */
  private join(one: number, other: number, across: number, along: number): void {
    const { area } = this;
    const a = this.firstOf(one);
    const ownRight = this.right;
    const ownBelow = this.below;
    const b = this.firstOf(other);
    const right = across + this.right - ownRight;
    const below = along + this.below - ownBelow;
    if (a === b) {
      if (right !== 0 || below !== 0) area[a * FIELDS + STATE] = ENDLESS;
      return;
    }
    // The older of the two stays first, so that the ways to it stay short.
    const sign = b < a ? 1 : -1;
    const joined = Math.max(a, b) * FIELDS;
    area[joined + PARENT] = Math.min(a, b);
    area[joined + RIGHT] = sign * right;
    area[joined + BELOW] = sign * below;
  }

  /** The area to which an area has been joined at last; where its places are there is noted in `right` and `below`. */
  private firstOf(one: number): number {
    const { area } = this;
    this.right = this.below = 0;
    let at = one;
    for (let of = area[at * FIELDS]!; of !== at; of = area[at * FIELDS]!) {
      this.right += area[at * FIELDS + RIGHT]!;
      this.below += area[at * FIELDS + BELOW]!;
      at = of;
    }
    return at;
  }

  /** Adds to each area all that has been joined to it. */
  private bringTogether(): void {
    const { area, count, ends, picks } = this;
    for (let at = 0; at < count * FIELDS; at += FIELDS) {
      const parent = area[at]! * FIELDS;
      if (parent === at) continue;
      // The parent is older, and so has come to its place already.
      const to = area[parent]! * FIELDS;
      area[at] = area[parent]!;
      area[at + RIGHT] = area[at + RIGHT]! + area[parent + RIGHT]!;
      area[at + BELOW] = area[at + BELOW]! + area[parent + BELOW]!;
      const right = area[at + RIGHT]! * ends;
      const below = area[at + BELOW]! * picks;
      area[to + ONE] = area[to + ONE]! + oneShift.shifted(area[at + ONE]!, right, below);
      area[to + OTHER] = area[to + OTHER]! + otherShift.shifted(area[at + OTHER]!, right, below);
      area[at + ONE] = area[at + OTHER] = 0;
      if (area[at + STATE] === ENDLESS) area[to + STATE] = ENDLESS;
      const x = area[at + X]! + right;
      const y = area[at + Y]! + below;
      if (y < area[to + Y]! || (y === area[to + Y]! && x < area[to + X]!)) {
        area[to + X] = x;
        area[to + Y] = y;
      }
    }
  }

  /** Counts the areas that are closed when row `j` is the next: those that neither the row before nor the first has. */
  private countClosed(j: number): void {
    const { area, count, rows, picks, lower, firstRow } = this;
    this.bringTogether();
    if (j < picks) {
      this.see(lower, rows.kind[j]!, j);
      this.see(firstRow, rows.kind[0]!, j);
    }
    for (let one = 0, at = 0; one < count; one++, at += FIELDS) {
      if (area[at] !== one || area[at + STATE]! < 0 || area[at + STATE] === j) continue;
      area[at + STATE] = COUNTED;
      if (this.isNew(at)) this.shapes[this.closed++] = at;
    }
  }

  /** Notes that the areas of a row go on to row `j`. */
  private see(row: Int32Array, kind: number, j: number): void {
    const { area, rows } = this;
    for (let k = 0; k < rows.from[kind + 1]! - rows.from[kind]!; k++) {
      const at = area[row[k]! * FIELDS]! * FIELDS + STATE;
      if (area[at]! >= 0) area[at] = j;
    }
  }

  /** Whether a closed area, of which the record is given, is of a shape not yet counted. */
  private isNew(at: number): boolean {
    const { area, shapes } = this;
    const x = -area[at + X]!;
    const y = -area[at + Y]!;
    area[at + ONE] = oneShift.shifted(area[at + ONE]!, x, y);
    area[at + OTHER] = otherShift.shifted(area[at + OTHER]!, x, y);
    for (let k = 0; k < this.closed; k++) {
      const known = shapes[k]!;
      if (area[known + ONE] === area[at + ONE] && area[known + OTHER] === area[at + OTHER]) return false;
    }
    return true;
  }
}
