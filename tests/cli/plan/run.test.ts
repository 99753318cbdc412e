import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PassThrough } from 'node:stream';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { runDeal } from '../../../src/cli/deal/run.js';
import { runKeep } from '../../../src/cli/keep/run.js';
import { runPlan } from '../../../src/cli/plan/run.js';
import type { Io } from '../../../src/cli/shell/io.js';
import { parseShortlist, shortlistText } from '../../../src/formats/shortlist.js';
import { kept, twelve } from '../../plan/cloths.js';
import { readPdf } from '../../plan/pdf-text.js';
import { run as ran } from '../run.js';

let folder = '';
const inside = (name: string): string => join(folder, name);
const three = [
  kept('2/2 twill', { warp: 'DDLDL', times: 4 }),
  kept('2/2 twill', { warp: 'DDLDL', weft: 'L', times: 4 }),
  kept('summer and winter', { warp: 'DLDDL', by: 'unit' }),
];

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'shedlight-plan-'));
  writeFileSync(inside('saved.json'), shortlistText(three));
  writeFileSync(inside('twelve.json'), shortlistText(twelve()));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Runs a command with pipes for its streams. */
async function run(command: (io: Io) => Promise<number>): Promise<{ code: number; out: string; err: string }> {
  const [stdout, stderr] = [new PassThrough(), new PassThrough()];
  const code = await command({ stdout, stderr } as unknown as Io);
  const read = (stream: PassThrough): string => (stream.read() as Buffer | null)?.toString('utf8') ?? '';
  return { code, out: read(stdout), err: read(stderr) };
}

describe('keep', () => {
  test('takes codes from a saved list, marks them, and adds without losing marks', async () => {
    const out = inside('kept.json');
    const codes = three.map(({ code }) => code);
    const first = await run((io) =>
      runKeep({ gallery: inside('saved.json'), codes: [codes[1]!], out, stars: '4', note: 'for the runner' }, io),
    );
    expect(first.out).toContain(`${codes[1]}  ****   2/2 twill`);
    expect(first.out).toContain('1 added, 1 in all');
    const second = await run((io) => runKeep({ gallery: inside('saved.json'), codes: [], out }, io));
    expect(second.out).toContain('2 added, 3 in all');
    const list = parseShortlist(readFileSync(out, 'utf8'), out);
    expect(list.map(({ code, stars }) => [code, stars])).toEqual([
      [codes[1], 4],
      [codes[0], 0],
      [codes[2], 0],
    ]);
    expect(list[0]!.note).toBe('for the runner');
  });

  test('says what is wrong in one sentence', async () => {
    const keep = (given: object) => run((io) => runKeep({ gallery: inside('saved.json'), codes: [], ...given }, io));
    await expect(keep({ codes: ['zzzz'] })).rejects.toThrow('found no cloth zzzz in it');
    await expect(keep({ gallery: inside('none.json') })).rejects.toThrow('found no such file');
    await expect(keep({ stars: '6', out: inside('x.json') })).rejects.toThrow('--stars: found “6”');
  });
});

