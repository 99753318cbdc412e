import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readWif } from '../../../src/draft/wif/read-wif.js';
import { parseShortlist } from '../../../src/formats/shortlist.js';
import { inFolder, run } from '../run.js';

/** The first and the last code of a gallery. */
function codesOf(gallery: string): [string, string] {
  const { candidates } = JSON.parse(readFileSync(join(gallery, 'gallery.json'), 'utf8'));
  return [candidates[0].code, candidates.at(-1).code];
}

describe('keep --wif', () => {
  it('writes every cloth of the shortlist as a WIF file that reads back as its draft', () =>
    inFolder(async (folder) => {
      const gallery = join(folder, 'gallery');
      const asked = ['--structure', 'overshot', '--orders', 'DL, DDL', '--by', 'unit', '--limit-float', '20'];
      await run('explore', ...asked, '--show', '3', '--workers', '1', '--quiet', '--out', gallery);
      const [first, second] = codesOf(gallery);
      const out = join(folder, 'kept.json');
      expect((await run('keep', gallery, first, '--out', out)).code).toBe(0);
      expect(first).not.toBe(second);
      expect(existsSync(join(folder, 'kept-wif'))).toBe(false);
      const { code, out: said } = await run('keep', gallery, second, '--out', out, '--wif');
      expect(code).toBe(0);
      expect(said).toContain(`${join(folder, 'kept-wif')}: a WIF file of each`);
      const kept = parseShortlist(readFileSync(out, 'utf8'), out);
      expect(readdirSync(join(folder, 'kept-wif')).sort()).toEqual(kept.map((cloth) => `${cloth.code}.wif`).sort());
      for (const cloth of kept) {
        const bytes = readFileSync(join(folder, 'kept-wif', `${cloth.code}.wif`));
        const { draft, notes } = readWif(bytes, { whole: true });
        expect(draft).toEqual(cloth.draft);
        expect(notes).toEqual([]);
      }
      writeFileSync(join(folder, 'more-wif'), '');
      const refused = await run('keep', out, '--out', join(folder, 'more.json'), '--wif');
      expect(refused.code).toBe(2);
      expect(refused.err).toContain('more-wif: found a file; expected a folder');
    }));
});
