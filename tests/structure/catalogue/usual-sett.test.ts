import { expect, test } from 'vitest';
import { findStructure } from '../../../src/structure/catalogue/catalogue.js';
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