describe('plan', () => {
  test('a warp that the loom cannot weave: exit 1, what would help, none of its yarn ordered', async () => {
    const narrow = await run((io) =>
      runPlan(
        {
          shortlist: inside('saved.json'),
          flags: { 'yarn size': '8/2 cotton', loom: '4 shafts, 60 heddles' },
          out: inside('unfit'),
        },
        io,
      ),
    );
    expect(narrow.code).toBe(1);
    expect(narrow.err).toMatch(
      /warp 1: not on this loom: needs 100 heddles on shaft 1.*its yarn is not ordered. What would help: it fits on 240 ends: a width of 12 in;/,
    );
    expect(narrow.out).not.toMatch(/^yarn/m);
    const treadles = await run((io) =>
      runPlan(
        {
          shortlist: inside('saved.json'),
          flags: { 'yarn size': '8/2 cotton', loom: '2 treadles' },
          out: inside('unfit'),
        },
        io,
      ),
    );
    expect(treadles.code).toBe(1);
    expect(treadles.err).toContain('a table loom would weave it, lifted shaft by shaft');
  });

  test('writes plan, sheets and a form; brings them up to date; never touches what was filled in', async () => {
    const given = {
      shortlist: inside('saved.json'),
      flags: { 'yarn size': '8/2 cotton', width: '10 in' },
      out: inside('plan'),
    };
    const first = await run((io) => runPlan(given, io));
    expect(first.code).toBe(0);
    expect(first.out).toMatch(
      /^warp 1: 2\d\d ends \(D 12\d, L 80\), 10(\.\d)? in \(\S+ cm\) wide in the reed; wind 2 yd/,
    );
    expect(first.out).not.toContain('weft 0 yd');
    expect(readdirSync(inside('plan')).sort()).toEqual([
      '.shedlight.json',
      'album.pdf',
      'cloths.csv',
      'overview.pdf',
      'plan.json',
      'results.yaml',
      'sheets.pdf',
    ]);
    expect(readPdf(readFileSync(inside('plan/sheets.pdf')))).toHaveLength(6);
    const before = readFileSync(inside('plan/sheets.pdf'));
    writeFileSync(
      inside('plan/results.yaml'),
      `results:\n  - code: ${three[0]!.code}\n    warp used: 61.6 in\n    off the loom: 56.7 in\n`,
    );
    const second = await run((io) => runPlan(given, io));
    expect(second.err).toContain('results.yaml: your words are kept, blanks for new cloths are at its end');
    expect((await run((io) => runPlan(given, io))).err).toContain('results.yaml: left as it is');
    expect(readFileSync(inside('plan/results.yaml'), 'utf8')).toContain('61.6 in');
    expect(readFileSync(inside('plan/sheets.pdf')).equals(before)).toBe(true);
    const third = await run((io) =>
      runPlan({ ...given, learnt: inside('plan/results.yaml'), out: inside('second') }, io),
    );
    const own = `results.yaml: ${three[0]!.code}: take-up 8 % (found in this cloth)\n`;
    expect(third.err).toContain(own);
    expect(third.err).toContain(`results.yaml: ${three[2]!.code}: no result of it or its structure: as planned\n`);
    const more = { ...given, shortlist: inside('twelve.json') };
    const grown = await run((io) => runPlan(more, io));
    expect(grown.err).toContain('results.yaml: your words are kept, blanks for new cloths are at its end');
    const form = readFileSync(inside('plan/results.yaml'), 'utf8');
    for (const { code } of [...three, ...twelve()]) expect(form.split(`code: ${code}`)).toHaveLength(2);
    const { warps } = JSON.parse(readFileSync(inside('second/plan.json'), 'utf8'));
    expect(warps[0].pieces[0].learnt.takeUp.codes).toEqual([three[0]!.code]);
  });

  test('refuses a folder with other things in it', async () => {
    const given = { shortlist: inside('saved.json'), flags: {}, out: folder };
    await expect(run((io) => runPlan(given, io))).rejects.toThrow(/other things in it \(“.*”\); expected a plan/);
  });

  test.each([
    [{ gamp: '5 by' }, '--gamp: found “5 by”; expected warp sections by weft sections, 1 to 100, such as "5 by 5"'],
    [{ flags: { separator: '2' } }, '--separator: found it without --gamp; expected it with --gamp alone'],
    [{ gamp: true as const, flags: { mirror: 'single' } }, 'mirror: found it beside --gamp; expected none'],
    [{ gamp: true as const, flags: { border: '8 D' } }, 'border: found it beside --gamp; expected none'],
    [{ flags: { 'yarn size': 'Q 8/2 cotton' } }, 'yarn size: found “Q”; expected yarns that are in the cloths: D L'],
  ])('what does not go together is refused: %j', async (given, said) => {
    const whole = { shortlist: inside('saved.json'), flags: {}, out: inside('never'), ...given };
    await expect(run((io) => runPlan(whole, io))).rejects.toThrow(said);
  });

  test('a gamp of all', async () => {
    writeFileSync(inside('twills.json'), shortlistText(three.slice(0, 2)));
    const given = {
      shortlist: inside('twills.json'),
      flags: { width: '10 in' },
      gamp: true as const,
      out: inside('gamp'),
    };
    const { out } = await run((io) => runPlan(given, io));
    expect(out).toContain('gamp: 2 squares, 2 different cloths (no choice weaves more)');
    const plan = JSON.parse(readFileSync(inside('gamp/plan.json'), 'utf8'));
    expect(plan.gamp.squares).toHaveLength(2);
  });
});

