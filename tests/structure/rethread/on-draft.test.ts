import { expect, test } from 'vitest';
import { findStructure, weaveOf } from '../../../src/structure/catalogue/catalogue.js';
import { structureOn } from '../../../src/structure/rethread/on-draft.js';
import { bareWeave } from '../../bare.js';

test('the manner in which a draft is treadled comes first, and each manner once', () => {
  const crackle = findStructure('crackle');
  const names = crackle.manners.map(({ name }) => name);
  for (const manner of names) {
    const on = structureOn(bareWeave(weaveOf(crackle, [...'AABBCCDD'], { manner })))!;
    const found = on.structure.manners.map(({ name }) => name);
    expect([...found].sort()).toEqual([...names].sort());
    expect(found[0]).toBe(on.found.manner);
  }
});
