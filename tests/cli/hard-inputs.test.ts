import { spawnSync } from 'node:child_process';
import {
  cpSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { writeWif } from '../../src/draft/wif/read-wif.js';
import { shortlistText } from '../../src/formats/shortlist.js';
import { readQuestion } from '../../src/search/question/read-question.js';
import { kept } from '../plan/cloths.js';
import { readPdf } from '../plan/pdf-text.js';
import { hardSheet, tied } from '../sheets/warp-sheet/hard-cloths.js';
import { run } from './run.js';

let folder = '';
const at = (name: string): string => join(folder, name);
const put = (name: string, text: string | Uint8Array): string => {
  writeFileSync(at(name), text);
  return at(name);
};
const TWILL = 'threading: 1-4\ntie-up: [1 2, 2 3, 3 4, 4 1]\ntreadling: 1-4\n';
const cloth = kept('2/2 twill', { warp: 'DDLDL' });
const list = shortlistText([cloth]);
/** The shortlist with something else in its one cloth. */
const changed = (change: (cloth: Record<string, unknown> & { draft: Record<string, unknown> }) => void): string => {
  const whole = JSON.parse(list);
  change(whole.candidates[0]);
  return JSON.stringify(whole);
};
/** What a command says of what it will not take. */
const refusal = async (...words: string[]): Promise<string> => {
  const { code, out, err } = await run(...words);
  expect({ code, out }).toEqual({ code: 2, out: '' });
  expect(err.length).toBeLessThan(1200);
  return err;
};

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'shedlight-hard-'));
  put('kept.json', list);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('limits at the door', () => {
  test('names of more letters than can be drawn', async () => {
    const long = put('long.yaml', `name: ${'weave '.repeat(50_000)}\n${TWILL}`);
    expect(await refusal('draw', long, '--out', at('x.png'))).toContain(
      'long.yaml:1:7: found a name of 299999 letters; expected 200 at most',
    );
    const drafted = put('drafted.yaml', `structure: overshot\nname draft: ${'INDIGO '.repeat(30_000)}\n`);
    expect(await refusal('explore', drafted, '--out', at('never'))).toContain(
      '…”: found 180000 letters; expected 200 at most',
    );
    const weavers = put('weavers.yaml', `weavers:\n  - name: ${'A'.repeat(20_000)}\n`);
    expect(await refusal('deal', at('kept.json'), '--weavers', weavers, '--out', at('deal'))).toContain(
      'weavers.yaml:2:11: found a name of 20000 letters; expected 200 at most',
    );
  });

  test('names of files that no disk takes, and links that lead nowhere', async () => {
    symlinkSync('ring', at('ring'));
    const long = 'W'.repeat(10_000);
    const given = (file: string): string[][] => [
      ['explore', file],
      ...['--draft', '--on-the-loom', '--merge'].map((flag) => ['explore', flag, file]),
      ['explore', '--structure', 'plain', '--done', file],
      ['draw', file],
      ['enlarge', 'DL', '--draft', file],
      ['keep', file],
      ['plan', file],
      ['plan', at('kept.json'), file],
      ['plan', at('kept.json'), '--learnt', file],
      ['deal', at('kept.json'), '--weavers', file],
      ['convert', `${file}.yaml`, 'out.wif'],
    ];
    for (const words of given(long)) expect(await refusal(...words)).toContain('…: found a name too long for a file');
    for (const words of given(at('ring')).slice(0, -1)) {
      expect(await refusal(...words)).toContain('ring: found links that lead round in a ring');
    }
    const flags = { draft: long, 'draft text': 'nothing' };
    expect(() => readQuestion({ flags }, () => expect.unreachable())).toThrow(/^W{79}… in the question:1:1: found /);
  });

  test('the title of a WIF file is cut, with a note', async () => {
    const wif = writeWif({ ...cloth.draft, name: 'T'.repeat(3000) }, { version: '0' });
    const { code, err } = await run('draw', put('title.wif', wif), '--out', at('title.png'));
    expect(code).toBe(0);
    expect(err).toContain('title.wif: the title has 3000 letters; the first 200 were kept');
  });

  test.each([
    [
      'setts',
      (c: never) => Object.assign((c as typeof cloth).draft.sett, { ends: 1e6 }),
      'draft.sett.ends: found 1000000; expected 400 at most',
    ],
    [
      'shafts',
      (c: never) => ((c as { draft: { threading: number[] } }).draft.threading[0] = 1024),
      'draft.threading.0: ',
    ],
    [
      'picks',
      (c: never) => ((c as { draft: { treadling: number[] } }).draft.treadling = new Array(65_536).fill(1)),
      'draft.treadling: found a list of 65536; expected 2000 at most',
    ],
  ])('%s of a shortlist that no cloth has', async (name, change, said) => {
    const file = put(`${name}.json`, changed(change as never));
    expect(await refusal('plan', file, '--out', at('never'))).toContain(`${name}.json: candidates.0.${said}`);
  });

  test('lengths that no loom has, and warps of more ends', async () => {
    const plan = (...flags: string[]) => refusal('plan', at('kept.json'), '--out', at('never'), ...flags);
    expect(await plan('--width', '9999 m')).toContain('--width: found “9999 m”; expected 5 m at most');
    expect(await plan('--piece', '9999 m')).toContain('--piece: found “9999 m”; expected 100 m at most');
    expect(await plan('--testing', '101 m')).toContain('--testing: found “101 m”; expected 100 m at most');
    expect(await plan('--width', '4 m', '--sett', '400 per cm')).toContain(
      'found room for 160000 ends in the width; expected 10000 at most',
    );
  });

  test('a tie-up that is too wide for the first page leaves no room for the draft, and says so', async () => {
    const noRoom = 'no room for the draft here: picks are on page 2, tie-up and threading on the pages after';
    const saying = async (words: string, treadles: number): Promise<number[]> =>
      readPdf(await hardSheet({ cloth: () => tied(treadles) })).flatMap(({ lines }, at) =>
        lines.some(({ text }) => text === words) ? [at + 1] : [],
      );
    // On page 1 “tie-up” is also the label of its words.
    expect([await saying(noRoom, 32), await saying('tie-up', 32)]).toEqual([[], [1]]);
    expect([await saying(noRoom, 64), await saying('tie-up', 64)]).toEqual([[1], [1, 3]]);
    expect(await saying('32 treadles: as drawn', 32)).toEqual([1]);
  });

  test('what was found is quoted in short, however long it is', async () => {
    const question = put('question.yaml', `structure: ${'twill '.repeat(150_000)}\n`);
    const said = await refusal('explore', question, '--out', at('never'));
    expect(said).toMatch(/question\.yaml:1:12: no structure “(twill )+t…”/);
    expect(
      await refusal('explore', '--structure', '2/2 twill', '--orders', 'Q'.repeat(50_000), '--out', at('never')),
    ).toContain('Q…”');
    expect(await refusal('plan', at('kept.json'), '--yarn-size', '9'.repeat(50_000))).toContain('9…”');
    expect(await refusal('keep', at('kept.json'), '9'.repeat(50_000))).toContain('no cloth 999');
    expect(await refusal(`--${'9'.repeat(50_000)}`)).toContain('9…');
    expect(await refusal('x'.repeat(50_000))).toContain('x…');
    expect(await refusal('keep', at('kept.json'), '--stars', '9'.repeat(50_000))).toContain('9…”');
  });
});

