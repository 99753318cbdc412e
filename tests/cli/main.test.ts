import { once } from 'node:events';
import { describe, expect, it } from 'vitest';
import { EXIT } from '../../src/cli/shell/io.js';
import { inFolder, run, start } from './run.js';

describe('the command line', () => {
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
      "shedlight: too many arguments for 'structures'. Expected 1 argument but got 2; --help tells what there is\n",
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
