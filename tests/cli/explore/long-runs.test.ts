import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import seedrandom from 'seedrandom';
import { afterEach, describe, expect, it } from 'vitest';
import { explore } from '../../../src/search/explore.js';
import type { Question } from '../../../src/search/question/question.js';
import { runs } from '../../long.js';
import { QUESTION } from '../../search/question.js';
import { inFolder, run, start } from '../run.js';

/** A search of some seconds, on one thread. */
const LONG = ['explore', '--structure', '2/2 twill', '--lengths', '20', '--show', '2', '--workers', '1'];
const PLACE = join('gallery', '2-2-twill');
const QUICK_CLOCK = new URL('quick-clock.mjs', import.meta.url).href;

/** Starts the search, its progress kept all the time. */
const startLong = (folder: string, ...more: string[]): ChildProcess =>
  start([...LONG, ...more], folder, ['--import', QUICK_CLOCK]);

const children = new Set<ChildProcess>();
afterEach(() => {
  for (const child of children) child.kill('SIGKILL');
  children.clear();
});

/** What a child says and how it ends. */
async function ended(child: ChildProcess): Promise<{ code: number | null; out: string; err: string }> {
  children.add(child);
  const said = { out: '', err: '' };
  child.stdout!.on('data', (text: Buffer) => {
    said.out += text;
  });
  child.stderr!.on('data', (text: Buffer) => {
    said.err += text;
  });
  const [code] = (await once(child, 'close')) as [number | null];
  return { code, ...said };
}

/** Waits until something is so. */
async function until(so: () => boolean, child: ChildProcess): Promise<void> {
  while (!so()) {
    if (child.exitCode !== null) throw new Error('it was over too soon');
    await setTimeout(5);
  }
}

function filesIn(folder: string): Record<string, string> {
  const names = readdirSync(folder, { recursive: true }) as string[];
  const files = names.filter((name) => statSync(join(folder, name)).isFile()).sort();
  return Object.fromEntries(files.map((name) => [name, readFileSync(join(folder, name)).toString('base64')]));
}

describe('killed for good', () => {
  it('goes on to the same gallery, byte for byte, and leaves nothing else', () =>
    inFolder(async (folder) => {
      const whole = join(folder, 'whole');
      expect((await ended(startLong(folder, '--out', whole))).code).toBe(0);
      const progress = join(folder, `${PLACE}.progress`);
      const first = startLong(folder);
      const firstEnded = ended(first);
      await until(() => existsSync(progress), first);
      first.kill('SIGKILL');
      await firstEnded;
      const last = await ended(startLong(folder, '--resume'));
      expect(last.code).toBe(0);
      expect(last.err).toMatch(/2-2-twill\.progress: goes on after \d+ finished pieces of work/);
      expect(filesIn(join(folder, PLACE))).toEqual(filesIn(whole));
      expect(readdirSync(join(folder, 'gallery'))).toEqual(['2-2-twill']);
    }));

  const question: Question = { ...QUESTION, lengths: [2, 3, 4, 5, 6, 7, 8], show: 3 };
  it('twice, at any piece of work, on two threads', () =>
    inFolder(async (folder) => {
      const script = fileURLToPath(new URL('killed.mjs', import.meta.url));
      const begin = (...words: string[]): ChildProcess =>
        spawn(process.execPath, [script, JSON.stringify(question), ...words], { stdio: ['ignore', 'pipe', 'pipe'] });
      const undisturbed = JSON.stringify(await explore(question));
      const chance = seedrandom.alea('pieces of work');
      let killed = 0;
      for (let trial = 0; trial < runs(3, 40); trial++) {
        const path = join(folder, `${trial}.progress`);
        for (const words of [[path], [path, 'resume']]) {
          const pieces = 1 + Math.floor(chance() * 2);
          const child = begin(...words);
          let recorded = 0;
          child.stderr!.on('data', (text: Buffer) => {
            recorded += String(text).split('recorded').length - 1;
            if (recorded >= pieces) child.kill('SIGKILL');
          });
          if ((await ended(child)).code === null) killed++;
        }
        expect((await ended(begin(path, 'resume'))).out).toBe(undisturbed);
      }
      expect(killed).toBeGreaterThan(runs(3, 40));
    }));
});

