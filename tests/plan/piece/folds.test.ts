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

test('a group of eight lines is folded, a longer one only as far as is asked', () => {
  const twice = (lines: string): string[] => [...lines, ...lines];
  const times = (lines: string, most?: number) => folded(twice(lines), (line) => line, most).map((fold) => fold.times);
  expect(times('abcdefgh')).toEqual([2]);
  expect(times('abcdefghi')).toEqual(new Array(18).fill(1));
  expect(times('abcdefghi', 9)).toEqual([2]);
  expect(times('abc', 2)).toEqual(new Array(6).fill(1));
});

test('the group that saves most lines is folded, not the first or the shortest', () => {
  expect(folded([...'aabaab'], (line) => line)).toEqual([{ lines: ['a', 'a', 'b'], times: 2 }]);
  expect(folded([...'aaaaab'], (line) => line)).toEqual([
    { lines: ['a'], times: 5 },
    { lines: ['b'], times: 1 },
  ]);
});
