import { describe, expect, it } from 'vitest';
import { picturesOf } from '../../src/cli/structure-pictures.js';
import { drawdown } from '../../src/cloth/drawdown.js';
import { floatsOf } from '../../src/cloth/floats.js';
import { hangsTogether } from '../../src/cloth/sound.js';
import { structures } from '../../src/structure/index.js';

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
  it('every cloth of it hangs together, and its floats keep to nine threads', () => {
    for (const { draft } of shown) {
      const cloth = drawdown(draft);
      expect(hangsTogether(cloth)).toBe(true);
      expect(floatsOf(cloth, draft.sett).longest).toBeLessThanOrEqual(9);
    }
  });
});
