import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { inFolder, run } from '../../cli/run.js';

const BELT = ['--structure', 'monk’s belt', '--limits', 'float 1/2 in'];
const explored = (...flags: string[]) =>
  inFolder((folder) => run('explore', '--orders', 'DLDDL', ...flags, '--out', join(folder, 'gallery')));

describe('where little or nothing is left, it is said what to change', () => {
  it('for floats that are too long', async () => {
    const none = await explored(...BELT, '--by', 'block', '--times', '4,8');
    expect(none).toMatchObject({ code: 1, out: '' });
    expect(none.err).toContain(
      'a float of 16 ends = 0.80 in, over the limit of 0.5 in; within the limit would be a smaller size (×2)',
    );
    const one = await explored(...BELT, '--by', 'block', '--times', '2,4,8');
    expect(one.code).toBe(0);
    expect(one.out).toMatch(/\nThe cloth nearest to the limit has a float of 16 ends = 0\.80 in,.*\nOpen /);
    expect((await explored(...BELT, '--by', 'block', '--times', '1,2,4')).out).not.toContain('The shortest');
    expect((await explored(...BELT, '--by', 'block', '--times', '2,4,8', '--json')).out).toContain(
      '"remedy": "The cloth',
    );
  });

  it('for whatever else sets aside all there is', async () => {
    const changed = async (...flags: string[]) => (await explored('--structure', '2/2 twill', ...flags)).err;
    expect(await changed('--loom', 'rising, 2 shafts')).toContain(
      'a wider limit may allow some; the limits are repeat 400, shafts 2.',
    );
    expect(await changed('--limits', 'repeat 3')).toContain('a wider limit may allow some; the limits are repeat 3.');
    expect(await changed('--orders', 'DD', '--weft', 'D')).toContain('weft own may show a pattern');
  });

  it('and no other sett for a warp that is sleyed', () =>
    inFolder(async (folder) => {
      const file = join(folder, 'own.yaml');
      writeFileSync(file, 'threading: 1-4 4 4 4 4 4 4 4 4\ntie-up: [1 2, 2 3, 3 4, 4 1]\ntreadling: 1-4\n');
      const said = async (flag: string) => (await explored(flag, file, '--limits', 'float 3/8 in')).err;
      expect(await said('--draft')).toContain('within the limit would be a closer sett in finer yarn');
      expect(await said('--on-the-loom')).toContain('; only a longer limit allows it.');
    }));

  it('for a motif enlarged, under the way that makes too long floats', async () => {
    const { out } = await run('enlarge', 'DLDDL', ...BELT);
    expect(out.match(/within the limit would be a smaller size \(×2\)/g)).toHaveLength(1);
    expect(out).toMatch(/float 32, 1\.60 in.*\n {2}The cloth nearest to the limit has a float of 16 ends/);
    // Ways whose threads lie in the same blocks are told once.
    const twill = await run('enlarge', 'DDL', '--structure', '1/3 twill', '--limits', 'float 2');
    expect(twill.out.match(/2\/2 twill \(2 threads\)/g)).toHaveLength(1);
  });
});
