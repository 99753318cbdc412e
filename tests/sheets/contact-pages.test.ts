import { describe, expect, test } from 'vitest';
import { readPlanOptions } from '../../src/plan/options/plan-options.js';
import { highlights, measured } from '../../src/plan/piece/highlights.js';
import { planWarps } from '../../src/plan/piece/warp-plan.js';
import { contactLayout } from '../../src/sheets/contact-pages.js';
import { tableText } from '../../src/sheets/plan-table.js';
import { albumSheets, teacherSheets } from '../../src/sheets/sheets.js';
import { fields } from '../csv.js';
import { kept, twelve } from '../plan/cloths.js';
import { complaints } from '../plan/legible.js';
import { type PdfPage, readPdf } from '../plan/pdf-text.js';

const needsOf = (flags: Record<string, string> = {}) =>
  readPlanOptions('', 'needs', { 'yarn size': '8/2 cotton', width: '10 in', ...flags });
const words = (page: PdfPage): string => page.lines.map((line) => line.text).join(' ');
const mixed = () => [
  kept('plain weave', { warp: 'DDLDL' }),
  kept('2/2 twill', { warp: 'DDDDLLLL' }),
  kept('overshot', { warp: 'D', weft: 'DL' }),
  kept('turned taqueté', { warp: 'DDLDL', by: 'unit' }),
];
const MM = 72 / 25.4;

describe('contact sheets', () => {
  test.each([
    ['a4', '4', 16],
    ['a4', '5', 25],
    ['letter', '4', 16],
    ['letter', '5', 20],
  ] as const)(
    '%s with %s columns: %i a page, nothing covered, small or beyond the margin',
    async (paper, columns, each) => {
      const options = needsOf({ paper, columns });
      const cloths = [
        ...twelve(),
        ...mixed(),
        ...twelve().map((c) => ({ ...c, note: 'for the long runner in the hall, perhaps' })),
      ];
      const warps = planWarps(cloths, options);
      const pages = readPdf(await teacherSheets('Lamp-room round', warps, options)).slice(0, Math.ceil(28 / each));
      expect(pages.map((page) => page.pictures.length)).toEqual([2 * each, 2 * (28 - each)]);
      const layout = contactLayout(paper, options.columns);
      for (const page of pages) {
        expect(complaints(page)).toEqual([]);
        expect(Math.min(...page.lines.map((line) => line.size))).toBeGreaterThanOrEqual(9);
        for (const picture of page.pictures) expect(picture.width / MM).toBeCloseTo(layout.width, 3);
        expect(words(page)).toContain('in the order of the shortlist, warp by warp; all at half size');
      }
      const said = pages.map(words).join(' ');
      for (const { number, cloth } of warps.flatMap((warp) => warp.pieces))
        expect(said).toContain(`${number} ${cloth.code}`);
      expect(said).toContain('for the long runner');
    },
  );

  test('half size, actual size, and as from 6 m: told at the head, and drawn', async () => {
    const warps = planWarps(mixed(), needsOf());
    const draw = (pictures: string) => teacherSheets('Round', warps, needsOf({ pictures }));
    const [half, actual, far] = await Promise.all(['half', 'actual', 'far'].map(draw));
    expect(words(readPdf(half!)[0]!)).toContain('all at half size');
    expect(words(readPdf(actual!)[0]!)).toContain('all at actual size');
    expect(words(readPdf(far!)[0]!)).toContain('as seen from 6 m, with the sheet held at 50 cm');
    expect(new Set([half, actual, far].map((bytes) => bytes!.toString('latin1'))).size).toBe(3);
    expect(half!.equals(await draw('half'))).toBe(true);
    expect(() => needsOf({ pictures: 'big' })).toThrow('--pictures: found “big”; expected half, actual or far');
    expect(() => needsOf({ columns: '6' })).toThrow('--columns: found “6”; expected pictures side by side, 4 or 5');
  });

  test('under a picture: recipe, longest float, shuttles, how far it reads; what all share once at the head', async () => {
    const options = needsOf();
    const [page] = readPdf(
      await teacherSheets('Round', planWarps(twelve(), options), options, { weavers: [...'ABCDEFGHIJKL'] }),
    );
    expect(words(page!)).toContain('Round: summer and winter');
    expect(words(page!)).toContain('1 A');
    expect(words(page!)).toContain('in the order of the weavers');
    expect(words(page!)).toMatch(/unit by unit, weft D float 0.15 in, 2 shuttles, (clear at \d m|one tone at 0.6 m)/);
  });

  test('a weaver who is named like a yarn is not taken for it', async () => {
    const options = needsOf();
    const warps = planWarps(mixed().slice(0, 3), options).map((warp, at) => ({ ...warp, number: at + 1 }));
    const [pictures, order] = readPdf(await teacherSheets('Round', warps, options, { weavers: ['Ada', 'D', 'l'] }));
    const codes = warps.map(({ pieces: [piece] }) => piece!.cloth.code);
    for (const page of [pictures!, order!]) {
      for (const [at, who] of ['Ada', 'weaver D', 'weaver l'].entries())
        expect(words(page)).toMatch(new RegExp(`${who} +${codes[at]}`));
    }
    expect(words(pictures!)).toContain('1 Ada');
  });
});

