import { existsSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { waitInWords } from '../../../src/cli/explore/words.js';
import { inFolder, run } from '../run.js';

describe('explore', () => {
  it('writes a gallery beside the question and says which file to open', () =>
    inFolder(async (folder) => {
      const file = join(folder, 'tide-line.yaml');
      writeFileSync(file, 'structure: 2/2 twill\nlengths: 2-6\nshow: 3\n');
      const { code, out, err } = await run('explore', file);
      expect(code).toBe(0);
      const lines = out.trim().split('\n');
      expect(lines).toHaveLength(5);
      expect(lines[0]).toMatch(/candidates \(all tried\): \d+ different cloths, .*; 3 shown\.$/);
      expect(lines[1]).toMatch(/^Best: [0-9a-z]{8} 2\/2 twill, /);
      expect(lines[3]).toBe(`Open ${join(folder, 'tide-line', 'index.html')}`);
      // The last line is a command that keeps the best cloths as it stands.
      const command = /: shedlight (keep \S+ [0-9a-z]{8} [0-9a-z]{8})$/.exec(lines[4]!)![1]!;
      const kept = await run(...command.split(' '), '--out', join(folder, 'kept.json'));
      expect([kept.code, kept.err]).toEqual([0, '']);
      expect(kept.out).toContain(`Plan the warp: shedlight plan ${join(folder, 'kept.json')}`);
      // Progress is for a terminal alone.
      expect(err).toBe('');
      expect(readdirSync(folder).sort()).toEqual(['kept.json', 'tide-line', 'tide-line.yaml']);
      expect(existsSync(join(folder, 'tide-line', 'gallery.json'))).toBe(true);
    }));

  it.each([
    ['my.yaml', 'threading: 1-4, 3-2\n', 'found a draft; expected a question. For a draft write --draft '],
    ['my.wif', '[WIF]\n', 'found a draft; expected a question. For a draft write --draft '],
    [
      'crackle',
      undefined,
      'found the name of a structure; expected a question. For the name of a structure write --structure ',
    ],
  ])('names the flag where %s stands in place of a question', (name, text, words) =>
    inFolder(async (folder) => {
      const file = text === undefined ? name : join(folder, name);
      if (text !== undefined) writeFileSync(file, text);
      const { code, err } = await run('explore', file);
      expect([code, err]).toEqual([2, `shedlight: ${file}: ${words}${file}\n`]);
    }),
  );

  it('is silent when quiet, and speaks JSON', () =>
    inFolder(async (folder) => {
      const out = join(folder, 'out');
      const ran = await run(
        'explore',
        '--structure',
        '2/2 twill',
        '--orders',
        'D4 L4',
        '--out',
        out,
        '--json',
        '--quiet',
      );
      expect([ran.code, ran.err]).toEqual([0, '']);
      expect(JSON.parse(ran.out)).toMatchObject({
        format: 'shedlight-explore',
        counts: { exhaustive: true },
        best: { code: expect.stringMatching(/^[0-9a-z]{8}$/) },
        index: join(out, 'index.html'),
      });
    }));

  it('says that nothing fits with code 1, and why, and writes nothing', () =>
    inFolder(async (folder) => {
      const out = join(folder, 'out');
      const ran = await run('explore', '--structure', "monk's belt", '--limits', 'float 1', '--out', out, '--quiet');
      expect([ran.code, ran.out]).toEqual([1, '']);
      expect(ran.err).toMatch(
        /^shedlight: nothing fits the question\. .* 0 different cloths, \d+ with floats too long; 0 shown\. The cloth nearest to the limit has a float of .*\.\n$/,
      );
      expect(existsSync(out)).toBe(false);
    }));
});

it('says beforehand how long it takes to measure every candidate, where that is minutes', () => {
  const waitOf = (way: 'scored' | 'bounded', seconds: number) => waitInWords({ way, count: 3_600_000, seconds }, 2);
  // Twice as long as usual, on two threads.
  expect(waitOf('scored', 180)).toBe('3,600,000 candidates are measured one by one, about 3 minutes');
  expect(waitOf('scored', 59)).toBeUndefined();
  expect(waitOf('bounded', 180)).toBeUndefined();
});
