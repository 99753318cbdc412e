import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { structures } from '../../../src/structure/catalogue/catalogue.js';
import { inFolder, run } from '../run.js';

describe('structures', () => {
  it('lists every structure with shafts, blocks, unit, tabby, balance, floats and the colour order that acts', async () => {
    const { code, out } = await run('structures');
    expect(code).toBe(0);
    expect(
      out
        .trim()
        .split('\n')
        .filter((line) => !line.startsWith(' ')),
    ).toEqual(structures.map(({ name }) => name));
    expect(out).toContain(
      '  4 shafts, 4 blocks (more on more shafts), unit 4 to 5 ends; tabby 1,3 / 2,4; balanced ground under a pattern weft\n',
    );
    expect(out).toContain('  4 shafts, 1 block, unit 4 ends; tabby 1,3 / 2,4; weft-faced\n  floats: Weft 3;');
    expect(out).toContain('  4 shafts, 3 blocks, unit 8 ends; no tabby; balanced\n');
  });

  it('draws one on a sheet', () =>
    inFolder(async (folder) => {
      const file = join(folder, 'huck.png');
      expect((await run('structures', 'huck', '--out', file)).out).toContain(`Open ${file}`);
      // A4 is 210 mm wide, at 200 points to the inch.
      expect(await sharp(file).metadata()).toMatchObject({ width: 1654, density: 200 });
      const turned = join(folder, 'turned.png');
      expect((await run('structures', 'huck', '--out', turned, '--seen', 'right, top')).code).toBe(0);
      expect(readFileSync(turned).equals(readFileSync(file))).toBe(false);
      expect((await run('structures', 'huck', '--out', turned, '--seen', 'up')).err).toContain('--seen: found “up”');
      expect((await run('structures', 'huck', '--seen', 'top')).err).toContain('--seen: found it without --out');
      expect((await run('structures', '--out', file)).err).toContain('--out: found it without a structure');
      expect((await run('structures', 'huck', '--out', 'a.svg')).err).toContain('expected a name that ends in .png');
    }));

  it('tells of one: units, tie-up, treadling, floats', async () => {
    const { out } = await run('structures', 'kuvikas');
    expect(out).toMatch(/^summer and winter, also /);
    expect(out).toContain('    A         1-3-2-3');
    expect(out).toMatch(/floats +.*3/);
  });

  it('tells of one with more blocks, as many as shafts hold', async () => {
    const { out } = await run('structures', 'turned twill', '--blocks', '4');
    expect(out).toContain('  shafts      16');
    expect(out).toContain('    D         13-14-15-16');
    const wrong = async (...args: string[]): Promise<string> => (await run('structures', ...args)).err;
    expect(await wrong('turned twill', '--blocks', '9')).toContain(
      '--blocks: found 9 blocks of turned twill, which take 36 shafts; expected 8 at most, on 32 shafts',
    );
    expect(await wrong('huck', '--blocks', 'two')).toContain('--blocks: found “two”; expected blocks from 1 to 26');
    expect(await wrong('turned twill', '--shafts', '3')).toContain('--shafts: found 3; expected 8 at least');
    expect(await wrong('turned twill', '--shafts', '8', '--blocks', '3')).toContain(
      '--blocks: found 3 blocks of turned twill, which take 12 shafts; the loom has 8, enough for 2 blocks',
    );
    expect(await wrong('--shafts', '33')).toContain('--shafts: found “33”; expected shafts from 1 to 32');
    expect((await run('structures', 'turned twill', '--shafts', '19')).out).toContain('  shafts      16');
    const five = (await run('structures', '--shafts', '5')).out;
    expect(five).toContain('summer and winter\n  4 shafts, 2 blocks (up to 3 on 5 shafts)');
    expect(five).toContain('overshot\n');
    expect(five).not.toContain('turned twill of three');
    expect(await wrong('--blocks', '3')).toContain('--blocks: found it without a structure');
  });

  it('tells it as JSON', async () => {
    const one = JSON.parse((await run('structures', 'plain', '--json')).out);
    expect(one).toMatchObject({ format: 'shedlight-structure', name: 'plain weave', tieUp: { a: [1], b: [2] } });
    const all = JSON.parse((await run('structures', '--json')).out);
    expect(all.structures).toHaveLength(structures.map(({ name }) => name).length);
  });

  it('names the nearest where there is none of that name', async () => {
    const { code, err } = await run('structures', 'crakle');
    expect(code).toBe(2);
    expect(err).toMatch(/^shedlight: no structure “crakle”; the nearest are “crackle”, /);
  });
});
