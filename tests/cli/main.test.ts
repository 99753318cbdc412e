import { once } from 'node:events';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { EXIT } from '../../src/cli/shell/io.js';
import { shortlistText } from '../../src/formats/shortlist.js';
import { kept } from '../plan/cloths.js';
import { inFolder, run, start } from './run.js';

describe('the command line', () => {
  it('names the file and the cloth that may be meant, and what is missing', () =>
    inFolder(async (folder) => {
      const at = (name: string) => join(folder, name);
      writeFileSync(at('my-draft.yaml'), 'threading: 1-4\n');
      const list = shortlistText([kept('2/2 twill', { warp: 'DDLL' })]);
      const gallery = `{"format":"shedlight-gallery"${list.slice(list.indexOf(','))}`;
      writeFileSync(at('kept.json'), list);
      writeFileSync(at('gallery.json'), gallery);
      const said = async (...words: string[]) => (await run(...words)).err;
      expect(await said('draw', at('my-drft.yaml'))).toContain('expected a draft (did you mean “my-draft.yaml”?)');
      expect(await said('plan', at('gallery.json'))).toContain(
        `found a gallery; expected a shortlist, as made by: shedlight keep ${folder} CODE`,
      );
      expect(await said('keep', at('kept.json'), '1')).toMatch(
        /found no cloth 1 in it; codes are under the pictures, such as \w{8}\n$/,
      );
      expect(await said('plan')).toBe('shedlight: found no shortlist; --help tells what there is\n');
      expect(await said('convert', 'a.wif')).toBe('shedlight: found no output file; --help tells what there is\n');
      expect(await said('deal', at('kept.json'))).toBe('shedlight: found no --weavers; --help tells what there is\n');
      expect(await said('structures', 'turnd')).toContain('no structure “turnd”; the nearest are “turned twill”, ');
    }));

  it.each([
    [['--help']],
    [['explore', '--help']],
    [['draw', '--help']],
    [['structures', '--help']],
    [['help', 'draw']],
  ])('helps: %j', async (words) => {
    const { code, out, err } = await run(...words);
    expect([code, err]).toEqual([0, '']);
    expect(out).toMatch(/^Examples:\n/);
    expect(Math.max(...out.split('\n').map((line) => line.length))).toBeLessThanOrEqual(80);
    expect(out).not.toMatch(/\b(render|generate|pixel|canvas|asset|preset)/i);
  });

  it.each([
    [['explore', '-structure', 'twill'], '-structure: found a dash; expected two hyphens, --structure'],
    [['explore', '–structure=twill'], '–structure=twill: found a dash; expected two hyphens, --structure'],
    [['explore', '—lengths', '5'], '—lengths: found a dash; expected two hyphens, --lengths'],
    [
      ['draw', '--structure', '“2/2', 'twill”'],
      '“2/2: found a curly quotation mark; expected straight ones round the whole name, "',
    ],
    [
      ['draw', '--structure=„2/2', 'twill“'],
      '--structure=„2/2: found a curly quotation mark; expected straight ones round the whole name, "',
    ],
  ])('knows what was pasted from a printed page: %j', async (words, said) => {
    expect(await run(...words)).toEqual({ code: EXIT.wrong, out: '', err: `shedlight: ${said}\n` });
  });

  it('takes a title in curly quotation marks, and a minus before a number', async () => {
    const { err } = await run('plan', 'none.json', '--project', '“Autumn” scarves', '--yarn-size', '-3');
    expect(err).toMatch(/none\.json/);
  });

  it('says every exit code in its help', async () => {
    const { out } = await run('--help');
    for (const code of Object.values(EXIT)) expect(out).toMatch(new RegExp(`^ +${code} {2}[a-z]`, 'm'));
  });

  it('prints its version bare', async () => expect((await run('--version')).out).toMatch(/^\d+\.\d+\.\d+\n$/));

  it.each([
    [['expolre'], "shedlight: unknown command 'expolre' (Did you mean explore?); --help tells what there is\n"],
    [['draw', '--oot', 'x'], "shedlight: unknown option '--oot' (Did you mean --out?); --help tells what there is\n"],
    [['draw', '--out'], "shedlight: option '--out <file>' argument missing; --help tells what there is\n"],
    [
      ['structures', 'plain', 'twill'],
      'shedlight: structures: found 2 words; expected 1 at most, and quotation marks round a name of several words; --help tells what there is\n',
    ],
    [['explore', 'nowhere.yaml'], 'shedlight: nowhere.yaml: found no such file; expected a question\n'],
    [['draw', '/'], 'shedlight: /: found a folder; expected a draft\n'],
    [
      ['explore', '--structure', 'plain', '--workers', '0'],
      'shedlight: --workers: found “0”; expected a number from 1 to 256\n',
    ],
  ])('refuses %j with code 2', async (words, message) => {
    expect(await run(...words)).toEqual({ code: 2, out: '', err: message });
  });

  it('ends quietly where nobody reads on', () =>
    inFolder(async (folder) => {
      const child = start(['structures', '--json'], folder);
      child.stdout!.destroy();
      let err = '';
      child.stderr!.on('data', (text: Buffer) => {
        err += text;
      });
      const [code] = await once(child, 'close');
      expect([code, err]).toEqual([0, '']);
    }));
});
