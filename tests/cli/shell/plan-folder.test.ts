import {
  chmodSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { judgePlanFolder, type Planned, writePlanFolder } from '../../../src/cli/shell/plan-folder.js';
import type { FormEntry } from '../../../src/plan/results/results-form.js';
import { Problem } from '../../../src/problem.js';
import { kept } from '../../plan/cloths.js';

let home: string;
let place: string;
beforeEach(() => {
  home = mkdtempSync(join(tmpdir(), 'plan-folder-'));
  place = join(home, 'plan');
});
afterEach(() => rmSync(home, { recursive: true, force: true }));

const FILES = {
  plan: {
    'plan.json': '{"format": "shedlight-plan"}',
    'sheets.pdf': 'sheets',
    'cloths.csv': 'number,code\r\n',
  },
  deal: { 'deal.json': '{"format": "shedlight-deal"}', 'plan.json': '{"format": "shedlight-plan"}' },
};
const write = (planned: Planned, more: Record<string, string> = {}, entries: readonly FormEntry[] = []) =>
  writePlanFolder(place, planned, { ...FILES[planned], ...more }, entries);
const ENTRY: FormEntry = { cloth: kept('2/2 twill', { warp: 'DDLDL' }), per: 'inch' };
const put = (name: string, words: string): void => writeFileSync(join(place, name), words);
const said = (name: string): string => readFileSync(join(place, name), 'utf8');

async function refusal(planned: Planned = 'plan'): Promise<string> {
  const before = readdirSync(place).map((name) => [name, said(name)]);
  for (const refused of [judgePlanFolder(place, planned), write(planned)]) {
    await expect(refused).rejects.toBeInstanceOf(Problem);
  }
  expect(readdirSync(place).map((name) => [name, said(name)])).toEqual(before);
  return judgePlanFolder(place, planned).catch((error: Error) =>
    error.message.replace(`${place}`, 'plan'),
  ) as Promise<string>;
}

describe('the folder of a plan', () => {
  it('is brought up to date; the form that was filled in and what was put there stay', async () => {
    expect(await write('plan')).toBeUndefined();
    put('photo.jpg', 'a photo');
    expect(await write('plan', {}, [ENTRY])).toBeUndefined();
    expect(said('results.yaml')).toContain(`code: ${ENTRY.cloth.code}`);
    put('results.yaml', 'results: filled in\n');
    expect(await write('plan', { 'sheets.pdf': 'new sheets' })).toBe(`${place}/results.yaml: left as it is`);
    expect(['sheets.pdf', 'results.yaml', 'photo.jpg'].map(said)).toEqual([
      'new sheets',
      'results: filled in\n',
      'a photo',
    ]);
    expect(readdirSync(home)).toEqual(['plan']);
  });

  it('comes with a form that was filled in and has blanks for new cloths, at once', async () => {
    mkdirSync(place);
    put('results.yaml', 'results:\n  - code: a1\n    stars: 4 # for the runner\n');
    chmodSync(join(place, 'results.yaml'), 0o600);
    const grown = `${place}/results.yaml: your words are kept, blanks for new cloths are at its end`;
    expect(await write('plan', {}, [ENTRY])).toBe(grown);
    expect(said('results.yaml')).toMatch(/^results:\n {2}- code: a1\n {4}stars: 4 # for the runner\n {2}- code: /);
    expect(statSync(join(place, 'results.yaml')).mode & 0o777).toBe(0o600);
    expect(await write('plan', {}, [ENTRY])).toBe(`${place}/results.yaml: left as it is`);
  });

  it.each(['plan.json', 'sheets.pdf', 'cloths.csv'])('is refused where a person has changed %s', async (name) => {
    await write('plan');
    put(name, `${FILES.plan[name as 'plan.json']} and a word of mine`);
    expect(await refusal()).toMatch(
      new RegExp(`^plan/${name}: found a file that this version of shedlight did not write`),
    );
  });

  it('is refused where a file is there that an earlier plan has not listed', async () => {
    await write('plan');
    put('overview.pdf', 'of mine');
    expect(await refusal()).toMatch(/^plan\/overview.pdf: found a file that this version of shedlight did not write/);
  });

  it('is refused where it is a deal’s, and a deal’s where it is a plan’s', async () => {
    await write('deal');
    expect(await refusal('plan')).toBe('plan: found a deal in it; expected a plan, or an empty or new folder (--out)');
    rmSync(join(place, '.shedlight.json'));
    expect(await refusal('plan')).toMatch(/found a deal in it/);
    rmSync(place, { recursive: true });
    await write('plan');
    expect(await refusal('deal')).toBe('plan: found a plan in it; expected a deal, or an empty or new folder (--out)');
  });

  it.each(['plan.json', 'deal.json', 'notes.txt'])('is not known by a file of the name %s', async (name) => {
    mkdirSync(place);
    put(name, '{"format": "of another program"}');
    expect(await refusal()).toMatch(/^plan: found a folder with other things in it/);
  });

  it('may hold nothing but a form that was filled in', async () => {
    mkdirSync(place);
    put('results.yaml', 'results: filled in\n');
    expect(await write('plan')).toBe(`${place}/results.yaml: left as it is`);
    expect(said('results.yaml')).toBe('results: filled in\n');
  });

  it('that version 0.1.0 wrote is known by its files, and what it left half written goes', async () => {
    mkdirSync(place);
    put('plan.json', FILES.plan['plan.json']);
    put('sheets.pdf', '%PDF-1.3 /Producer (shedlight)');
    for (const name of ['deal.json.3812345678', 'plan.json.912345678', 'plan.json.20261127', 'sheets.pdf.2026112718']) {
      put(name, '');
    }
    put('plan.json.1700000000', 'a copy of mine');
    utimesSync(join(place, 'plan.json.1700000000'), 1_700_000_000, 1_700_000_000);
    await write('plan');
    expect(readdirSync(place).filter((name) => /\d$/.test(name))).toEqual([
      'plan.json.1700000000',
      'plan.json.20261127',
      'sheets.pdf.2026112718',
    ]);
    put('sheets.pdf', '%PDF-1.3 of mine');
    rmSync(join(place, '.shedlight.json'));
    expect(await refusal()).toMatch(/^plan\/\w+\.\w+: found a file that this version of shedlight did not write/);
  });

  it('that a killed first run has left half written is taken', async () => {
    mkdirSync(place);
    put('plan.json.3812345678', '{"form');
    await write('plan');
    expect(readdirSync(place).sort()).toEqual(['.shedlight.json', 'results.yaml', ...Object.keys(FILES.plan)].sort());
  });
});
