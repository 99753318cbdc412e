import fc from 'fast-check';
import { expect, test } from 'vitest';
import { holdsTogether, layers } from '../../src/cloth/holds-together.js';
import { lifts, woven } from '../lifts.js';
import { runs } from '../long.js';
import * as plain from '../plain/floats.js';

test('layers by kinds equal the strong components of all strands', () => {
  fc.assert(
    fc.property(lifts, (cells) => {
      expect(layers(woven(cells))).toBe(plain.layers(cells));
      expect(holdsTogether(woven(cells))).toBe(plain.layers(cells) === 1);
    }),
    { numRuns: runs(1000) },
  );
});

test('copies of a loose strand are each a layer; copies of a bound one are not', () => {
  expect(layers(woven([[1, 1, 1]]))).toBe(4);
  expect(
    layers(
      woven([
        [1, 0, 1, 0],
        [0, 1, 0, 1],
      ]),
    ),
  ).toBe(1);
  expect(
    layers(
      woven([
        [1, 0, 1, 0, 1, 1],
        [0, 1, 0, 1, 1, 1],
      ]),
    ),
  ).toBe(3);
});
