import fc from 'fast-check';
import { type Drawdown, fromCells } from '../src/cloth/drawdown.js';

/** Interlacements of up to 8 ends and picks with few kinds of each: rows of 1 (warp up) and 0, first pick first. */
export const lifts = fc
  .record({
    threading: fc.array(fc.nat(3), { minLength: 1, maxLength: 8 }),
    treadling: fc.array(fc.nat(3), { minLength: 1, maxLength: 8 }),
    tie: fc.array(fc.boolean(), { minLength: 16, maxLength: 16 }),
  })
  .map(({ threading, treadling, tie }) =>
    treadling.map((treadle) => threading.map((shaft) => (tie[treadle * 4 + shaft]! ? 1 : 0))),
  );

export const woven = (cells: readonly (readonly number[])[]): Drawdown =>
  fromCells(cells[0]!.length, cells.length, (j, i) => cells[j]![i] === 1);