describe('a few words of why', () => {
  const told = (cloths: ReturnType<typeof twelve>) =>
    highlights(cloths.map(({ draft }) => ({ draft, scored: measured(draft) })));

  test('a place among the list goes to the one that has more of it than all the others', () => {
    const cloths = twelve();
    const contrasts = cloths.map(({ draft }) => measured(draft).scores.contrast);
    const said = told(cloths);
    said.forEach((clauses, at) => {
      const place = contrasts.filter((other) => other >= contrasts[at]! - 1e-9).length;
      const named = /^(\d+)\w\w in contrast$/.exec(clauses[0]!);
      if (named !== null) expect(Number(named[1])).toBe(place);
    });
    expect(said.some(([first]) => first === '1st in contrast')).toBe(true);
    for (const clauses of said) expect(clauses.some((clause) => clause.endsWith('dark'))).toBe(true);
  });

  test('short lists have no places', () => {
    expect(told([kept('2/2 twill', { warp: 'DDDDLLLL' })])).toEqual([
      ['half dark', 'D and L swap when the pattern is shifted', expect.stringContaining('almost')],
    ]);
  });
});

test('labels: one a chain, its ends, its length, its cross', async () => {
  const options = needsOf({ width: '20 in', floating: 'yes', pieces: '8' });
  const warps = planWarps([kept('2/2 twill', { warp: 'DDLDL', times: 4 })], options);
  const pages = readPdf(await teacherSheets('Round', warps, options));
  const label = words(pages.at(-1)!);
  // The chain of the worked example: D, 242 ends, 3 yd, cross at the top.
  expect(label).toContain('D navy 242 ends, 3 yd (2.74 m) cross at the top; 2 of them floating selvedges');
  expect(label).toContain('L natural 160 ends, 3 yd (2.74 m) cross at the top warp 1');
  expect(complaints(pages.at(-1)!)).toEqual([]);
});

test('the yarn order goes over pages without losing a warp', async () => {
  const options = needsOf({ width: '4 in' });
  const cloths = ['D', 'L', 'DL', 'DDL', 'DLL'].flatMap((weft) =>
    ['DL', 'DDL', 'DLL', 'DDLL', 'DDDL', 'DLLL', 'DDDLL', 'DDLLL', 'DDLDL', 'DLDLL'].map((warp) =>
      kept('2/2 twill', { warp: `${warp}${weft}`, weft }),
    ),
  );
  const warps = planWarps(cloths, options);
  expect(warps.length).toBeGreaterThan(44);
  const pages = readPdf(await teacherSheets('Round', warps, options)).filter((page) =>
    words(page).startsWith('Yarn for all'),
  );
  expect(pages).toHaveLength(2);
  for (const page of pages) expect(complaints(page)).toEqual([]);
  const said = pages.map(words).join(' ');
  for (const warp of warps) expect(said).toContain(`warp ${warp.number} ${warp.pieces[0]!.cloth.code}`);
});

test.each(['a4', 'letter'] as const)('album on %s: four swatches a page, with their names', async (paper) => {
  const warps = planWarps(twelve(), needsOf());
  const pages = readPdf(await albumSheets(warps, needsOf({ paper }), [...'ABCDEFGHIJKL']));
  expect(pages).toHaveLength(3);
  for (const page of pages) expect(complaints(page)).toEqual([]);
  const said = pages.map(words).join(' ');
  warps
    .flatMap((warp) => warp.pieces)
    .forEach(({ number, cloth }, at) => {
      expect(said).toContain(`${number}, woven by ${'ABCDEFGHIJKL'[at]} ${cloth.code} ${cloth.recipe.slice(0, 30)}`);
    });
});

test('the table reads back: one line a cloth, its measures in the columns of their names', () => {
  const cloths = [{ ...kept('2/2 twill', { warp: 'DDLDL', times: 4 }), note: 'say “yes”, or "no"' }, ...mixed()];
  const warps = planWarps(cloths, needsOf({ width: '20 in', floating: 'yes', reed: '10' }));
  const [head, ...rows] = fields(tableText(warps, ['A', 'B', 'C', 'D', 'E']));
  expect(rows).toHaveLength(cloths.length);
  for (const row of rows) expect(row).toHaveLength(head!.length);
  const first = Object.fromEntries(head!.map((name, at) => [name, rows[0]![at]]));
  expect(first).toMatchObject({
    number: '1',
    weaver: 'A',
    code: cloths[0]!.code,
    recipe: cloths[0]!.recipe,
    note: 'say “yes”, or "no"',
    'warp order': 'D8 L4 D4 L4',
    'ends in a repeat': '20',
    'repeat across': '1',
    'lengths in': 'in',
    'dark share': '0.6',
    'longest float, threads': '2',
    'longest float': '0.1',
    shuttles: '2',
    'longest carry': '0.4',
    'ends in the warp': '402',
    'width in the reed': '20.2',
  });
  expect(fields(tableText(warps))[0]).not.toContain('weaver');
});