describe('what is damaged is named for what it is', () => {
  test('data that is not as it should be', async () => {
    const plan = async (change: (cloth: never) => unknown) =>
      refusal('plan', put('odd.json', changed(change as never)), '--out', at('never'));
    expect(await plan((c: { code?: string }) => delete c.code)).toContain(
      'candidates.0.code: found nothing; expected a value',
    );
    expect(await plan((c: { code: string }) => (c.code = '../x'))).toContain(
      'candidates.0.code: found “../x”; expected a code of small letters and digits, as under the pictures',
    );
    expect(await plan((c: { note: unknown }) => (c.note = {}))).toContain(
      'note: found keys with values; expected text',
    );
    expect(await plan((c: { stars: unknown }) => (c.stars = 2.5))).toContain(
      'stars: found 2.5; expected a whole number',
    );
    expect(await plan((c: { note: string }) => (c.note = 'n'.repeat(2001)))).toContain(
      'note: found 2001 letters; expected 2000 at most',
    );
    expect(await plan((c: { draft: { sett: { per: string } } }) => (c.draft.sett.per = 'mile'))).toContain(
      'per: found “mile”; expected "inch" or "cm"',
    );
  });

  test('UTF-16 and bytes of zero; a mark of UTF-8 is read over', async () => {
    for (const [name, text] of [
      ['u.json', list],
      ['u.yaml', TWILL],
    ] as const) {
      const command = name === 'u.json' ? ['plan', at(name), '--out', at('never')] : ['draw', at(name)];
      put(name, Buffer.from(text, 'utf16le'));
      expect(await refusal(...command)).toContain(`${name}: found text in UTF-16; expected `);
      put(name, Buffer.from(`\uFEFF${text}`, 'utf16le'));
      expect(await refusal(...command)).toContain(`${name}: found text in UTF-16; expected `);
      put(name, `${text}\0\0\0`);
      expect(await refusal(...command)).toContain(
        `${name}: found bytes of zero (3 at its end, as a crash leaves them)`,
      );
      put(name, `${text.slice(0, 20)}\0${text.slice(20)}`);
      expect(await refusal(...command)).toContain(`${name}: found bytes of zero (within it)`);
    }
    put('latin.yaml', Buffer.from('structure: plain\n# blå och svart\n', 'latin1'));
    expect(await refusal('explore', at('latin.yaml'))).toContain(
      'latin.yaml:2: found letters that are not UTF-8; expected a question in UTF-8: save it again with that encoding',
    );
    const marked = put('marked.json', `\uFEFF${list}`);
    expect((await run('keep', marked, '--out', at('again.json'))).code).toBe(0);
  });
});

