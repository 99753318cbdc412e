import { describe, expect, it } from 'vitest';
import { drawdown } from '../../../src/cloth/drawdown.js';
import { floatsOf } from '../../../src/cloth/floats.js';
import { holdsTogether } from '../../../src/cloth/holds-together.js';
import { picturesOf, usualDraft } from '../../../src/gallery/structures/structure-pictures.js';
import { findStructure, structures, weaveOf } from '../../../src/structure/catalogue/catalogue.js';

describe.each(structures.map((structure) => [structure.name, structure] as const))('%s', (_, structure) => {
  const shown = picturesOf(structure);
  it('is shown as it is, then with the order by unit and by thread, each under its own words', () => {
    const words = shown.map((picture) => picture.words);
    expect(new Set(words).size).toBe(words.length);
    for (const said of ['DLDDL by thread', 'DLDDL nested']) expect(words).toContain(said);
    expect(words.filter((word) => /^DLDDL by unit(, as drawn in)?$/.test(word))).toHaveLength(1);
    if (structure.blocks.length > 1 && !/^huck( lace)?$/.test(structure.name)) {
      expect(words).toContain('DLDDL, blocks and colours');
    }
  });
  it('has a draft of its usual threading, which holds together', () => {
    const draft = usualDraft(structure);
    const { threading } = weaveOf(structure, structure.profile);
    // Blocks that differ in the weft alone leave a shorter repeat of the threading.
    const drawn = threading.map((_, at) => draft.threading[at % draft.threading.length]);
    expect(drawn).toEqual(threading);
    expect(holdsTogether(drawdown(draft))).toBe(true);
  });
  it('every cloth of it hangs together, and its floats keep to nine threads', () => {
    for (const { draft } of shown) {
      const cloth = drawdown(draft);
      expect(holdsTogether(cloth)).toBe(true);
      expect(floatsOf(cloth, draft.sett).longest).toBeLessThanOrEqual(9);
    }
  });
});

// Names after handbooks, as in classic-effects.ts.
it.each([
  ['plain weave', ['hairline', 'tricot', 'pinwheel', 'gingham', 'log cabin']],
  ['2/2 twill', ['step', 'hound’s tooth', 'shepherd’s check', 'glen check']],
  ['1/3 twill', []],
])('%s ends with the cloths that have names on it', (name, named) => {
  const words = picturesOf(findStructure(name)).map((picture) => picture.words);
  expect(words.slice(words.indexOf('DLDDL nested') + 1)).toEqual(named);
});

it('by unit the motif is as tall as wide, in a treadling that has such units', () => {
  const { draft } = picturesOf(findStructure('2/2 rosepath')).find(({ words }) => words.startsWith('DLDDL by unit'))!;
  expect([draft.warp.length, draft.weft.length]).toEqual([40, 40]);
});
