import { existsSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { PassThrough } from 'node:stream';
import { fileURLToPath } from 'node:url';
import { PNG } from 'pngjs';
import { describe, expect, it } from 'vitest';
import { type ConvertArguments, runConvert } from '../../../src/cli/convert/run.js';
import { readWif } from '../../../src/draft/wif/read-wif.js';
import { readDraft } from '../../../src/draft/yaml/read-draft.js';
import { findStructure, weaveOf } from '../../../src/structure/catalogue/catalogue.js';
import { inFolder } from '../run.js';

const fixture = (name: string): string =>
  fileURLToPath(new URL(`../../fixtures/wif/good/${name}.wif`, import.meta.url));
const HOUND = `name: Hound
threading: 1 2 3 4
tie-up: [1 2, 2 3, 3 4, 4 1]
treadling: 1 2 3 4
warp: D4 L4
weft: D4 L4
yarns: { D: "#1f2a44", L: "#efe6d2" }
sett: { ends: 8, picks: 7, per: cm }
`;

async function convert(given: ConvertArguments): Promise<{ out: string; err: string }> {
  const [stdout, stderr] = [new PassThrough(), new PassThrough()];
  const read = (stream: PassThrough): string => (stream.read() as Buffer | null)?.toString('utf8') ?? '';
  await runConvert(given, { stdout, stderr } as unknown as Parameters<typeof runConvert>[1]);
  return { out: read(stdout), err: read(stderr) };
}

/** Writes a file, converts it, and gives what came out and what was said. */
async function through(from: string, content: string | Uint8Array, to: string, flags: Partial<ConvertArguments> = {}) {
  return inFolder(async (folder) => {
    const input = join(folder, from);
    const output = join(folder, to);
    writeFileSync(input, content);
    const said = await convert({ input, output, ...flags });
    expect(said.out).toBe(`${output}\n`);
    return { text: readFileSync(output, 'utf8'), bytes: readFileSync(output), err: said.err };
  });
}

describe('YAML and WIF', () => {
  it('go both ways without loss', async () => {
    const wif = await through('hound.yaml', HOUND, 'hound.wif');
    expect(readWif(wif.bytes).draft).toEqual(readDraft(HOUND, 'hound.yaml'));
    const yaml = await through('hound.wif', wif.bytes, 'again.yaml');
    expect(readDraft(yaml.text, 'again.yaml')).toEqual(readDraft(HOUND, 'hound.yaml'));
    expect((await through('again.yaml', yaml.text, 'hound.wif')).text).toBe(wif.text);
  });

  it('every thread of a WIF file reaches another, one repeat reaches YAML', async () => {
    const file = readFileSync(fixture('23-whole-warp-of-repeats'));
    expect(readWif((await through('a.wif', file, 'b.wif')).bytes, { whole: true }).draft.warp).toHaveLength(400);
    const yaml = await through('a.wif', file, 'b.yaml');
    expect(readDraft(yaml.text, 'b.yaml').warp).toHaveLength(4);
    expect(yaml.err).toContain('note: the 400 ends are 100 repeats of 4');
  });

  it('keeps what it does not know in WIF, and names it where it is left out', async () => {
    const file = readFileSync(fixture('22-symbols-private-and-notes'));
    expect((await through('a.wif', file, 'b.wif')).text).toContain('[PRIVATE HOUSE]\r\nShelf=3\r\n');
    expect((await through('a.wif', file, 'b.yaml')).err).toContain(
      'left out, as .yaml has no place for them: WARP, NOTES',
    );
  });

  it('says where it takes the place of an earlier file', () =>
    inFolder(async (folder) => {
      const [input, output] = [join(folder, 'hound.yaml'), join(folder, 'hound.wif')];
      writeFileSync(input, HOUND);
      expect((await convert({ input, output })).err).toBe('');
      expect((await convert({ input, output })).err).toBe(`note: ${output} was there before; it is written anew\n`);
    }));

  it('writes a lift plan', async () => {
    const { text } = await through('hound.yaml', HOUND, 'hound.wif', { liftPlan: true });
    expect(text).toContain('[LIFTPLAN]\r\n1=1,2\r\n2=2,3\r\n');
    expect(text).not.toContain('[TREADLING]');
  });

  it.each(['08-several-shafts-an-end', '09-lift-plan-only', '21-lists-with-gaps'])(
    '%s: ends on no shaft and on several, picks without a shed and with two feet reach YAML',
    async (name) => {
      const file = readFileSync(fixture(name));
      const plain = await through('a.wif', file, 'b.yaml');
      const { threading, treadling } = readDraft(plain.text, 'b.yaml');
      expect([threading, treadling]).toEqual([readWif(file).draft.threading, readWif(file).draft.treadling]);
      readDraft((await through('a.wif', file, 'b.yaml', { units: true })).text, 'b.yaml');
    },
  );

  it('refuses what a YAML draft cannot hold', async () => {
    const wide = readFileSync(fixture('01-smallest'))
      .toString()
      .replace('Shafts=4', 'Shafts=70')
      .replace('4=4', '4=70');
    await expect(through('a.wif', wide, 'b.yaml')).rejects.toThrow(/a\.wif: as YAML:2:\d+: found shaft 70; expected/);
  });
});

describe('units', () => {
  it('are recognised and written', async () => {
    const { threading } = weaveOf(findStructure('crackle'), [...'AABBCCDD']);
    const { tieUp, treadling } = weaveOf(findStructure('crackle'), [...'AABBCCDD']);
    const yaml = [
      `threading: ${threading.flat().join(' ')}`,
      `tie-up: [${tieUp.map((shafts) => shafts.join(' ')).join(', ')}]`,
      `treadling: ${treadling.flat().join(' ')}`,
    ].join('\n');
    const { text, err } = await through('c.yaml', yaml, 'd.yaml', { units: true });
    expect(err).toContain('note: It is crackle, “overshot manner” (certain)');
    expect(text).toMatch(/^units: 4 5$/m);
    expect(text).toMatch(/^pick kinds: pattern tabby$/m);
  });
});

describe('a draft for print', () => {
  it('has every part, and keeps to the paper', async () => {
    const { text } = await through('hound.yaml', HOUND, 'hound.txt');
    expect(text).toContain('shaft 4 ...4...4');
    expect(text).toContain('warp DDDDLLLL');
    expect(text).toContain('  treadle 4: 4 1');
    expect(text).toMatch(/ 3 {2}3 {11}D \.\.##\.\.##/);
    const wide = await through('a.wif', readFileSync(fixture('24-warp-with-balance')), 'a.txt');
    for (const line of wide.text.split('\n')) expect(line.length).toBeLessThanOrEqual(78);
  });

  it('goes on below where the warp is wider than the paper', async () => {
    const yaml = `threading: 1 2 3 4\ntie-up: [1 2, 3 4]\ntreadling: 1 2\nwarp: D99 L\n`;
    const { text } = await through('w.yaml', yaml, 'w.txt');
    const rows = text.split('\n').filter((line) => line.includes(' warp '));
    expect(rows.map((row) => row.split('warp ')[1]).join('')).toBe(`${'D'.repeat(99)}L`);
    expect(rows.length).toBeGreaterThan(1);
  });
});

describe('the cells of a cloth', () => {
  it('as text', async () => {
    const { text } = await through('cells.txt', '##..\n.##.\n..##\n#..#\n', 'cells.yaml');
    expect(text).toContain('threading: 1 2 3 4\ntie-up: [1 2, 2 3, 3 4, 1 4]\n');
  });

  it('as a picture', async () => {
    const png = new PNG({ width: 4, height: 4 });
    png.data.fill(255);
    for (const at of [0, 1, 4, 5, 10, 11, 14, 15]) png.data.set([0, 0, 0, 255], at * 4);
    const basket = await through('cells.png', PNG.sync.write(png), 'cells.yaml');
    expect(basket.err).toContain('add --dots 2');
    expect(readDraft(basket.text, '').threading).toHaveLength(4);
    const plain = await through('cells.png', PNG.sync.write(png), 'cells.yaml', { dots: '2' });
    expect(readDraft(plain.text, '').threading).toHaveLength(2);
  });
});

describe('what is wrong', () => {
  it.each([
    ['a.doc', 'b.wif', {}, /a\.doc”; expected a draft \(\.yaml, \.wif\)/],
    ['a.yaml', 'b.pdf', {}, /b\.pdf”; expected a name that ends in \.yaml/],
    ['a.yaml', 'b.txt', { liftPlan: true }, /--lift-plan: found it with .*b\.txt/],
    ['a.yaml', 'b.wif', { dots: '2' }, /--dots: found it with .*a\.yaml/],
    ['a.png', 'b.wif', { dots: 'two' }, /--dots: found “two”/],
    ['a.wif', 'b.yaml', {}, /a\.wif: line 1: found “name: Hound” before any section; expected \[WIF\]/],
  ])('%s to %s with %j', async (from, to, flags, message) => {
    await expect(through(from, HOUND, to, flags)).rejects.toThrow(message);
  });

  it.skipIf(!existsSync('/dev/zero'))('reads no more of a file without end than a draft may have', async () => {
    await inFolder(async (folder) => {
      const [input, output] = [join(folder, 'endless.yaml'), join(folder, 'b.wif')];
      symlinkSync('/dev/zero', input);
      await expect(convert({ input, output })).rejects.toThrow('endless.yaml: found more than 1 MB; expected a draft');
    });
  });

  it('leaves no file behind', async () => {
    await inFolder(async (folder) => {
      const output = join(folder, 'nowhere', 'b.wif');
      writeFileSync(join(folder, 'a.yaml'), HOUND);
      await expect(convert({ input: join(folder, 'a.yaml'), output })).rejects.toThrow(/found no folder/);
    });
  });
});
