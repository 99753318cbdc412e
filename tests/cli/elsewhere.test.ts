import { readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { beforeAll, expect, test } from 'vitest';
import { inFolder, run } from './run.js';

const TWILL = 'threading: 1-4\ntie-up: [1 2, 2 3, 3 4, 4 1]\ntreadling: 1-4\nwarp: DDLL\nweft: DDLL\n';
const FEW = ['--orders', 'DDL, DDLL', '--starts', 'first', '--show', '4', '--quiet'];
/** Values of JSON output that repeat where the person asked to have something written. */
const PLACES = ['folder', 'index', 'file', 'wif', 'picture'];

/** Everything that every command writes in a folder, when every file is given by its path from the root; what is printed too. */
async function madeIn(folder: string): Promise<Record<string, Buffer>> {
  const at = (name: string): string => join(folder, name);
  const printed: Record<string, Buffer> = {};
  const done = async (...words: string[]): Promise<void> => {
    const { code, out, err } = await run(...words);
    expect([words.join(' '), code, code === 0 ? '' : err]).toEqual([words.join(' '), 0, '']);
    if (!words.includes('--json')) return;
    const said = JSON.parse(out);
    for (const place of PLACES) delete said[place];
    printed[`printed ${Object.keys(printed).length} by ${words[0]}`] = Buffer.from(JSON.stringify(said));
  };
  writeFileSync(at('draft.yaml'), TWILL);
  writeFileSync(at('question.yaml'), 'draft: draft.yaml\norders: [DDL]\nstarts: first\n');
  writeFileSync(at('setup.yaml'), 'width: 6 in\nyarn size: 8/2 cotton\n');
  writeFileSync(at('weavers.yaml'), 'weavers: [{ name: A }, { name: B, loom: 4 shafts }]\n');
  const draft = ['--draft', at('draft.yaml')];
  await done('explore', at('question.yaml'), '--quiet', '--json');
  await done('explore', ...draft, ...FEW, '--out', at('drafted'), '--json');
  await done('explore', '--on-the-loom', at('draft.yaml'), '--lengths', '2-3', '--quiet', '--out', at('threaded'));
  const parts = ['1/2', '2/2'];
  for (const part of parts) await done('explore', ...draft, ...FEW, '--out', at('parts'), '--shard', part, '--json');
  await done('explore', '--merge', ...parts.map((part) => at(`parts.shard-${part.replace('/', '-of-')}`)), '--quiet');
  const codes = JSON.parse(readFileSync(at('drafted/gallery.json'), 'utf8')).candidates.map(
    ({ code }: { code: string }) => code,
  );
  await done('keep', at('drafted'), ...codes, '--out', at('kept.json'), '--wif', '--json');
  await done('plan', at('kept.json'), at('setup.yaml'), '--json');
  const form = readFileSync(at('kept-plan/results.yaml'), 'utf8');
  writeFileSync(at('kept-plan/results.yaml'), form.replace(/picks:$/m, 'picks: 18'));
  await done('plan', at('kept.json'), '--learnt', at('kept-plan/results.yaml'), '--gamp', '--out', at('gamp'));
  await done('deal', at('kept.json'), at('setup.yaml'), '--weavers', at('weavers.yaml'), '--json');
  const before = ['--done', `${at('kept.json')}, ${at('kept-plan/results.yaml')}, ${at('drafted')}`];
  await done('explore', ...draft, '--lengths', '5', ...before, '--quiet', '--out', at('second'));
  for (const kind of ['png', 'svg']) {
    await done('draw', at('draft.yaml'), '--out', at(`drawn.${kind}`), '--json');
    await done('draw', at('draft.yaml'), '--warp', 'DL', '--out', at(`laid.${kind}`));
    await done('enlarge', 'DDL', ...draft, '--out', at(`sizes.${kind}`), '--json');
  }
  for (const kind of ['wif', 'yaml', 'txt']) await done('convert', at('draft.yaml'), at(`converted.${kind}`));
  await done('structures', 'huck', '--out', at('huck.png'), '--json');
  await done('page', '--out', at('ask.html'));
  const names = (readdirSync(folder, { recursive: true }) as string[]).filter((name) => statSync(at(name)).isFile());
  return { ...printed, ...Object.fromEntries(names.map((name) => [name, readFileSync(at(name))])) };
}

let one: Record<string, Buffer>;
let other: Record<string, Buffer>;
let folders: string[];
beforeAll(
  () =>
    inFolder(async (a) =>
      inFolder(async (b) => {
        folders = [a, b];
        [one, other] = [await madeIn(a), await madeIn(b)];
      }),
    ),
  240_000,
);

test('two people with the same question in different folders get the same bytes', () => {
  expect(Object.keys(one).length).toBeGreaterThan(60);
  expect(Object.keys(other)).toEqual(Object.keys(one));
  expect(Object.keys(one).filter((name) => !one[name]!.equals(other[name]!))).toEqual([]);
});

test('nothing that is written tells where on the machine it was made', () => {
  const places = [...folders, tmpdir(), fileURLToPath(new URL('../..', import.meta.url)).replace(/\/$/, '')];
  const tells = Object.entries(one).filter(([, bytes]) => places.some((place) => bytes.includes(place)));
  expect(tells.map(([name]) => name)).toEqual([]);
});
