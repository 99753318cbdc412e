import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { readDraft } from '../../../src/draft/yaml/read-draft.js';
import { inFolder, run } from '../run.js';

const HOUND = ['draw', '--structure', '2/2 twill', '--warp', 'DDDDLLLL'];

describe('draw', () => {
  // The figures of hound's tooth are those of SCORES.md, Worked figures.
  it('says the figures of hound’s tooth', async () => {
    const { code, out } = await run(...HOUND);
    expect(code).toBe(0);
    expect(out).toContain(
      'half dark; D and L swap when the pattern is shifted; almost half-turn symmetry (88 % of crossings agree)',
    );
    expect(out).toMatch(/contrast +0\.3207: tone 0\.3183, line 0\.0385/);
    expect(out).toMatch(/clear at +2 m; light and dark differ by 37\.1 at 0\.6 m, 24\.5 at 2 m, 10\.3 at 6 m/);
    expect(out).not.toContain('wrong:');
  });

  it('prints a draft that reads back', async () => {
    const { out } = await run(...HOUND);
    const draft = readDraft(out.slice(out.indexOf('threading:')), 'out');
    expect([draft.warp.length, draft.weft.length]).toEqual([8, 8]);
    expect(JSON.parse((await run(...HOUND, '--json')).out)).toMatchObject({
      format: 'shedlight-draw',
      repeat: { ends: 8, picks: 8 },
      draft: { warp: 'DDDDLLLL', weft: 'DDDDLLLL' },
      scores: { planeGroup: 'p1', shiftExchange: true },
      holdsTogether: true,
      wrong: [],
    });
  });

  it('draws it in letters as it is seen, and says from where', async () => {
    const drawn = async (...flags: string[]): Promise<string[]> => {
      const lines = (await run('draw', '--structure', '1/3 twill', '--warp', 'DDL', ...flags)).out.split('\n');
      return lines.slice(lines.findIndex((line) => line.startsWith('End 1 at')));
    };
    const cloth = (lines: readonly string[]): string[] =>
      lines.filter((line) => /^ +\d/.test(line)).map((line) => line.trim().replaceAll(/ +/g, ' '));
    const usual = await drawn();
    expect(usual[0]).toBe('End 1 at the left, the first pick at the bottom, threading above.');
    expect(cloth(usual).at(-1)).toBe('1 1 D #...#...#...');
    const turned = await drawn('--seen', 'top, right, below');
    expect(turned[0]).toBe('End 1 at the right, the first pick at the top, threading below.');
    expect(cloth(turned)[0]).toBe('1 1 D ...#...#...#');
    expect(turned.findIndex((line) => /shaft 1/.test(line))).toBeGreaterThan(
      turned.findIndex((line) => line.includes('treadles')),
    );
    const wide = await run('draw', '--structure', '2/2 twill', '--warp', 'D20 L21');
    expect(wide.out).toContain('The draft is too large to be drawn in letters here: --out draft.svg draws it.');
  });

  it('says what is wrong with a draft, and where', () =>
    inFolder(async (folder) => {
      const file = join(folder, 'draft.yaml');
      // STRUCTURES, section 0: ends 1, 3 with picks 1, 3 lie above the others, two separate layers.
      writeFileSync(file, 'threading: 1 2 3 4\nlift plan: [1, 1 2 3, 3, 1 3 4]\n');
      const layers = await run('draw', file);
      expect(layers.out).toContain(
        'wrong: the cloth does not hold together as one cloth: it lies in 2 layers that lift apart',
      );
      writeFileSync(file, 'threading: 9x1 2\nlift plan: [1, 2]\n');
      const long = await run('draw', file, '--limits', 'float 3/8 in');
      expect(long.out).toContain(
        'wrong: pick 2 floats over 9 ends on the face, from end 1 on, over the limit of 0.375 in',
      );
    }));

  it('keeps the colours of a draft, or lays others on it', () =>
    inFolder(async (folder) => {
      const file = join(folder, 'draft.yaml');
      writeFileSync(
        file,
        'name: mine\nthreading: 1 2\nlift plan: [1, 2]\nwarp: A\nweft: A B\nyarns: { A: red, B: blue }\n',
      );
      expect((await run('draw', file)).out).toMatch(/^mine \(/);
      const laid = JSON.parse((await run('draw', file, '--warp', 'AB', '--weft', 'exchange', '--json')).out);
      expect([laid.draft.warp, laid.draft.weft]).toEqual(['AB', 'BA']);
      const dyed = JSON.parse((await run('draw', file, '--yarns', 'B white, C black', '--json')).out);
      expect(dyed.draft.yarns.map((yarn: { hex: string }) => yarn.hex)).toEqual(['#ff0000', '#ffffff']);
    }));

  it('writes cloth as PNG at its true size, and the draft as SVG', () =>
    inFolder(async (folder) => {
      const [png, svg] = [join(folder, 'a.png'), join(folder, 'a.svg')];
      expect((await run(...HOUND, '--out', png)).code).toBe(0);
      // 60 mm at 254 points to the inch.
      expect(await sharp(png).metadata()).toMatchObject({ width: 600, height: 600, density: 254 });
      expect((await run(...HOUND, '--out', svg)).code).toBe(0);
      expect(readFileSync(svg, 'utf8')).toMatch(/^<svg/);
    }));

  it('says where the longest float lies, and pattern weft and tabby apart', async () => {
    const { out } = await run('draw', '--structure', 'monk’s belt', '--profile', 'AAB', '--warp', 'L', '--weft', 'D');
    expect(out).toContain('pattern weft    4 on the face, 4 on the back');
    expect(out).toContain('tabby weft      1 on the face, 1 on the back');
    expect(out).toMatch(/longest float +pick 1 floats over 4 ends on the face, from end 1 on/);
  });

  it('measures a float over the threads as they lie, thick ones wider than thin', () =>
    inFolder(async (folder) => {
      const file = join(folder, 'thick.yaml');
      const yarns = 'yarns: { T: { colour: red, tex: 400 }, S: { colour: blue, tex: 100 } }';
      writeFileSync(file, `threading: 1 1 2 2\nlift plan: [1, 2]\nwarp: T T S S\nweft: S\n${yarns}\nsett: 20\n`);
      // Two ends of double thickness and two of single take 0.2 in: the pick that goes over the thick ones floats 2/15.
      const over = (await run('draw', file)).out;
      expect(over).toMatch(
        /longest float +pick [12] floats over 2 ends on the (face|back), from end [13] on: 0\.\d+ in as/,
      );
      expect([/from end 1 on: 0\.13 in/, /from end 3 on: 0\.07 in/].some((said) => said.test(over))).toBe(true);
    }));

  it('ties a draft up for a loom, with two feet where treadles are too few, and says what the loom lacks', async () => {
    const bands = ['draw', '--structure', 'turned twill on four shafts', '--warp', 'D', '--weft', 'L'];
    const { out } = await run(...bands, '--loom', 'rising, 6 treadles, heddles 9 9 9 9, 40 ends');
    expect(out).toContain('on the loom (rising): 8 lifts on 6 treadles, with two feet');
    expect(out).toContain('heddles for 40 ends: 10 10 10 10, owned 9 9 9 9');
    expect(out).toContain('wrong: needs 10 heddles on shaft 4, the loom has 9');
    const table = JSON.parse((await run(...bands, '--loom', 'table', '--json')).out);
    expect(table.loom).toMatchObject({ manner: 'lift plan', obstacles: [] });
  });

  it.each([
    [['draw'], 'question: found neither structure nor draft'],
    [
      ['draw', '--structure', 'plain', '--warp', 'DL, DDL'],
      '--warp: found several orders; expected one, such as DLDDL',
    ],
    [['draw', '--structure', 'plain', '--start', '2/1'], '--start: found it without --warp; expected an order'],
    [['draw', '--structure', 'huck', '--by', 'block'], '--by: found “block” without --warp; expected an order'],
    [['draw', '--structure', 'huck', '--profile', 'order'], '--profile: found “order” without --warp; expected'],
    [['draw', '--structure', 'plain', '--warp', 'DX'], '--warp: order “DX”, place 2: found “X”'],
    [['draw', '--structure', 'plain', '--warp', 'DL,DDL'], '--warp: found several orders; expected one, such as DLDDL'],
    [['draw', '--structure', 'plain', '--warp', 'D,L'], '--warp: found D and L, orders of one yarn each'],
    [[...HOUND, '--weft', 'own'], '--weft: found “own”; expected same, exchange, a letter or an order'],
    [[...HOUND, '--times', '1,2'], 'found several ways to draw; expected one structure'],
    [
      [...HOUND, '--out', 'a.jpg'],
      '--out: found “a.jpg”; expected a name that ends in .png (the cloth) or .svg (the draft)',
    ],
    [[...HOUND, '--out', '/nowhere/a.png'], '/nowhere/a.png: found no folder /nowhere; expected one that is there'],
    [
      ['draw', 'a.yaml', '--structure', 'plain'],
      '--structure: found it beside the draft of a file; expected one or the other',
    ],
  ])('refuses %j', async (words, message) => {
    const { code, err } = await run(...words);
    expect([code, err]).toEqual([2, expect.stringContaining(`shedlight: ${message}`)]);
  });
});
