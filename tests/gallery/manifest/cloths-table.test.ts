import { expect, test } from 'vitest';
import { clothsTable, isTableOf } from '../../../src/gallery/manifest/cloths-table.js';
import { manifestOf, manifestText, parseManifest } from '../../../src/gallery/manifest/manifest.js';
import { csvText } from '../../../src/plan/piece/cloth-columns.js';
import { fields } from '../../csv.js';
import { foundOf, HOUNDS_TOOTH, LOG_CABIN, trialOutcome, trialQuestion } from '../trial.js';

test('a line a cloth, its figures in the columns of their names', () => {
  const { found } = trialOutcome();
  const [head, ...rows] = fields(clothsTable(found));
  expect(rows).toHaveLength(found.length);
  expect(new Set(head).size).toBe(head!.length);
  for (const row of rows) expect(row).toHaveLength(head!.length);
  const second = Object.fromEntries(head!.map((name, at) => [name, rows[1]![at]]));
  // Hound's tooth as in SCORES.md, Worked figures; floats of 2/2 twill, four and four at 20 to the inch.
  expect(second).toMatchObject({
    rank: '2',
    code: found[1]!.code,
    recipe: found[1]!.recipe,
    'near twin of': '',
    'woven by other orders': '3',
    'warp order': 'D4 L4',
    'ends in a repeat': '8',
    'repeat across': '0.4',
    'lengths in': 'in',
    contrast: '0.321',
    tone: '0.318',
    line: '0.038',
    figure: '0.246',
    symmetry: '0.25',
    'plane group': 'p1',
    'contrast left at 0.6 m, L*': '37.1',
    'repeat easy to see to, m': '2.3',
    'longest float, threads': '2',
    'longest float': '0.1',
    'warp float on the back, picks': '2',
    'weft float on the face, ends': '2',
    'warp changes': '2',
    shuttles: '2',
    'longest carry': '0.2',
    'shuttles end where they began': 'yes',
  });
  expect(rows[2]![head!.indexOf('near twin of')]).toBe(found[0]!.code);
});

test('quotes what must be, in UTF-8; centimetres where the sett is so counted', () => {
  const sett = { ends: 8, picks: 8, per: 'cm' } as const;
  const [, row] = fields(clothsTable([foundOf({ ...LOG_CABIN, sett }, 1, { recipe: 'monk’s belt, “D” ×2' })]));
  expect(row).toContain('monk’s belt, “D” ×2');
  expect(row).toContain('cm');
  // Sixteen ends at eight to the centimetre.
  expect(row).toContain('2');
  expect(clothsTable([foundOf(HOUNDS_TOOTH, 1)])).toContain('"trial weave, DDDDLLLL, thread by thread, weft as warp"');
});

test.each(['=1+1', '+cmd', '-2+3', '@SUM(A1)', '＝1', '=HYPERLINK("x")'])(
  'a title that a spreadsheet might take for a formula is text: %j',
  (title) => {
    const [head, row] = fields(clothsTable([foundOf(HOUNDS_TOOTH, 1, { structure: title, recipe: title })]));
    const cell = row![head!.indexOf('structure')]!;
    expect(cell).toBe(`'${title}`);
    expect(row![head!.indexOf('recipe')]).toBe(`'${title}`);
  },
);

test('numbers stay numbers, also below zero', () => {
  expect(csvText([['n', (n: number) => n.toFixed(1)]], [-2.5, 3])).toBe('n\r\n-2.5\r\n3.0\r\n');
});

test('knows its own from one that a person has changed', () => {
  const text = clothsTable(trialOutcome().found);
  const list = manifestText(manifestOf(trialQuestion(), trialOutcome()));
  const isOurs = (table: string): boolean => isTableOf(parseManifest(list, 'gallery.json'), table);
  expect(isOurs(text)).toBe(true);
  // Before pieces were counted, and as the first versions named their columns.
  const [head, ...rows] = fields(text);
  const kept = (row: readonly string[]): string[] => row.filter((_, at) => at !== head!.indexOf('piece'));
  const columns = kept(head!).map((name, at) => [name, (row: readonly string[]) => kept(row)[at]!] as const);
  const before = csvText(columns, rows);
  expect(isOurs(before)).toBe(true);
  const former = before.replace('lengths in', 'measure').replace(/"contrast left at ([\d.]+ m), L\*"/g, 'shows at $1');
  const earlier = former
    .replace('clear to', 'reads to')
    .replace('repeat easy to see to', 'easy to')
    .replace('repeat gone', 'gone');
  expect(isOurs(earlier.replace('shuttles end where they began', 'shuttles come home'))).toBe(true);
  expect(isOurs(earlier)).toBe(false);
  expect(isOurs(text.replace('rank', 'my rank'))).toBe(false);
  expect(isOurs(text.replace('\r\n', ',woven\r\n'))).toBe(false);
  expect(isOurs(`${text}4,mine\r\n`)).toBe(false);
});
