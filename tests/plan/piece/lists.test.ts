import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readPlanOptions } from '../../../src/plan/options/plan-options.js';
import { folded, pickSheet, threadingLines } from '../../../src/plan/piece/lists.js';
import { planWarps } from '../../../src/plan/piece/warp-plan.js';
import { runs } from '../../long.js';
import { kept } from '../cloths.js';

const needsOf = (flags: Record<string, string> = {}) =>
  readPlanOptions('', 'needs', { 'yarn size': '8/2 cotton', ...flags });

const cloth = fc.record({
  name: fc.constantFrom('plain weave', '2/2 twill', 'summer and winter', 'huck', 'crackle', 'overshot'),
  warp: fc.constantFrom('D', 'DL', 'DDLDL', 'DDDLL', 'DDLLL'),
  weft: fc.constantFrom('L', 'DL', 'DDLDL'),
  times: fc.constantFrom(1, 2, 4),
});

/** How many steps a line of the pick list says. */
function stepsSaid(line: string): number {
  const parts = [...line.matchAll(/(?:\(([^()]+)\)|([^\s()×]+))(?:×(\d+))?/g)];
  return parts.reduce(
    (sum, [, several, one, times]) => sum + (several ?? one)!.split(' ').length * Number(times ?? 1),
    0,
  );
}

describe('a warp', () => {
  test('lists say every end and every pick once', () => {
    fc.assert(
      fc.property(cloth, (made) => {
        const [warp] = planWarps([kept(made.name, made)], needsOf());
        const piece = warp!.pieces[0]!;
        const ends = threadingLines(warp!).flatMap((line) =>
          Array.from({ length: line.times }, () => line.ends).flat(),
        );
        expect(ends).toEqual(
          piece.draft.threading.map((shafts, i) => shafts.join('+') + piece.draft.yarns[piece.draft.warp[i]!]!.letter),
        );
        const { lines, tabby } = pickSheet(piece);
        const picks = lines.reduce(
          (sum, line) => sum + (tabby === undefined ? line.to - line.from + 1 : (line.to - line.from) / 2 + 1),
          0,
        );
        expect(picks * (tabby === undefined ? 1 : 2)).toBe(piece.draft.weft.length);
        // `(1 2)×4 3` is nine steps: as many as the line has picks, and nothing is said to be done once.
        expect(lines.reduce((sum, line) => sum + stepsSaid(line.steps), 0)).toBe(picks);
        for (const line of lines) expect(line.steps).not.toMatch(/×1(?!\d)/);
      }),
      { numRuns: runs(60) },
    );
  });
});

test('folding: lines that repeat in turn are written once, and unfold to the same list', () => {
  fc.assert(
    fc.property(fc.array(fc.constantFrom('a', 'b', 'c'), { maxLength: 60 }), (lines) => {
      const folds = folded(lines, (line) => line);
      expect(folds.flatMap((fold) => Array.from({ length: fold.times }, () => fold.lines).flat())).toEqual(lines);
    }),
  );
  expect(folded([...'ababab'], (line) => line)).toEqual([{ lines: ['a', 'b'], times: 3 }]);
});
