import { expect, test } from 'vitest';
import { fromCells } from '../../../src/cloth/drawdown.js';
import { woven } from '../../../src/cloth/face.js';
import { structureAlone, structureLikeness } from '../../../src/score/look/structure-likeness.js';

const cloth = fromCells(4, 4, (j, i) => (i - j + 4) % 4 < 2);
const alone = structureAlone(cloth, 1);
const [dark, light] = [new Uint8Array(4), new Uint8Array(4).fill(1)];
const unlike = structureLikeness([0, 1]);

test('a millionth is the least variance of a pattern, of the face and of the structure', () => {
  // Even, and said to be a pattern: nothing in it is like the structure.
  const even = woven(cloth, dark, dark);
  expect(unlike(even, 1e-6, alone)).toBeCloseTo(1, 9);
  expect(unlike(even, 0.9e-6, alone)).toBe(0);
  // The structure itself, said to have next to no pattern.
  const same = woven(cloth, dark, light);
  expect(unlike(same, 0.25, { ...alone, variance: 1e-6 })).toBe(0);
  expect(unlike(same, 0.25, { ...alone, variance: 0.9e-6 })).toBe(1);
});
