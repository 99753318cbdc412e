import { existsSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { describe, expect, it } from 'vitest';
import { readWif } from '../../../src/draft/wif/read-wif.js';
import { owner } from '../../../src/files/hidden.js';
import { programVersion } from '../../../src/files/program-version.js';
import { parseShortlist, shortlistText } from '../../../src/formats/shortlist.js';
import { manifestOf, manifestText } from '../../../src/gallery/manifest/manifest.js';
import { trialOutcome, trialQuestion } from '../../gallery/trial.js';
import { twelve } from '../../plan/cloths.js';
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

  it('says in the list and in the WIF file which program found a cloth, and for which question', () =>
    inFolder(async (folder) => {
      await keepFrom(folder, manifestText(manifest), '--wif');
      const [read] = parseShortlist(readFileSync(join(folder, 'kept.json'), 'utf8'), 'kept.json');
      const { lengths, weft, by, fill, times, structure } = manifest.question;
      const asked = `structure ${structure!.join(', ')}; lengths ${lengths!.join(', ')}; weft ${weft}; by ${by!.join(', ')}; fill ${fill}; times ${times!.join(', ')}`;
      expect(read!.origin).toBe(`shedlight ${programVersion()}: ${asked}`);
      const wif = readFileSync(join(folder, 'kept-wif', `${code}.wif`), 'latin1');
      const notes = [.../\[NOTES\]\r\n((?:.+\r\n)+)/.exec(wif)![1]!.matchAll(/^\d+=(.*)\r$/gm)].map(
        ([, note]) => note!,
      );
      expect(notes.join(' ')).toBe(`${code}, ${read!.origin}`);
      for (const note of notes) expect(note.length).toBeLessThanOrEqual(72);
      expect(readWif(Buffer.from(wif, 'latin1')).draft).toEqual(read!.draft);
    }));

  it('says, where codes are missing and where a plan is given the gallery, what to write', () =>
    inFolder(async (folder) => {
      writeFileSync(join(folder, 'gallery.json'), manifestText(manifest));
      const none = await run('keep', folder);
      expect([none.code, none.err]).toEqual([
        2,
        `shedlight: found no codes; expected those of the cloths to keep, as under their pictures, such as: shedlight keep ${folder} ${code}\n`,
      ]);
      const plan = await run('plan', folder);
      expect([plan.code, plan.err]).toEqual([
        2,
        `shedlight: ${folder}: found a folder; expected a shortlist, as made by: shedlight keep ${folder} CODE\n`,
      ]);
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

/** The first and the last code of a gallery. */
function codesOf(gallery: string): [string, string] {
  const { candidates } = JSON.parse(readFileSync(join(gallery, 'gallery.json'), 'utf8'));
  return [candidates[0].code, candidates.at(-1).code];
}

describe('keep --wif', () => {
  it('writes every cloth of the shortlist as a WIF file that reads back as its draft', () =>
    inFolder(async (folder) => {
      const gallery = join(folder, 'gallery');
      const asked = ['--structure', 'overshot', '--orders', 'DL, DDL', '--by', 'unit', '--limits', 'float 20'];
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
