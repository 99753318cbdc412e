import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { reference } from '../../../src/cli/reference/reference.js';
import { DRAFT_TABLE } from '../../../src/draft/yaml/draft-table.js';
import { readDraft } from '../../../src/draft/yaml/read-draft.js';
import { flagOf } from '../../../src/input/flags.js';
import type { Table } from '../../../src/input/key.js';
import { parseSource, placed } from '../../../src/input/source.js';
import { WEAVERS_TABLE } from '../../../src/plan/deal/weavers.js';
import { PLAN_TABLE } from '../../../src/plan/options/plan-options.js';
import { RESULTS_TABLE } from '../../../src/plan/results/results-form.js';
import { QUESTION_TABLE } from '../../../src/search/question/question-table.js';
import { inFolder, run } from '../run.js';

const text = readFileSync(new URL('../../../gallery/guide/reference.md', import.meta.url), 'utf8');
const TABLES = { QUESTION_TABLE, DRAFT_TABLE, PLAN_TABLE, WEAVERS_TABLE, RESULTS_TABLE };

/** All tables, with those of values inside them. */
function all(table: Table): Table[] {
  return [table, ...Object.values(table.keys).flatMap(({ kind }) => (kind.table ? all(kind.table) : []))];
}

test('the reference is what `npm run reference` makes', () => {
  expect(text).toBe(reference());
});

describe.each(Object.entries(TABLES))('%s', (_, top) => {
  const keys = all(top).flatMap((table) => Object.entries(table.keys));

  test.each(keys)('%s: its example is read, and its default', (name, key) => {
    const source = parseSource(`${name}: ${key.example}\n`, 'example.yaml');
    const given = (source.value as Record<string, never>)[name]!;
    placed(source, () => expect(key.read(given)).toBeDefined());
    if (!key.isNeeded) expect(() => key.read(undefined)).not.toThrow();
    expect(key.about).not.toBe('');
    const about = key.many === undefined ? key.about : `${key.about}; ${key.many}`;
    expect(text).toContain(`| \`${name}\` | ${about} |`);
  });
});

test('every key of a question is a flag of explore, every key of a setup one of plan and deal', async () => {
  for (const [command, { keys }] of [
    ['explore', QUESTION_TABLE],
    ['plan', PLAN_TABLE],
  ] as const) {
    const { out } = await run(command, '--help', 'all');
    // The text of a draft is written in files alone.
    for (const name of Object.keys(keys).filter((key) => key !== 'draft text'))
      expect(out).toMatch(new RegExp(`^ {2}${flagOf(name)} `, 'm'));
  }
});

test('a draft of all the examples is read', () => {
  const { keys } = DRAFT_TABLE;
  const shown = [
    'name',
    'notes',
    'tie-up',
    'treadling',
    'pick kinds',
    'units',
    'warp',
    'weft',
    'yarns',
    'sett',
    'widths',
  ] as const;
  const lines = shown.map((name) => `${name}: ${keys[name].example}`);
  expect(readDraft(['threading: 1-4', ...lines].join('\n'), 'a.yaml').threading.length).toBeGreaterThan(0);
});

test('every file that is written is named', () =>
  inFolder(async (folder) => {
    const inside = (name: string): string => join(folder, name);
    await run('explore', '--structure', '2/2 twill', '--lengths', '2-4', '--out', inside('gallery'), '--quiet');
    const { candidates } = JSON.parse(readFileSync(inside('gallery/gallery.json'), 'utf8'));
    const codes: string[] = candidates.slice(0, 2).map(({ code }: { code: string }) => code);
    await run('keep', inside('gallery'), ...codes, '--out', inside('kept.json'), '--wif');
    await run('plan', inside('kept.json'));
    await run('deal', inside('kept.json'), '--weavers', '2');
    const written = readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map(({ name }) => name.replace(/^[0-9a-z]{8}(-quarter)?(?=\.(png|wif)$)/, 'CODE$1'));
    expect(written.length).toBeGreaterThan(12);
    for (const name of written) expect(text).toContain(name);
  }));
