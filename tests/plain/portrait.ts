// How unlike two cloths are, square by square: a reader can check it against the definitions by eye.

import type { Draft } from '../../src/draft/draft.js';
import { type Field, figure, line, mean, tone } from './contrast.js';
import { type Cells, symmetry } from './symmetry.js';

/** A cloth as it is seen: its cells, and the value (0–1) of each colour. */
export interface Seen {
  readonly cells: Cells;
  readonly values: readonly number[];
}

/** What the traits are, each from 0 to 1, on a square sett. */
export function traits({ cells, values }: Seen): number[] {
  const v = cells.map((row) => row.map((colour) => values[colour]!));
  const dark = 1 - mean(v);
  const runs = (rows: Cells): number => {
    const lengths = rows.map((row) => {
      const changes = row.filter((colour, i) => colour !== row[(i + row.length - 1) % row.length]).length;
      return { cells: row.length, runs: Math.max(1, changes) };
    });
    const sum = (of: (each: (typeof lengths)[number]) => number): number =>
      lengths.reduce((s, each) => s + of(each), 0);
    return sum((each) => each.cells) / sum((each) => each.runs);
  };
  const columns = cells[0]!.map((_, i) => cells.map((row) => row[i]!));
  return [
    tone(v, 1),
    line(v, 1),
    figure(v, 1),
    symmetry(cells, true).symmetry,
    Math.min(dark, 1 - dark),
    1 - 1 / runs(cells),
    1 - 1 / runs(columns),
  ];
}

/** 32 by 32 squares, each the mean of three ends and three picks. */
export function picture({ cells, values }: Seen): Field {
  const numbers = (count: number): number[] => Array.from({ length: count }, (_, k) => k);
  return numbers(32).map((y) =>
    numbers(32).map((x) =>
      mean(
        numbers(3).map((j) =>
          numbers(3).map((i) => {
            const row = cells[(3 * y + j) % cells.length]!;
            return values[row[(3 * x + i) % row.length]!]!;
          }),
        ),
      ),
    ),
  );
}

/** Half of the traits' mean difference, half of what the pictures lack in agreement, looked at from either. */
export function unlikeness(a: Seen, b: Seen): number {
  const [ta, tb] = [traits(a), traits(b)];
  const apart = ta.reduce((sum, trait, t) => sum + Math.abs(trait - tb[t]!), 0) / ta.length;
  const [pa, pb] = [picture(a), picture(b)];
  return apart / 2 + (1 - (agreement(pa, pb) + agreement(pb, pa)) / 2) / 2;
}

/** The corner of 16 by 16 squares of one picture, each way up, on every place of the other. */
function agreement(from: Field, on: Field): number {
  const corner = from.slice(0, 16).map((row) => row.slice(0, 16));
  const turns = [
    corner,
    corner.map((row) => row.toReversed()),
    corner.toReversed(),
    corner.toReversed().map((row) => row.toReversed()),
  ];
  let best = 0;
  for (const turned of turns) {
    for (let top = 0; top <= 16; top++) {
      for (let left = 0; left <= 16; left++) {
        const there = on.slice(top, top + 16).map((row) => row.slice(left, left + 16));
        best = Math.max(best, Math.abs(correlation(turned.flat(), there.flat())));
      }
    }
  }
  return best;
}

/** Pearson's correlation; 1 of two even areas, 0 of one with another. */
function correlation(a: readonly number[], b: readonly number[]): number {
  const average = (list: readonly number[]): number => list.reduce((sum, each) => sum + each, 0) / list.length;
  const [ma, mb] = [average(a), average(b)];
  const variance = (list: readonly number[], middle: number): number => average(list.map((x) => (x - middle) ** 2));
  const [va, vb] = [variance(a, ma), variance(b, mb)];
  if (va < 1e-10 || vb < 1e-10) return va < 1e-10 && vb < 1e-10 ? 1 : 0;
  return average(a.map((x, k) => (x - ma) * (b[k]! - mb))) / Math.sqrt(va * vb);
}

/** A draft with its threads renumbered: warp and threading from end `x` on, weft and treadling from pick `y` on. */
export function begunElsewhere(draft: Draft, x: number, y: number): Draft {
  const from = <T>(list: readonly T[], at: number): T[] => list.map((_, k) => list[(k + at) % list.length]!);
  return {
    ...draft,
    threading: from(draft.threading, x),
    warp: from(draft.warp, x),
    treadling: from(draft.treadling, y),
    pickKinds: from(draft.pickKinds, y),
    weft: from(draft.weft, y),
  };
}