test('a warp on the loom, from the question to the sheets: weft and picks alone; a deal winds a warp for each', async () => {
  writeFileSync(inside('loom.yaml'), 'threading: 1-4\ntie-up: [1 2, 2 3, 3 4, 4 1]\ntreadling: 1-4\nwarp: D4 L4\n');
  const [gallery, list] = [inside('there'), inside('there.json')];
  await ran('explore', '--on-the-loom', inside('loom.yaml'), '--lengths', '2', '--show', '2', '--out', gallery);
  const found = JSON.parse(readFileSync(join(gallery, 'gallery.json'), 'utf8')).candidates;
  const keep = await ran('keep', gallery, ...found.map(({ code }: { code: string }) => code), '--out', list);
  expect(keep.out).toContain('Plan the weft for the warp on the loom: ');
  const { out } = await ran('plan', list, '--out', inside('there-plan'));
  expect(out).toContain(
    'warp 1: on the loom, so nothing to wind, thread or sley; 36.1 in (91.7 cm) of it must be left',
  );
  expect(out).toMatch(/^yarn D dark: .* reserve; weft [\d.]+ yd$/m);
  const plan = JSON.parse(readFileSync(inside('there-plan/plan.json'), 'utf8'));
  expect(plan.warps[0]).toMatchObject({ onTheLoom: true, wound: [], pieces: [{ onTheLoom: true }, {}] });
  const words = readPdf(readFileSync(inside('there-plan/sheets.pdf'))).flatMap(({ lines }) =>
    lines.map(({ text }) => text),
  );
  const said = words.join(' ');
  expect(said).toContain('on the loom: nothing to wind, thread or sley; 20 in (50.8 cm) wide as planned, 400 ends');
  for (const work of ['winding warp', 'heddles', 'reed', 'threading, end 1', 'wind:']) expect(said).not.toContain(work);
  // The label of no chain: contact sheet and yarn order alone.
  expect(readPdf(readFileSync(inside('there-plan/overview.pdf')))).toHaveLength(2);
  await expect(
    run((io) => runPlan({ shortlist: list, flags: {}, gamp: true, out: inside('never') }, io)),
  ).rejects.toThrow('whose warp is on the loom');
  const deal = await ran('deal', list, '--weavers', '2', '--out', inside('there-deal'));
  expect(deal.err).toContain('2 cloths of a warp on the loom: each weaver winds one of their own');
  expect(deal.out).toMatch(/^yarn D dark: .* reserve; warp [\d.]+ yd, weft/m);
});

describe('deal', () => {
  test('by number: letters, a sheet for each, contact sheet and yarn order', async () => {
    const given = {
      shortlist: inside('twelve.json'),
      flags: { 'yarn size': '8/2 cotton', width: '6 in' },
      weavers: '3',
      out: inside('deal'),
    };
    const { out } = await run((io) => runDeal(given, io));
    expect(out).toMatch(/^A: \w{8} summer and winter/);
    expect(out.match(/^spare: /gm)).toHaveLength(3);
    expect(out).not.toContain('nearly alike');
    const deal = JSON.parse(readFileSync(inside('deal/deal.json'), 'utf8'));
    expect(deal).toMatchObject({ format: 'shedlight-deal', version: 1 });
    const pages = readPdf(readFileSync(inside('deal/sheets.pdf')));
    expect(pages).toHaveLength(6);
    deal.shares.forEach((share: { weaver: string; code: string; sheet: number }, at: number) => {
      const words = pages[at * 2]!.lines.map((line) => line.text);
      expect(words).toContain(`weaver ${share.weaver}`);
      expect(words).toContain(share.code);
      expect(words).toContain(`sheet ${share.sheet}, page 1`);
    });
    // A contact sheet, the yarn order, and labels for two chains of each warp.
    expect(readPdf(readFileSync(inside('deal/teacher.pdf')))).toHaveLength(3);
    expect(readPdf(readFileSync(inside('deal/album.pdf')))).toHaveLength(1);
    expect(readFileSync(inside('deal/cloths.csv'), 'utf8')).toMatch(/^number,weaver,code/);
  });

  test('says who gets cloths that are nearly alike, and what would set them apart', async () => {
    const given = { shortlist: inside('twelve.json'), flags: { width: '6 in' }, weavers: '12', out: inside('deal12') };
    const { out } = await run((io) => runDeal(given, io));
    expect(out).toMatch(
      /^nearly alike: \w and \w \(0\.\d\d\).*; a shortlist of more kinds would set them apart: explore --show "one of each kind"$/m,
    );
  });

  test('by a list of weavers with their looms', async () => {
    writeFileSync(inside('group.yaml'), 'weavers:\n  - { name: A, loom: table }\n  - { name: B, loom: 4 treadles }\n');
    const given = {
      shortlist: inside('saved.json'),
      flags: { width: '6 in' },
      weavers: inside('group.yaml'),
      out: inside('deal2'),
    };
    const { out } = await run((io) => runDeal(given, io));
    expect(out).toMatch(/^A: .*\nB: /);
    const [first] = readPdf(readFileSync(inside('deal2/sheets.pdf')));
    expect(first!.lines.map((line) => line.text).join(' ')).toContain('lift plan, marked = shaft up');
    await expect(run((io) => runDeal({ ...given, weavers: '0' }, io))).rejects.toThrow('--weavers: found “0”');
  });
});
