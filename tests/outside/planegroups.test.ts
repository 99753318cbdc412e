// Plane groups of small blocks, of weave structures and of satins. Which groups can occur and how they are told
// apart: International Tables for Crystallography A, and D. Schattschneider, “The plane symmetry groups”, Amer. Math.
// Monthly 85 (1978) (both from memory); groups of the blocks computed once by two separate programs that agree. Satin
// lift orders: J. T. Taylor, Cotton Weaving and Designing, 6th ed. 1909. Blocks up to sliding: OEIS A184271.
import { describe, expect, test } from 'vitest';
import { faceFromRows } from '../../src/cloth/face.js';
import { holdsTogether } from '../../src/cloth/holds-together.js';
import { analyse } from '../../src/score/symmetry/analysis.js';
import { clothKey } from '../../src/score/symmetry/canonical-cloth.js';
import { symmetryOf } from '../../src/score/symmetry/symmetry.js';
import { everyBlock, faceOf, weaveOf } from './blocks.js';
import blocks from './data/blocks.json' with { type: 'json' };
import data from './data/planegroups.json' with { type: 'json' };

const cellOf = (block: string): number => {
  const { width, height } = analyse(faceOf(block)).lattice;
  return width * height;
};

test.each(data.smallest)('smallest block with a group: $square $block', ({ block, square, rectangular, cells }) => {
  expect(symmetryOf(faceOf(block), true).planeGroup).toBe(square);
  expect(symmetryOf(faceOf(block), false).planeGroup).toBe(rectangular);
  expect(cellOf(block)).toBe(cells);
});

test.each(data.structures)('$name', ({ block, square, rectangular, cells, mirrors, colourGroup }) => {
  const symmetry = symmetryOf(faceOf(block), true);
  expect(symmetry.planeGroup).toBe(square);
  expect(symmetry.colourGroup).toBe(colourGroup);
  expect(symmetryOf(faceOf(block), false).planeGroup).toBe(rectangular);
  expect(cellOf(block)).toBe(cells);
  const kept = symmetry.operations.filter(({ counterchange }) => !counterchange).map(({ op }) => op as string);
  expect(kept).toEqual(expect.arrayContaining(mirrors));
});

const satin = (lifts: readonly number[]): string =>
  lifts.map((lift) => lifts.map((_, i) => (i === lift ? '#' : '.')).join('')).join('/');

test.each(data.satins)('satins on $ends ends', ({ ends, groups }) => {
  for (const [step, group] of Object.entries(groups)) {
    const block = satin(Array.from({ length: ends }, (_, j) => (j * Number(step)) % ends));
    expect([step, symmetryOf(faceOf(block), true).planeGroup]).toEqual([step, group]);
  }
});

test.each([[[1, 3, 5, 2, 6, 4]], [[1, 4, 2, 6, 3, 5]]])('irregular satin on six, lifts %j', (lifts) => {
  const block = satin(lifts.map((lift) => lift - 1));
  expect(symmetryOf(faceOf(block), true).planeGroup).toBe('p4g');
  expect(holdsTogether(weaveOf(block))).toBe(true);
});

const tally = (words: readonly string[]): Record<string, number> => {
  const counts: Record<string, number> = {};
  for (const word of words) counts[word] = (counts[word] ?? 0) + 1;
  return counts;
};

describe('every block of two colours', () => {
  test.each(blocks.sizes)('$size', ({ size, classes, square, rectangular, colourGroups }) => {
    const [picks, ends] = size.split('x').map(Number) as [number, number];
    const faces = Array.from(everyBlock(picks, ends), (rows) => faceFromRows(rows));
    const analyses = faces.map((face) => analyse(face));
    const onSquare = faces.map((face, n) => symmetryOf(face, true, analyses[n]));
    const onRectangles = faces.map((face, n) => symmetryOf(face, false, analyses[n]));
    expect(tally(onSquare.map(({ planeGroup }) => planeGroup))).toEqual(square);
    expect(tally(onRectangles.map(({ planeGroup }) => planeGroup))).toEqual(rectangular);
    expect(tally(onSquare.map(({ colourGroup }) => colourGroup ?? 'none'))).toEqual(colourGroups);
    expect(new Set(faces.map((face, n) => clothKey(face, [], 2, analyses[n]).join(' '))).size).toBe(classes);
  });
});