describe('interrupted', () => {
  it('once, it finishes with what is found, beside the whole gallery’s place, and can go on', () =>
    inFolder(async (folder) => {
      // The first candidates of all may be fine textures: they are let in, so that something is found at once.
      const child = startLong(folder, '--limits', 'contrast 0');
      const over = ended(child);
      await until(() => existsSync(join(folder, `${PLACE}.progress`)), child);
      child.kill('SIGINT');
      const { code, out, err } = await over;
      expect(code).toBe(130);
      expect(out).toMatch(
        /^[\d,]+ candidates \(stopped before the end\): (?:.*\n)+Open gallery\/2-2-twill-partial\/index\.html\nKeep what/,
      );
      expect(err).toContain('shedlight: finishing with what is found; once more stops at once\n');
      expect(err).toMatch(/this is a part of the answer; the same command with --resume goes on to the whole\n$/);
      expect(readdirSync(join(folder, 'gallery')).sort()).toEqual(['2-2-twill-partial', '2-2-twill.progress']);
      const list = readFileSync(join(folder, `${PLACE}-partial`, 'gallery.json'), 'utf8');
      expect(JSON.parse(list).counts).toMatchObject({ exhaustive: false, stopped: true });
      expect(readFileSync(join(folder, `${PLACE}-partial`, 'index.html'), 'utf8')).toContain('stopped before its end');
    }));

  it('twice, it stops at once, and no gallery is written', () =>
    inFolder(async (folder) => {
      const child = startLong(folder);
      const over = ended(child);
      let err = '';
      child.stderr!.on('data', (text: Buffer) => {
        err += text;
        if (String(text).includes('once more')) child.kill('SIGINT');
      });
      await until(() => existsSync(join(folder, `${PLACE}.progress`)), child);
      child.kill('SIGINT');
      expect(await over).toMatchObject({ code: 130, out: '' });
      expect(err).toMatch(/shedlight: stopped; no gallery was written\n$/);
      expect(Object.keys(filesIn(folder)).filter((name) => !name.endsWith('.progress'))).toEqual([]);
    }));
});

describe('in parts', () => {
  const asked = ['explore', '--structure', '2/2 twill', '--lengths', '2-12', '--show', '4', '--quiet'];
  it('merged in any order it is the gallery of one run', () =>
    inFolder(async (folder) => {
      const [whole, out] = [join(folder, 'whole'), join(folder, 'out')];
      await run(...asked, '--out', whole);
      for (const part of [3, 1, 2]) {
        const ran = await run(...asked, '--out', `${out}/`, '--shard', `${part}/3`);
        expect(ran).toEqual({
          code: 0,
          err: '',
          out:
            `Part ${part} of 3 is done: ${out}.shard-${part}-of-3\n` +
            `When all are: shedlight explore --merge ${out}.shard-*-of-3\n`,
        });
      }
      const parts = [2, 3, 1].map((part) => `${out}.shard-${part}-of-3`);
      const merged = await run('explore', '--quiet', '--merge', ...parts);
      expect([merged.code, merged.out]).toEqual([0, expect.stringContaining(`Open ${join(out, 'index.html')}`)]);
      expect(filesIn(out)).toEqual(filesIn(whole));
      const other = await run(...asked, '--show', '5', '--merge', ...parts);
      expect([other.code, other.err]).toEqual([2, expect.stringContaining('than asked (different: show)')]);
    }));

  it.each([
    [['--shard', '4/3'], '--shard: found “4/3”; expected a part and how many there are, such as 2/4'],
    [['--shard', 'one'], '--shard: found “one”; expected a part and how many there are, such as 2/4'],
    [['--shard', '1/2', '--merge', 'x'], '--merge: found --shard beside it; expected one or the other'],
    [['--merge', '/nowhere/x'], '/nowhere/x: found no such file; expected the progress of a search'],
  ])('refuses %j', async (words, message) => {
    expect(await run(...asked, ...words)).toEqual({ code: 2, out: '', err: `shedlight: ${message}\n` });
  });
});
