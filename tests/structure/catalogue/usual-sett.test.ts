import { expect, test } from 'vitest';
import { findStructure, weaveOf } from '../../../src/structure/catalogue/catalogue.js';
import { usualSett } from '../../../src/structure/catalogue/usual-sett.js';

// A block of so many ends is woven as high as it is wide where picks are so many times the ends (common practice).
test.each([
  ['plain weave', 20],
  ['2/2 twill', 20],
  ['huck', 20],
  ['turned taqueté', 20],
  // A pattern pick and a tabby for every end.
  ['overshot', 40],
  ['monk’s belt', 40],
  // Four ends to a unit, and two pattern picks with their tabbies.
  ['summer and winter', 20],
  ['crackle', 20],
])('%s on 20 ends: %d picks', (name, picks) => {
  expect(usualSett(findStructure(name), { ends: 20, per: 'inch' })).toEqual({ ends: 20, picks, per: 'inch' });
});

test.each([
  // Eight picks to four ends; a pattern pick and a tabby for every end; as many picks as ends.
  ['summer and winter', 'pairs X', 40],
  ['summer and winter', 'singles', 20],
  ['crackle', 'as drawn in', 40],
  ['halvdräll, float of seven', 'as drawn in', 20],
])('%s, %s, on 20 ends: %d picks', (name, manner, picks) => {
  expect(usualSett(findStructure(name), { ends: 20, per: 'inch' }, manner).picks).toBe(picks);
});

test.each(['halvdräll', 'halvdräll, float of five', 'halvdräll, float of seven'])('a unit of %s is square', (name) => {
  const { endUnits, pickUnits } = weaveOf(findStructure(name), ['A', 'B']);
  expect(pickUnits.slice(0, 2)).toEqual(endUnits);
});
