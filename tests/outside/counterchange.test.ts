// Two-colour plane groups: H. J. Woods, “The geometrical basis of pattern design”, J. Text. Inst. 26–27 (1935–36),
// lists 46 types (from memory). Of the 39 symbols without third- and sixth-turns, 37 occur on square cells; a block
// for each was found by a separate search. The two others would need a diagonal mirror that exchanges the colours.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { symmetryOf } from '../../src/score/symmetry/symmetry.js';
import { cellsOf, faces } from '../faces.js';
import { runs } from '../long.js';
import { exchangingDiagonalMirror } from '../plain/symmetry.js';
import { faceOf } from './blocks.js';
import data from './data/counterchange.json' with { type: 'json' };

test('there are 37, no two alike', () => expect(new Set(data.blocks.map(({ group }) => group)).size).toBe(37));

test.each(data.blocks)('$group $block', ({ group, block }) => {
  expect(symmetryOf(faceOf(block), true).colourGroup).toBe(group);
});

test('no face of two colours has a diagonal mirror that exchanges them, for a mirror runs through whole cells', () => {
  fc.assert(
    fc.property(faces, (face) => {
      fc.pre(new Set(face.colour).size === 2);
      expect(exchangingDiagonalMirror(cellsOf(face))).toBe(false);
      expect(['p4m/p4', 'p4m/p4g']).not.toContain(symmetryOf(face, true).colourGroup);
    }),
    { numRuns: runs(1000) },
  );
});
