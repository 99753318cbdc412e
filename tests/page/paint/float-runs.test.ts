import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fromCells } from '../../../src/cloth/drawdown.js';
import { floatsOf } from '../../../src/cloth/floats.js';
import { floatsOver, longestStandOut } from '../../../src/page/paint/float-runs.js';
import { SETT } from '../../gallery/trial.js';

describe('the longest floats', () => {
  test('stand out where most floats are shorter, not where all are of one length', () => {
    const cells = (...rows: string[]) => fromCells(4, rows.length, (j, i) => rows[j]![i] === '#');
    expect(longestStandOut(cells('##..', '.##.', '..##', '#..#'))).toBe(false);
    expect(longestStandOut(cells('#.#.', '.#.#', '#.#.', '.###'))).toBe(true);
  });
});

describe('floats outlined', () => {
  test('are those of the cloth: all cells of a long float, and the longest as counted elsewhere', () => {
    const cells = fc.array(fc.array(fc.boolean(), { minLength: 5, maxLength: 5 }), { minLength: 3, maxLength: 7 });
    fc.assert(
      fc.property(cells, fc.integer({ min: 0, max: 4 }), (rows, most) => {
        const cloth = fromCells(5, rows.length, (j, i) => rows[j]![i]!);
        const floats = floatsOf(cloth, SETT);
        const runs = floatsOver(cloth, 'face', most);
        const longest = (warp: boolean): number =>
          Math.max(0, ...runs.filter((r) => r.warp === warp).map((r) => r.length));
        if (floats.warpFace !== null) expect(longest(true)).toBe(floats.warpFace > most ? floats.warpFace : 0);
        if (floats.weftFace !== null) expect(longest(false)).toBe(floats.weftFace > most ? floats.weftFace : 0);
        for (const { warp, end, pick, length } of runs) {
          for (let k = 0; k < length; k++) {
            const [j, i] = warp ? [(pick + k) % rows.length, end] : [pick, (end + k) % 5];
            expect(rows[j]![i]).toBe(warp);
          }
        }
      }),
    );
  });
});
