import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { folded } from '../../../src/plan/piece/folds.js';

test('folding: lines that repeat in turn are written once, and unfold to the same list', () => {
  fc.assert(
    fc.property(fc.array(fc.constantFrom('a', 'b', 'c'), { maxLength: 60 }), (lines) => {
      const folds = folded(lines, (line) => line);
      expect(folds.flatMap((fold) => Array.from({ length: fold.times }, () => fold.lines).flat())).toEqual(lines);
    }),
  );
  expect(folded([...'ababab'], (line) => line)).toEqual([{ lines: ['a', 'b'], times: 3 }]);
});
