import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { emptyPage } from '../../../src/gallery/html/page-html.js';
import { pageScript } from '../../../src/gallery/html/page-script.js';
import { inFolder, run } from '../run.js';

describe('page', () => {
  it('writes the page in which questions are asked', () =>
    inFolder(async (folder) => {
      const out = join(folder, 'ask.html');
      expect(await run('page', '--out', out)).toEqual({ code: 0, out: `Open ${out}\n`, err: '' });
      expect(readFileSync(out, 'utf8')).toBe(emptyPage(pageScript()));
    }));

  it('refuses another ending, and leaves the file that is there', () =>
    inFolder(async (folder) => {
      const out = join(folder, 'ask.txt');
      writeFileSync(out, 'mine');
      const { code, err } = await run('page', '--out', out);
      expect([code, err]).toEqual([2, `shedlight: ${out}: found another ending; expected .html\n`]);
      expect(readFileSync(out, 'utf8')).toBe('mine');
    }));
});
