import { expect, test } from 'vitest';
import { fromCells } from '../../../src/cloth/drawdown.js';
import { colourFace } from '../../../src/cloth/face.js';
import { structureAlone, unlikeStructure } from '../../../src/score/look/structure-likeness.js';

const cloth = fromCells(4, 4, (j, i) => (i - j + 4) % 4 < 2);
const alone = structureAlone(cloth, 1);
const [dark, light] = [new Uint8Array(4), new Uint8Array(4).fill(1)];
const values = Float64Array.of(0, 1);

test('a millionth is the least variance of a pattern, of the face and of the structure', () => {
  // Even, and said to be a pattern: nothing in it is like the structure.
  const even = colourFace(cloth, dark, dark);
  expect(unlikeStructure(even, values, 1e-6, alone)).toBeCloseTo(1, 9);
  expect(unlikeStructure(even, values, 0.9e-6, alone)).toBe(0);
  // The structure itself, said to have next to no pattern.
  const same = colourFace(cloth, dark, light);
  expect(unlikeStructure(same, values, 0.25, { ...alone, variance: 1e-6 })).toBe(0);
  expect(unlikeStructure(same, values, 0.25, { ...alone, variance: 0.9e-6 })).toBe(1);
});
