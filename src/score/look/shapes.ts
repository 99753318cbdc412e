import { scratch } from '../../cloth/scratch.js';
import { scattered } from '../symmetry/hash.js';

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
 * @param light values as they are gathered from two metres, cell by cell
 */
export function shapesOf(light: ArrayLike<number>, ends: number): Shapes {
  const cells = light.length;
  const runs = new Runs(cells);
  for (let row = 0; row < cells; row += ends) runs.addRow(light, row, ends);
  for (let row = 0, above = cells - ends; row < cells; above = row, row += ends) runs.joinRows(row, above, ends);
  return runs.shapes();
}

const NEITHER = -1;
const rooms = Array.from({ length: 13 }, () => scratch(Int32Array));

/**
 * The runs of one tone along the rows of a face, joined to areas where they touch. Each run knows where it lies from its
 * parent, another run of its area, and so from the first run of the area. Where two ways to a run lead to different
 * places, the area has come round to itself in the next repeat: it is endless.
 */
class Runs {
  private count = 0;
  /** Of each cell, its run. */
  private readonly runAt: Int32Array;
  /** Of each run: tone (1 dark, 2 light), column of its first cell, length. */
  private readonly tone: Int32Array;
  private readonly first: Int32Array;
  private readonly length: Int32Array;
  /** Of each run its parent, and where it begins from there. The first of an area is its own parent. */
  private readonly parent: Int32Array;
  private readonly x: Int32Array;
  private readonly y: Int32Array;
  /** Of the first run of each area: whether it is endless, its rectangle from that run, and its two sums. */
  private readonly endless: Int32Array;
  private readonly left: Int32Array;
  private readonly top: Int32Array;
  private readonly right: Int32Array;
  private readonly one: Int32Array;
  private readonly other: Int32Array;

  constructor(cells: number) {
    const room = (at: number): Int32Array => rooms[at]!(cells);
    [this.runAt, this.tone, this.first, this.length] = [room(0), room(1), room(2), room(3)];
    [this.parent, this.x, this.y, this.endless] = [room(4), room(5), room(6), room(7)];
    [this.left, this.top, this.right, this.one, this.other] = [room(8), room(9), room(10), room(11), room(12)];
  }

  /** Finds the runs of the row whose first cell is `row`. A run goes on over the edge of the repeat. */
  addRow(light: ArrayLike<number>, row: number, ends: number): void {
    const { runAt, length } = this;
    let tone = toneOf(light[row + ends - 1]!);
    let start = 0;
    while (start < ends && toneOf(light[row + start]!) === tone) start++;
    const whole = start === ends;
    let run = whole ? this.added(tone, 0) : NEITHER;
    if (whole && run !== NEITHER) this.endless[run] = 1;
    for (let k = 0, i = whole ? 0 : start; k < ends; k++, i = i + 1 === ends ? 0 : i + 1) {
      const own = toneOf(light[row + i]!);
      if (own !== tone) {
        tone = own;
        run = this.added(tone, i);
      }
      runAt[row + i] = run;
      if (run !== NEITHER) length[run] = length[run]! + 1;
    }
  }

  private added(tone: 0 | 1 | 2, first: number): number {
    if (tone === 0) return NEITHER;
    const run = this.count++;
    this.tone[run] = tone;
    this.first[run] = first;
    this.parent[run] = run;
    this.length[run] = this.x[run] = this.y[run] = this.endless[run] = 0;
    return run;
  }

  /** Joins the runs of a row to those that they touch in the row above. */
  joinRows(row: number, above: number, ends: number): void {
    const { runAt, tone, first } = this;
    for (let i = 0, lastA = NEITHER, lastB = NEITHER; i < ends; i++) {
      const a = runAt[row + i]!;
      const b = runAt[above + i]!;
      // Once for each stretch along which they touch.
      if (a === lastA && b === lastB) continue;
      lastA = a;
      lastB = b;
      if (a === NEITHER || b === NEITHER || tone[a] !== tone[b]) continue;
      const inA = i - first[a]! + (i < first[a]! ? ends : 0);
      const inB = i - first[b]! + (i < first[b]! ? ends : 0);
      this.join(a, b, inA - inB);
    }
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
    const { count, parent, x, y, length, tone, endless, left, top, right, one, other } = this;
    for (let run = 0; run < count; run++) {
      left[run] = top[run] = right[run] = one[run] = other[run] = 0;
    }
    for (let run = 0; run < count; run++) {
      const area = this.firstOf(run);
      left[area] = Math.min(left[area]!, x[run]!);
      top[area] = Math.min(top[area]!, y[run]!);
      right[area] = Math.max(right[area]!, x[run]! + length[run]!);
    }
    for (let run = 0; run < count; run++) {
      const area = parent[run]!;
      const place = (y[run]! - top[area]!) * (right[area]! - left[area]!) + x[run]! - left[area]!;
      const long = scattered(Math.imul(length[run]!, 0x239b961b));
      one[area] = one[area]! + scattered(Math.imul(place, 0x9e3779b1) ^ long);
      other[area] = other[area]! + scattered(Math.imul(place, 0x85ebca6b) + long);
    }
    const known = new Set<number>();
    let endlessAreas = 0;
    for (let run = 0; run < count; run++) {
      if (parent[run] !== run) continue;
      if (endless[run] === 1) endlessAreas++;
      else {
        const sort = Math.imul(2 * (right[run]! - left[run]!) + tone[run]!, 0x239b961b);
        known.add(((one[run]! ^ scattered(sort)) >>> 0) * 2 ** 20 + ((other[run]! + sort) >>> 12));
      }
    }
    return { closed: known.size, endless: endlessAreas };
  }
}

/** Dark 1, light 2, neither 0. */
const toneOf = (light: number): 0 | 1 | 2 => (light < DARK ? 1 : light > LIGHT ? 2 : 0);
