import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { inFolder, run } from '../run.js';

const opened = (out: string): string => /^Open (.+)$/m.exec(out)![1]!;
const lengthsIn = (gallery: string) => JSON.parse(readFileSync(join(gallery, 'gallery.json'), 'utf8')).question.lengths;

it('gives each question a folder of its own; a question asked again, or ranked anew, goes to its own', () =>
  inFolder(async (folder) => {
    const file = join(folder, 'tide.yaml');
    writeFileSync(file, 'structure: crackle\nlengths: 2\nshow: 1\n');
    const own = join(folder, 'tide');
    const ask = (...more: string[]) => run('explore', file, ...more);
    expect(await ask()).toMatchObject({ err: '' });
    const second = await ask('--lengths', '3');
    expect(second.err).toBe(`shedlight: ${own} answers another question and stays as it is; this one is in ${own}-2\n`);
    expect(opened(second.out)).toBe(join(`${own}-2`, 'index.html'));
    expect([lengthsIn(own), lengthsIn(`${own}-2`)]).toEqual([[2], [3]]);
    expect(opened((await ask('--lengths', '4')).out)).toBe(join(`${own}-3`, 'index.html'));
    expect(opened((await ask('--lengths', '3', '--rank', 'calm', '--show', '2')).out)).toBe(
      join(`${own}-2`, 'index.html'),
    );
    expect(await ask('--seed', 'other')).toMatchObject({ err: '' });
    expect(existsSync(`${own}-4`)).toBe(false);
  }));

it('says what it replaces where its folder is named; what a person put there stays', () =>
  inFolder(async (folder) => {
    const out = join(folder, 'out');
    const ask = (lengths: string) =>
      run('explore', '--structure', 'crackle', '--lengths', lengths, '--show', '1', '--out', out);
    expect((await ask('2')).err).toBe('');
    writeFileSync(join(out, 'mine.txt'), 'my notes');
    expect((await ask('2')).err).toBe('');
    expect((await ask('3')).err).toBe(
      `shedlight: ${out} answered another question (structure crackle; lengths 2; weft same; by thread; fill solid; ` +
        'times 1) and is replaced; what was kept in its page is there again once that is asked again\n',
    );
    expect([lengthsIn(out), readFileSync(join(out, 'mine.txt'), 'utf8')]).toEqual([[3], 'my notes']);
  }));

it('a folder with anything else is refused, not passed by', () =>
  inFolder(async (folder) => {
    const file = join(folder, 'tide.yaml');
    writeFileSync(file, 'structure: crackle\nlengths: 2\n');
    mkdirSync(join(folder, 'tide'));
    writeFileSync(join(folder, 'tide', 'gallery.json'), '{}');
    expect((await run('explore', file)).code).toBe(2);
  }));