describe('what is printed can steer no terminal', () => {
  const ESC = '\u001b';
  const hostile = `a${ESC}]0;title\u0007b${ESC}[2Jc\u202Ed\u009b31me\nf\rg`;
  const STEERS = /(?!\n)[\p{Cc}\u202a-\u202e\u2066-\u2069]/u;

  test('a shortlist, file names, weavers, results and the title of a WIF file', async () => {
    const listed = put(
      'hostile.json',
      changed((c) => Object.assign(c, { recipe: hostile, note: hostile, structure: hostile })),
    );
    const name = `x${ESC}]0;y\u0007\u202E.yaml`;
    const weavers = put('hostile.yaml', `weavers:\n  - name: ${JSON.stringify(hostile)}\n`);
    const results = put(
      'results.yaml',
      `results:\n  - code: ${cloth.code}\n    picks: 18\n    changed: ${JSON.stringify(hostile)}\n`,
    );
    const wif = put(
      'hostile.wif',
      writeWif(cloth.draft, { version: '0' }).replace(
        /(\[TEXT\]|$)/,
        `[TEXT]\r\nTitle=${hostile.replace(/[\n\r]/g, '')}\r\n`,
      ),
    );
    const all = [
      await run('keep', listed, '--out', at('h.json')),
      await run('keep', listed, '--out', at('h.json'), '--json'),
      await run('plan', listed, '--out', at('h-plan'), '--learnt', results),
      await run('plan', listed, '--out', at('h-plan'), '--json'),
      await run('deal', listed, '--out', at('h-deal'), '--weavers', weavers),
      await run('deal', listed, '--out', at('h-deal'), '--weavers', weavers, '--json'),
      await run('draw', at(name)),
      await run('draw', wif, '--json'),
      await run('draw', wif),
      await run('explore', '--structure', hostile),
      await run(hostile),
    ];
    for (const { out, err } of all) expect(`${out}${err}`).not.toMatch(STEERS);
    for (const [n, code] of [0, 0, 0, 0, 0, 0, 2, 0, 0, 2, 2].entries()) expect([n, all[n]!.code]).toEqual([n, code]);
    for (const n of [1, 3, 5, 7]) expect(() => JSON.parse(all[n]!.out)).not.toThrow();
    expect(JSON.parse(all[1]!.out).candidates[0].recipe).toBe(hostile);
  });
});

