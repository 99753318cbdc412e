import { describe, expect, it } from 'vitest';
import { drawdown } from '../../../src/cloth/drawdown.js';
import { floatsOf } from '../../../src/cloth/floats.js';
import { hangsTogether } from '../../../src/cloth/holds-together.js';
import { picturesOf, usualDraft } from '../../../src/gallery/structures/structure-pictures.js';
import { structures, weaveOf } from '../../../src/structure/catalogue/catalogue.js';

describe.each(structures.map((structure) => [structure.name, structure] as const))('%s', (_, structure) => {
  const shown = picturesOf(structure);
  it('is shown as it is, then with the order by unit and by thread, each under its own words', () => {
    const words = shown.map((picture) => picture.words);
    expect(new Set(words).size).toBe(words.length);
    for (const said of ['DLDDL by unit', 'DLDDL by thread', 'DLDDL nested']) expect(words).toContain(said);
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
    expect(hangsTogether(drawdown(draft))).toBe(true);
  });
  it('every cloth of it hangs together, and its floats keep to nine threads', () => {
    for (const { draft } of shown) {
      const cloth = drawdown(draft);
      expect(hangsTogether(cloth)).toBe(true);
      expect(floatsOf(cloth, draft.sett).longest).toBeLessThanOrEqual(9);
    }
  });
});
