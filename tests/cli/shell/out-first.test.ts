import { once } from 'node:events';
import { lstatSync, mkdirSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { describe, expect, it } from 'vitest';
import { inFolder, run, start } from '../run.js';

/** A search of many seconds: five of them would outlast the test. */
const LONG = ['explore', '--structure', '2/2 twill', '--lengths', '20', '--show', '2', '--workers', '1'];

describe('where a gallery cannot be written', () => {
  it('it is said before the search', { timeout: 30_000 }, () =>
    inFolder(async (folder) => {
      const inside = (name: string): string => join(folder, name);
      writeFileSync(inside('file'), '');
      symlinkSync(inside('nowhere'), inside('link'));
      mkdirSync(inside('letters'));
      writeFileSync(inside('letters/dear.txt'), '');
      const before = readdirSync(folder, { recursive: true });
      for (const [out, words, more] of [
        ['file', 'found a file in the way', []],
        ['file/in', 'found a file in the way', []],
        ['link', 'found a link that leads nowhere', []],
        ['letters', 'found a folder with other things in it (“dear.txt”)', []],
        ['file/in', 'found a file in the way', ['--shard', '1/2']],
        ['none/in', undefined, ['--shard', '3/2']],
      ] as const) {
        const { code, err } = await run(...LONG, '--out', inside(out), ...more);
        expect([out, code]).toEqual([out, 2]);
        expect(err).toContain(words === undefined ? '--shard' : `${inside(out)}`);
        expect(err).toContain(words ?? 'found “3/2”');
      }
      expect(readdirSync(folder, { recursive: true })).toEqual(before);
      expect(lstatSync(inside('link')).isSymbolicLink()).toBe(true);
    }),
  );

  it('so it is for pictures and drafts', () =>
    inFolder(async (folder) => {
      const out = join(folder, 'none', 'out.png');
      for (const words of [
        ['draw', '--structure', 'plain', '--out', out],
        ['structures', 'plain', '--out', out],
        ['enlarge', 'DLDDL', '--structure', 'plain', '--out', out],
        ['convert', 'none.yaml', out.replace('.png', '.wif')],
        ['keep', 'none.json', '--out', out],
      ]) {
        const { code, err } = await run(...words);
        expect([words[0], code, err]).toEqual([words[0], 2, expect.stringContaining('found no')]);
      }
    }));
});

describe('two runs into one folder', () => {
  it('both write, one of them stands, whole, and what a person put there', { timeout: 60_000 }, () =>
    inFolder(async (folder) => {
      const asked = (orders: string): string[] => [
        'explore',
        '--structure',
        '2/2 twill',
        '--orders',
        orders,
        '--out',
        'box',
      ];
      await run(...asked('DDDLLL').slice(0, -1), join(folder, 'box'), '--workers', '1', '--quiet');
      writeFileSync(join(folder, 'box', 'mine.txt'), 'mine');
      const runs = ['DDDDLLLL', 'DDLDL'].map((orders) =>
        once(start([...asked(orders), '--workers', '1'], folder), 'exit'),
      );
      expect(await Promise.all(runs)).toEqual([
        [0, null],
        [0, null],
      ]);
      const { candidates } = JSON.parse(readFileSync(join(folder, 'box', 'gallery.json'), 'utf8'));
      const swatches = candidates.flatMap(({ code }: { code: string }) => [`${code}.png`, `${code}-quarter.png`]);
      expect(readdirSync(join(folder, 'box', 'swatches')).sort()).toEqual(swatches.sort());
      expect(readFileSync(join(folder, 'box', 'mine.txt'), 'utf8')).toBe('mine');
      expect(readdirSync(folder)).toEqual(['box']);
    }),
  );
});

describe('told to end while it draws', () => {
  it.each([
    ['SIGTERM', 143],
    ['SIGHUP', 129],
  ] as const)('%s: exit %i, and nothing is left', { timeout: 60_000 }, (signal, exit) =>
    inFolder(async (folder) => {
      const child = start(['explore', '--structure', '2/2 twill', '--lengths', '2-6', '--out', 'box'], folder);
      const over = once(child, 'exit');
      while (!readdirSync(folder).some((name) => name.startsWith('.box.shedlight-new-'))) {
        if (child.exitCode !== null) throw new Error('it was over too soon');
        await setTimeout(5);
      }
      child.kill(signal);
      expect(await over).toEqual([exit, null]);
      expect(readdirSync(folder)).toEqual([]);
    }),
  );
});