test('files of any size in a folder that is to be written into', async () => {
  const sparse = (name: string, bytes: number): void => {
    put(name, '');
    truncateSync(at(name), bytes);
  };
  for (const folder of ['vast', 'vast-plan', 'vast-list']) mkdirSync(at(folder));
  for (const name of ['vast/gallery.json', 'vast-plan/plan.json', 'vast-list/.shedlight.json']) sparse(name, 3e9);
  expect(await refusal('explore', '--structure', 'plain', '--lengths', '3', '--out', at('vast'))).toContain(
    'vast/gallery.json: found no file of up to 200 MB; expected a gallery.json',
  );
  for (const folder of ['vast-plan', 'vast-list']) {
    expect(await refusal('plan', at('kept.json'), '--out', at(folder))).toContain(
      `${folder}: found a folder with other things in it`,
    );
  }
  mkdirSync(at('vast-form'));
  sparse('vast-form/results.yaml', 2e6);
  const planned = await run('plan', at('kept.json'), '--out', at('vast-form'));
  expect([planned.code, planned.err]).toEqual([0, expect.stringContaining('results.yaml: left as it is')]);
  expect(statSync(at('vast-form/results.yaml')).size).toBe(2e6);
});

test('what steers a terminal or turns text stands in no page, drawing, table or draft for print', async () => {
  const name = JSON.stringify('a\u001b]0;x\u0007b\u202Ecba\u009b31m\u2067');
  const yarns = `{ D: { colour: "#000", name: ${name} }, L: "#fff" }`;
  const draft = put('turned.yaml', `name: ${name}\n${TWILL}warp: DDL\nyarns: ${yarns}\n`);
  const list = put(
    'turned.json',
    changed((c) => Object.assign(c, { recipe: JSON.parse(name), note: JSON.parse(name) })),
  );
  expect((await run('explore', '--draft', draft, '--lengths', '3', '--out', at('turned'))).code).toBe(0);
  expect((await run('draw', draft, '--out', at('turned.svg'))).code).toBe(0);
  expect((await run('convert', draft, at('turned.txt'))).code).toBe(0);
  expect((await run('plan', list, '--out', at('turned-plan'))).code).toBe(0);
  const page = readFileSync(at('turned/index.html'), 'utf8').split('<script')[0]!;
  const files = ['turned/gallery.json', 'turned/cloths.csv', 'turned.svg', 'turned.txt', 'turned-plan/cloths.csv'];
  for (const text of [page, ...files.map((file) => readFileSync(at(file), 'utf8'))]) {
    expect(text).toContain('cba');
    expect(text).not.toMatch(/(?![\r\n\t])[\p{Cc}\u202a-\u202e\u2066-\u2069]/u);
  }
});

test('the program that was never built says so in one sentence', () => {
  const bin = at('copy/bin');
  mkdirSync(bin, { recursive: true });
  cpSync(fileURLToPath(new URL('../../bin/shedlight.js', import.meta.url)), join(bin, 'shedlight.js'));
  writeFileSync(at('copy/package.json'), '{ "type": "module" }');
  const { status, stderr, stdout } = spawnSync(process.execPath, [join(bin, 'shedlight.js'), '--help'], {
    encoding: 'utf8',
  });
  expect({ status, stdout }).toEqual({ status: 3, stdout: '' });
  expect(stderr).toBe('shedlight: it is not built yet: run npm run build in its folder first\n');
  expect(readFileSync(join(bin, 'shedlight.js'), 'utf8')).toMatch(/^#!/);
});
