import { copyFileSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { Ajv2020, type ValidateFunction } from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { schemas } from '../../../src/cli/reference/schemas.js';
import { parseShortlist } from '../../../src/formats/shortlist.js';
import { parseManifest } from '../../../src/gallery/manifest/manifest.js';
import { Problem } from '../../../src/problem.js';
import { structures } from '../../../src/structure/catalogue/catalogue.js';
import { fields } from '../../csv.js';
import { runs } from '../../long.js';
import { inFolder, run } from '../run.js';

const FOLDER = new URL('../../../gallery/schemas/', import.meta.url);
const CORPUS = new URL('../../corpus/', import.meta.url);
const ajv = new Ajv2020({ strict: true, strictTypes: false, strictTuples: false });
const names = readdirSync(FOLDER).sort();
const [ofJson, ofTables] = ['.schema.json', '.csv-metadata.json'].map((end) =>
  names.filter((name) => name.endsWith(end)),
);
const schemaOf: Record<string, ValidateFunction> = Object.fromEntries(
  ofJson!.map((name) => [
    name.replace('.schema.json', ''),
    ajv.compile(JSON.parse(readFileSync(new URL(name, FOLDER), 'utf8'))),
  ]),
);

/** The schema of a file, by its name; undefined for files that have none, as pictures. */
const SCHEMA_OF_FILE: readonly (readonly [RegExp, string])[] = [
  [/^(gallery|name-draft)\.json$/, 'gallery'],
  [/^(kept|squares)\.json$/, 'shortlist'],
  [/^plan\.json$/, 'plan'],
  [/^deal\.json$/, 'deal'],
  [/^\.shedlight\.json$/, 'written'],
  [/^(question|draft|setup|weavers|results)\.yaml$/, ''],
];

function fault(file: string, text: string): string | undefined {
  const found = SCHEMA_OF_FILE.find(([name]) => name.test(basename(file)));
  if (found === undefined) throw new Error(`${file}: no schema is known for it`);
  const valid = schemaOf[found[1] || basename(file, '.yaml')]!;
  if (valid(file.endsWith('.yaml') ? parse(text) : JSON.parse(text))) return undefined;
  return `${file}${ajv.errorsText(valid.errors)}`;
}

test('the schemas are what `npm run reference` makes', () => {
  const made = schemas();
  expect(names).toEqual(Object.keys(made).sort());
  for (const name of names) expect(readFileSync(new URL(name, FOLDER), 'utf8')).toBe(made[name]);
});

test('every figure of a cloth is explained', () => {
  const gallery = JSON.parse(readFileSync(new URL('gallery.schema.json', FOLDER), 'utf8'));
  const { floats, ...scores } = gallery.properties.candidates.items.properties.scores.properties;
  const figures = Object.entries({ ...scores, ...floats.properties }) as [string, { description?: string }][];
  expect(figures.length).toBeGreaterThan(25);
  for (const [name, { description }] of figures) expect(description, name).toMatch(/\w/);
});

/** Every JSON and YAML file that the commands write, by its name in a folder, and their texts. */
let written: Record<string, string> = {};
beforeAll(
  () =>
    inFolder(async (folder) => {
      const inside = (name: string): string => join(folder, name);
      const question = ['--structure', 'overshot', '--lengths', '2-3', '--limits', 'float 20', '--loom', '4 shafts'];
      await run('explore', ...question, '--out', inside('gallery'), '--quiet');
      const { candidates } = JSON.parse(readFileSync(inside('gallery/gallery.json'), 'utf8'));
      const codes: string[] = candidates.slice(0, 3).map(({ code }: { code: string }) => code);
      await run('keep', inside('gallery'), ...codes, '--out', inside('kept.json'), '--stars', '4');
      const stock = ['--yarn-size', '8/2 cotton', '--in-hand', 'D 400 g, L 50 yd', '--put-up', '250 g'];
      expect((await run('plan', inside('kept.json'), ...stock, '--border', '8 D')).code).toBe(0);
      expect((await run('plan', inside('kept.json'), '--mirror', 'single', '--out', inside('mirrored'))).code).toBe(0);
      const twills = ['--structure', '2/2 twill', '--lengths', '2-4', '--weft', 'own', '--yarns', 'D navy, L ivory'];
      await run('explore', ...twills, '--out', inside('twills'), '--quiet');
      const some = JSON.parse(readFileSync(inside('twills/gallery.json'), 'utf8')).candidates.slice(0, 4);
      const own = some.map(({ code }: { code: string }) => code);
      await run('keep', inside('twills'), ...own, '--out', inside('twills-kept/kept.json'));
      expect((await run('keep', inside('twills'), ...own, '--out', inside('kept-2.json'))).code).toBe(0);
      expect((await run('plan', inside('kept-2.json'), '--gamp', '--out', inside('gamp'))).code).toBe(0);
      // The form of last time teaches the next plan.
      const form = readFileSync(inside('kept-plan/results.yaml'), 'utf8').replace(/picks:$/m, 'picks: 18');
      writeFileSync(inside('kept-plan/results.yaml'), form.replace(/stars:$/m, 'stars: 3'));
      expect(
        (
          await run(
            'plan',
            inside('kept.json'),
            '--learnt',
            inside('kept-plan/results.yaml'),
            '--out',
            inside('learnt'),
          )
        ).code,
      ).toBe(0);
      for (const weavers of ['1', '3']) {
        expect(
          (await run('deal', inside('kept-2.json'), '--weavers', weavers, '--out', inside(`deal-${weavers}`))).code,
        ).toBe(0);
      }
      copyFileSync(new URL('2026-11-29/draft.wif', CORPUS), inside('draft.wif'));
      expect((await run('convert', inside('draft.wif'), inside('draft.yaml'))).code).toBe(0);
      const files = (readdirSync(folder, { recursive: true }) as string[]).filter((file) =>
        /\.(json|yaml|csv)$/.test(file),
      );
      written = Object.fromEntries(files.map((file) => [file, readFileSync(inside(file), 'utf8')]));
    }),
  240_000,
);

test('every file that a command writes passes, and says its version', () => {
  const files = Object.keys(written).filter((file) => file !== 'kept-2.json' && !file.endsWith('.csv'));
  expect(new Set(files.map((file) => basename(file)))).toEqual(
    new Set([
      'gallery.json',
      'kept.json',
      'squares.json',
      'plan.json',
      'deal.json',
      '.shedlight.json',
      'results.yaml',
      'draft.yaml',
    ]),
  );
  for (const file of files) {
    expect(fault(file, written[file]!)).toBeUndefined();
    expect(parse(written[file]!).version, file).toBe(1);
  }
  expect(files.length).toBeGreaterThan(15);
});

test('so do the files of earlier days, but for a key that was renamed', () => {
  const refused = readdirSync(CORPUS).flatMap((day) =>
    readdirSync(new URL(day, CORPUS))
      .filter((name) => !name.endsWith('.wif'))
      .map((name) => fault(`${day}/${name}`, readFileSync(new URL(`${day}/${name}`, CORPUS), 'utf8'))),
  );
  expect(refused.filter((each) => each !== undefined)).toEqual([
    '2026-11-25/question.yamldata must NOT have additional properties',
  ]);
});

test('every table that is written has the columns that are described, and in them what is said', () => {
  const isOf: Readonly<Record<string, RegExp>> = {
    nonNegativeInteger: /^\d+$/,
    decimal: /^-?\d+(\.\d+)?$/,
    string: /^/,
  };
  const tables = Object.entries(written).filter(([file]) => file.endsWith('.csv'));
  const used = new Set<string>();
  for (const [file, text] of tables) {
    const beside = (name: string): boolean => written[join(dirname(file), name)] !== undefined;
    const kind = beside('gallery.json') ? 'gallery' : beside('deal.json') ? 'deal' : 'plan';
    used.add(`${kind}-cloths.csv-metadata.json`);
    const { columns } = JSON.parse(
      readFileSync(new URL(`${kind}-cloths.csv-metadata.json`, FOLDER), 'utf8'),
    ).tableSchema;
    const [headings, ...rows] = fields(text);
    expect(headings, file).toEqual(columns.map(({ titles }: { titles: string }) => titles));
    expect(rows.length).toBeGreaterThan(0);
    for (const row of rows) {
      for (const [at, { titles, datatype, null: nothing }] of columns.entries()) {
        if (row[at] === nothing) continue;
        expect(row[at], `${file}: ${titles}`).toMatch(isOf[datatype] ?? new RegExp(`^(${datatype.format})$`));
      }
    }
  }
  expect([...used].sort()).toEqual(ofTables);
});

test('a column is described once, under names that differ', () => {
  for (const name of ofTables!) {
    const { columns } = JSON.parse(readFileSync(new URL(name, FOLDER), 'utf8')).tableSchema;
    const said = columns.map((column: Record<string, string>) => column.name);
    expect(new Set(said).size).toBe(columns.length);
    for (const each of said) expect(each).toMatch(/^[A-Za-z0-9_]+$/);
    for (const column of columns) expect(column['dc:description']).toMatch(/\w/);
  }
});

test('what commands print with --json passes, whatever they were asked', { timeout: 120_000 }, () =>
  inFolder(async (folder) => {
    const at = (name: string): string => join(folder, name);
    const drafted = ['threading: 1-4', 'tie-up: [1 2, 2 3, 3 4, 4 1]', 'treadling: 1-4', 'weft: D', 'warp: L'];
    writeFileSync(at('draft.yaml'), drafted.join('\n'));
    writeFileSync(at('loose.yaml'), 'threading: 1 2 2\ntie-up: [1, 1]\ntreadling: 1 2\nwarp: D D L\n');
    const few = ['--structure', '2/2 twill', '--orders', 'DL, DDL', '--out', at('few')];
    const asked: [name: string, words: string[], code?: number][] = [
      ['explore', ['explore', ...few, '--quiet']],
      ['explore', ['explore', ...few, '--limits', 'float 1', '--quiet'], 1],
      ['explore', ['explore', ...few, '--shard', '1/1']],
      [
        'explore',
        ['explore', '--structure', '2/2 twill', '--weft', 'own', '--lengths', '24', '--out', at('many'), '--quiet'],
      ],
      ['enlarge', ['enlarge', 'DLDDL', '--structure', 'turned twill', '--out', at('sizes.png')]],
      ['enlarge', ['enlarge', 'DDL', '--draft', at('draft.yaml'), '--limits', 'float 1/2 in']],
      ['draw', ['draw', at('draft.yaml'), '--loom', '4 shafts, 2 treadles', '--out', at('draft.svg')]],
      ['draw', ['draw', at('loose.yaml'), '--loom', 'table, 1 shaft']],
      ...structures.flatMap(({ name }): [string, string[]][] => [
        ['draw', ['draw', '--structure', name]],
        ['structure', ['structures', name]],
      ]),
      ['structure', ['structures', 'turned twill', '--blocks', '4', '--out', at('twill.png')]],
      ['structures', ['structures']],
      ['structures', ['structures', '--shafts', '8']],
      ['keep', ['keep', at('kept.json'), '--out', at('again.json'), '--wif']],
    ];
    writeFileSync(at('kept.json'), written['kept.json']!);
    const seen = new Set<string>();
    for (const [name, words, code = 0] of asked) {
      const ran = await run(...words, '--json');
      expect([words.join(' '), ran.code]).toEqual([words.join(' '), code]);
      const said = JSON.parse(ran.out);
      expect([name, said.format, said.version]).toEqual([name, `shedlight-${name}`, 1]);
      const valid = schemaOf[name]!;
      expect(valid(said) ? '' : `${words.join(' ')}${ajv.errorsText(valid.errors)}`).toBe('');
      expect(valid({ ...said, version: 2 })).toBe(false);
      seen.add(name);
    }
    const files = [
      'gallery',
      'shortlist',
      'plan',
      'deal',
      'written',
      'question',
      'draft',
      'setup',
      'weavers',
      'results',
    ];
    expect([...seen, ...files].sort()).toEqual(Object.keys(schemaOf).sort());
  }),
);

type Json = null | boolean | number | string | Json[] | { [key: string]: Json };
type Path = readonly (string | number)[];

/** The paths of all values, those inside others too. */
function pathsIn(value: Json, path: Path = []): Path[] {
  if (typeof value !== 'object' || value === null) return [path];
  const inner = Array.isArray(value) ? value.map((each, at) => [at, each] as const) : Object.entries(value);
  return [path, ...inner.flatMap(([key, each]) => pathsIn(each, [...path, key]))];
}

/** A copy with another value in one place; undefined takes the place away. */
function withOther(value: Json, path: Path, other: Json | undefined): Json {
  const copy = structuredClone({ whole: value }) as { whole: Json };
  let at = copy as Record<string | number, Json>;
  const full = ['whole', ...path];
  for (const key of full.slice(0, -1)) at = at[key] as Record<string | number, Json>;
  if (other === undefined) delete at[full.at(-1)!];
  else at[full.at(-1)!] = other;
  return copy.whole;
}

describe('a damaged file is refused', () => {
  /** A value of another kind than any that stands in its place. */
  const stranger = (value: Json): Json =>
    Array.isArray(value) || typeof value !== 'object' || value === null ? { strange: true } : [[]];
  const valueAt = (whole: Json, path: Path): Json =>
    path.reduce<Json>((value, key) => (value as Record<string | number, Json>)[key]!, whole);

  test.each([
    ['gallery/gallery.json', 'gallery'],
    ['kept.json', 'shortlist'],
    ['kept-plan/plan.json', 'plan'],
    ['gamp/plan.json', 'plan'],
    ['deal-3/deal.json', 'deal'],
    ['kept-plan/.shedlight.json', 'written'],
  ])('%s: with a value of another kind anywhere', (file, name) => {
    const whole = JSON.parse(written[file]!) as Json;
    const valid = schemaOf[name]!;
    fc.assert(
      fc.property(fc.constantFrom(...pathsIn(whole)), (path) => {
        expect(valid(withOther(whole, path, stranger(valueAt(whole, path)))), path.join('.')).toBe(false);
      }),
      { numRuns: runs(300) },
    );
  });

  test.each([
    ['gallery/gallery.json', 'gallery', parseManifest],
    ['kept.json', 'shortlist', parseShortlist],
  ] as const)('%s: what the schema refuses, shedlight refuses too', (file, name, read) => {
    const whole = JSON.parse(written[file]!) as Json;
    let refused = 0;
    fc.assert(
      fc.property(
        fc.constantFrom(...pathsIn(whole).slice(1)),
        fc.constantFrom(undefined, null, -1, 0.5, '', 'Ä', [], {}),
        (path, other) => {
          const damaged = withOther(whole, path, other as Json);
          if (schemaOf[name]!(damaged)) return;
          refused++;
          expect(() => read(JSON.stringify(damaged), file), `${path.join('.')} ${JSON.stringify(other)}`).toThrow(
            Problem,
          );
        },
      ),
      { numRuns: runs(300) },
    );
    expect(refused).toBeGreaterThan(runs(300) / 2);
  });

  test.each([
    ['question', 'structure: huck\nlenghts: 4'],
    ['question', 'limits: { repeat: 4000 }'],
    ['question', 'starts: anywhere'],
    ['question', 'yarns: { d: "#000000" }'],
    ['draft', 'tie-up: [1 2]'],
    ['draft', 'version: 2\nthreading: 1-4'],
    ['setup', 'paper: a3'],
    ['setup', 'loom: { shafts: many }'],
    ['weavers', 'weavers: []'],
    ['weavers', 'weavers: [{ loom: 4 shafts }]'],
    ['results', 'results: [{ code: k3v9q0aa, stars: 9 }]'],
    ['results', 'version: 2\nresults: [{ code: k3v9q0aa, stars: 4 }]'],
  ])('%s: %s', (name, text) => {
    expect(schemaOf[name]!(parse(text))).toBe(false);
  });
});
