import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { afterAll, describe, expect, it } from 'vitest';
import { run } from '../run.js';

const folder = mkdtempSync(join(tmpdir(), 'enlarge-'));
afterAll(() => rmSync(folder, { recursive: true }));

const TWILL = ['enlarge', 'D L D D L', '--structure', 'turned twill'];

describe('enlarge', () => {
  it('says every size with its finished width, its float in ends and in length, and what it passes', async () => {
    const { code, out } = await run(...TWILL, '--limits', 'float 2');
    expect(code).toBe(0);
    expect(out).toContain('DLDDL on turned twill');
    expect(out).toContain('less 10 % for shrinkage, as usual for cotton');
    expect(out).toMatch(
      /80 ends +4 units each +3\.60 in \(91\.4 mm\) finished +repeat 80 × 80 +float 3, 0\.15 in; passes 3\/8 in, 1\/2 in; fails 2 threads/,
    );
  });

  it('names the nearest size where one cannot be had', async () => {
    const { out } = await run(
      'enlarge',
      'DLDDL',
      '--structure',
      'M’s and O’s',
      '--shrinkage',
      '12 %',
      '--sett',
      '8 per cm',
    );
    expect(out).toContain('20 ends are not possible: whole units make 40 ends at a time; the nearest is 40');
    expect(out).toContain('less 12 % for shrinkage\n');
    // 40 ends at 8 to the centimetre, less 12 %.
    expect(out).toContain('44.0 mm (1.73 in) finished');
  });

  it('speaks JSON with whole drafts', async () => {
    const { out } = await run(...TWILL, '--sizes', '20', '--json');
    const found = JSON.parse(out);
    expect(found).toMatchObject({ format: 'shedlight-enlarge', order: 'DLDDL', shrinkage: 0.1, refused: [] });
    const block = found.sizes.find((size: { way: string }) => size.way === 'block');
    expect(block).toMatchObject({ ends: 20, picks: 20, repeat: { ends: 20, picks: 20 }, passes: { '3/8 in': true } });
    expect(block.draft.threading.flat().join('')).toBe('12345678123412345678');
    expect(block.draft.warp).toBe('DDDDLLLLDDDDDDDDLLLL');
  });

  it('draws all sizes on one sheet at one scale', async () => {
    const [png, svg] = [join(folder, 'a.png'), join(folder, 'a.svg')];
    expect((await run(...TWILL, '--out', png)).code).toBe(0);
    // A4 is 210 mm wide, at 200 points to the inch.
    expect(await sharp(png).metadata()).toMatchObject({ width: 1654, density: 200 });
    expect((await run(...TWILL, '--sizes', '20', '--out', svg)).code).toBe(0);
    const text = readFileSync(svg, 'utf8');
    expect(text).toMatch(/^<svg/);
    expect(text.match(/<image /g)).toHaveLength(7);
    expect(await sharp(Buffer.from(text)).metadata()).toMatchObject({ format: 'svg' });
  });

  it.each([
    [['enlarge', 'DX', '--structure', 'plain'], 'found “X”'],
    [[...TWILL, '--sizes', 'big'], '--sizes: found “big”; expected ends of the motif up to 1000, as 20, 40, 80'],
    [[...TWILL, '--shrinkage', '10'], '--shrinkage: found “10”; expected per cent below 90'],
    [[...TWILL, '--weft', 'own'], '--weft: found “own”'],
    [[...TWILL, '--out', 'a.gif'], '--out: found “a.gif”; expected a name that ends in .png (a sheet of pictures)'],
    [
      ['enlarge', 'D,L', '--structure', 'plain'],
      'found D and L, orders of one yarn each; expected orders of two: without the comma, D L is one',
    ],
  ])('refuses %j', async (words, message) => {
    const { code, err } = await run(...words);
    expect([code, err]).toEqual([2, expect.stringContaining(message)]);
  });
});
