import { existsSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { describe, expect, it } from 'vitest';
import { owner } from '../../../src/files/hidden.js';
import { parseShortlist, readBack, shortlistText } from '../../../src/formats/shortlist.js';
import { manifestOf, manifestText } from '../../../src/gallery/manifest/manifest.js';
import { trialOutcome, trialQuestion } from '../../gallery/trial.js';
import { kept, twelve } from '../../plan/cloths.js';
import { inFolder, run } from '../run.js';

const outcome = trialOutcome();
const [cloth] = outcome.found;
const manifest = manifestOf(trialQuestion(), outcome);
const code = cloth!.code;

/** Keeps a cloth of a gallery in which some words are others, into `kept.json`. */
const keepFrom = (folder: string, text: string, ...more: string[]) => {
  writeFileSync(join(folder, 'gallery.json'), text);
  return run('keep', join(folder, 'gallery.json'), code, '--out', join(folder, 'kept.json'), ...more);
};

describe('keep', () => {
  it('six times at once into one list keeps all six', () =>
    inFolder(async (folder) => {
      const [saved, out] = [join(folder, 'saved.json'), join(folder, 'kept.json')];
      const cloths = twelve().slice(0, 6);
      writeFileSync(saved, shortlistText(cloths));
      const ran = await Promise.all(cloths.map((each) => run('keep', saved, each.code, '--out', out)));
      expect(ran.map(({ code: exit }) => exit)).toEqual([0, 0, 0, 0, 0, 0]);
      const codes = parseShortlist(readFileSync(out, 'utf8'), out).map((each) => each.code);
      expect(codes.sort()).toEqual(cloths.map((each) => each.code).sort());
      expect((await readdir(folder)).sort()).toEqual(['kept.json', 'saved.json']);
    }));

  it('waits for another run, and then reads what that has written', () =>
    inFolder(async (folder) => {
      const [saved, out, lock] = ['saved.json', 'kept.json', '.kept.json.shedlight-lock'].map((name) =>
        join(folder, name),
      );
      const [mine, theirs] = twelve();
      writeFileSync(saved!, shortlistText([mine!]));
      writeFileSync(lock!, owner().replace(/^\d+/, String(process.ppid)));
      const keeping = run('keep', saved!, '--out', out!);
      await setTimeout(150);
      expect(existsSync(out!)).toBe(false);
      writeFileSync(out!, shortlistText([theirs!]));
      rmSync(lock!);
      expect((await keeping).out).toContain('1 added, 2 in all');
    }));

  it('refuses what could not be read again, each with its limit', () =>
    inFolder(async (folder) => {
      const [yarn, ...yarns] = manifest.palette;
      const longNamed = { ...manifest, palette: [{ ...yarn!, name: 'n'.repeat(201) }, ...yarns] };
      const refusals = [
        await keepFrom(folder, manifestText(manifest), '--note', 'n'.repeat(2001)),
        await keepFrom(folder, manifestText(longNamed)),
        await keepFrom(folder, manifestText(manifest).replaceAll(outcome.found[1]!.code, 'edited00'), 'edited00'),
      ];
      expect(refusals.map(({ code: exit }) => exit)).toEqual([2, 2, 2]);
      expect(refusals.map(({ err }) => err.trimEnd().replace(`${folder}/`, ''))).toEqual([
        'shedlight: --note: found 2001 letters; expected at most 2000',
        `shedlight: gallery.json: ${code}: draft.yarns.0.name: found 201 letters; expected 200 at most`,
        `shedlight: gallery.json: edited00: code: found “edited00”; expected “${outcome.found[1]!.code}”, the code of its draft`,
      ]);
      expect(existsSync(join(folder, 'kept.json'))).toBe(false);
    }));

  it('cuts a recipe and a name that are too long for a shortlist', () =>
    inFolder(async (folder) => {
      const { recipe, structure } = manifest.candidates[0]!;
      const long = manifestText(manifest)
        .replace(`"recipe":${JSON.stringify(recipe)}`, `"recipe":"${'r'.repeat(1001)}"`)
        .replace(`"structure":${JSON.stringify(structure)}`, `"structure":"${'s'.repeat(201)}"`);
      expect((await keepFrom(folder, long)).code).toBe(0);
      const [read] = parseShortlist(readFileSync(join(folder, 'kept.json'), 'utf8'), 'kept.json');
      expect([read!.recipe.length, read!.structure.length]).toEqual([1000, 200]);
    }));

  it('refuses more than a thousand cloths', () => {
    const many = `{"format": "shedlight-shortlist", "version": 1, "candidates": [${'0,'.repeat(1000)}0]}`;
    expect(() => parseShortlist(many, 'kept.json')).toThrow('kept.json: found 1001 cloths; expected at most 1000');
  });

  it('leaves a WIF file that was worked on as it is', () =>
    inFolder(async (folder) => {
      await keepFrom(folder, manifestText(manifest), '--wif');
      const wif = join(folder, 'kept-wif', `${code}.wif`);
      writeFileSync(wif, 'with other colours');
      const { err } = await keepFrom(folder, manifestText(manifest), '--wif');
      expect(err).toBe(`${wif}: left as it is, as it holds something else\n`);
      expect(readFileSync(wif, 'utf8')).toBe('with other colours');
    }));

  it('finds a gallery that a killed run has left moved aside', () =>
    inFolder(async (folder) => {
      const asked = ['--structure', '2/2 twill', '--orders', 'DDDDLLLL', '--weft', 'same', '--show', '1', '--quiet'];
      await run('explore', ...asked, '--workers', '1', '--out', join(folder, 'gallery'));
      renameSync(join(folder, 'gallery'), join(folder, '.gallery.shedlight-old'));
      const aside = JSON.parse(readFileSync(join(folder, '.gallery.shedlight-old', 'gallery.json'), 'utf8'));
      const out = join(folder, 'kept.json');
      const ran = await run('keep', join(folder, 'gallery'), aside.candidates[0].code, '--out', out);
      expect([ran.code, existsSync(out)]).toEqual([0, true]);
    }));
});

describe('a cloth', () => {
  it('reads back as it was kept', () => {
    const each = { ...kept('2/2 twill', { warp: 'DDLDL' }), stars: 3, note: 'for the runner' };
    expect(readBack(each, '')).toEqual(each);
  });
});
