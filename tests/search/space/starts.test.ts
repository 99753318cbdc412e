import { expect, test } from 'vitest';
import { drawdown, isUp } from '../../../src/cloth/drawdown.js';
import { familiesOf } from '../../../src/search/space/families.js';
import { startsOf, weaveShifts } from '../../../src/search/space/starts.js';
import { findStructure, weaveOf } from '../../../src/structure/catalogue/catalogue.js';
import { bareWeave } from '../../bare.js';
import { QUESTION } from '../question.js';

test.each([
  ['plain weave', ['A', 'A', 'A']],
  ['2/2 twill', ['A', 'A']],
  ['2/2 point twill', ['A']],
  ['turned twill', ['A', 'B', 'A', 'B']],
])('the shifts that carry %s to itself are those of a plain search', (name, profile) => {
  const weave = bareWeave(weaveOf(findStructure(name), profile));
  const cloth = drawdown(weave);
  const up = (j: number, i: number): boolean => isUp(cloth, j % cloth.picks, i % cloth.ends);
  const cells = Array.from({ length: cloth.ends * cloth.picks }, (_, at) => [
    at % cloth.ends,
    Math.floor(at / cloth.ends),
  ]);
  const carrying = cells.filter(([x, y]) => cells.every(([i, j]) => up(j!, i!) === up(j! + y!, i! + x!)));
  expect(new Set(weaveShifts(weave).map(String))).toEqual(new Set(carrying.map(String)));
});

test('a weave with tabby, or with companions, has none', () => {
  expect(weaveShifts(weaveOf(findStructure('overshot'), ['A', 'B']))).toEqual([]);
  expect(weaveShifts(weaveOf(findStructure('turned taqueté'), ['A', 'B']))).toEqual([]);
});

test('they are looked for up to 40,000 crossings', () => {
  // One end on a shaft of its own: no shift but none at all.
  const sized = (ends: number, picks: number) =>
    bareWeave({
      threading: Array.from({ length: ends }, (_, i) => [i === 0 ? 3 : (i % 2) + 1]),
      tieUp: [[1], [2], [1, 3]],
      treadling: Array.from({ length: picks }, (_, j) => [j === 0 ? 3 : (j % 2) + 1]),
    });
  expect(weaveShifts(sized(200, 200))).toEqual([[0, 0]]);
  // 13 × 17 by 181 is one crossing more.
  expect(weaveShifts(sized(221, 181))).toEqual([]);
});

test('an order of one yarn begins on the first thread alone, however many threads it covers', () => {
  const [family] = familiesOf({ ...QUESTION, times: [4] });
  const starts = (n: number, m: number): number => startsOf('all', family!, n, m).length;
  expect(starts(1, 1)).toBe(1);
  // Orders of two cover eight threads: four starts, and a shift of both by one carries the twill to itself.
  expect(starts(1, 2)).toBe(1);
  expect(starts(2, 2)).toBe(4);
});
