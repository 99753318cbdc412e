import { describe, expect, test } from 'vitest';
import { AT_THE_LOOM } from '../../src/draft/point-of-view.js';
import { gampNeeds, gampOf } from '../../src/plan/gamp/gamp-plan.js';
import { readPlanOptions } from '../../src/plan/options/plan-options.js';
import { pickSections, pickSheet } from '../../src/plan/piece/lists.js';
import { threadingLines, threadingSections } from '../../src/plan/piece/threading-list.js';
import { planWarps } from '../../src/plan/piece/warp-plan.js';
import { Pdf } from '../../src/sheets/paper/paper.js';
import { planText } from '../../src/sheets/plan-json.js';
import { planSheets } from '../../src/sheets/sheets.js';
import { figures } from '../../src/sheets/warp-sheet/sheet-figures.js';
import { yarnOrder } from '../../src/sheets/yarn-order.js';
import { kept } from '../plan/cloths.js';
import { complaints } from '../plan/legible.js';
import { type PdfPage, readPdf } from '../plan/pdf-text.js';

const NEEDS = { 'yarn size': '8/2 cotton', floating: 'yes' };
/** All words of a page, lines that were broken put together again. */
const words = (page: PdfPage): string => page.lines.map((line) => line.text).join(' ');

const CLOTHS = {
  'twill, 20 ends': () => kept('2/2 twill', { warp: 'DDLDL' }),
  'twill, 80 ends': () => kept('2/2 twill', { warp: 'DDLDL', times: 16 }),
  'summer and winter': () => kept('summer and winter', { warp: 'DDLDL', profile: 'A A B A B', by: 'unit', times: 2 }),
  overshot: () => kept('overshot', { warp: 'D', weft: 'DL' }),
  crackle: () => kept('crackle', { warp: 'DLDDL', profile: 'A A B A B', by: 'unit' }),
  huck: () => kept('huck', { warp: 'DDLDL', weft: 'L' }),
  "M's and O's": () => kept("M's and O's", { warp: 'DLDDL', by: 'unit' }),
  'turned twill': () => kept('turned twill', { warp: 'DLDDL', profile: 'A A B A B', by: 'unit', weft: 'LD' }),
  'turned twill, 80 ends': () =>
    kept('turned twill', { warp: 'DLDDL', profile: 'A A B A B', by: 'unit', weft: 'LDDDL', times: 4 }),
  'turned taqueté': () => kept('turned taqueté', { warp: 'DDLDL', by: 'unit', weft: 'D' }),
  'plain weave': () => kept('plain weave', { warp: 'DDLDL' }),
  'hound’s tooth': () => kept('2/2 twill', { warp: 'DDDDLLLL' }),
  // The last number of a draft stands close to the one before it.
  ...Object.fromEntries(
    [52, 61, 72, 91, 92, 102, 112].map((ends) => [
      `a repeat of ${ends} ends`,
      () => kept('plain weave', { warp: `${'D'.repeat(ends - 1)}L`, weft: 'DL' }),
    ]),
  ),
  'twill, 400 ends': () => kept('2/2 twill', { warp: 'DDLDL', times: 80 }),
};

/** How a weaver's loom makes sheets differ. */
const LOOMS = {
  rising: {},
  'sinking, four treadles': { loom: 'sinking, 4 treadles' },
  'countermarch of twelve shafts': { loom: 'countermarch, 12 shafts' },
  table: { loom: 'table' },
};

describe.each(['a4', 'letter'] as const)('sheets on %s', (paper) => {
  const [width, height] = paper === 'a4' ? [210, 297] : [215.9, 279.4];

  test.each(Object.entries(CLOTHS))('%s: two pages, type of 9 pt and more, what the plan says', async (_, make) => {
    const options = readPlanOptions('', 'needs', { ...NEEDS, paper });
    const warps = planWarps([make()], options);
    const pages = readPdf(await planSheets(warps, options));
    expect(pages).toHaveLength(2);
    const [warp] = warps;
    const [piece] = warp!.pieces;
    for (const page of pages) {
      expect(page.width).toBeCloseTo((width! * 72) / 25.4, 3);
      expect(page.height).toBeCloseTo((height! * 72) / 25.4, 3);
      expect(Math.min(...page.lines.map((line) => line.size))).toBeGreaterThanOrEqual(9);
      expect(words(page)).toContain(piece!.cloth.code);
      expect(words(page)).not.toContain('?');
    }
    for (const page of pages) expect(complaints(page)).toEqual([]);
    const [first, second] = pages.map(words) as [string, string];
    for (const [what, said] of figures(warp!, piece!)) expect(first).toContain(`${what} ${said}`);
    expect(first).toContain('100 mm');
    expect(first).toContain('4 in: measure me');
    expect(first).toMatch(/begin here|at the thick bar begin again from end 1/);
    // Shafts with the letters of their yarns, in the large type.
    const large = pages[1]!.lines.filter((line) => line.size === 11).map((line) => line.text);
    for (const line of threadingLines(warp!)) expect(large.join(' ')).toContain(line.ends.join(' '));
    for (const line of pickSheet(piece!).lines) expect(large.join(' ')).toContain(line.steps);
    for (const { letter, ends, rounds } of warp!.winding.chains.map((c) => ({
      ...c,
      letter: warp!.yarns[c.yarn]!.letter,
    }))) {
      expect(second).toContain(`${letter}: ${ends} ends, ${rounds} rounds`);
    }
    expect(second).toContain('swatch');
    expect(second).toContain('local codes and licensed practice decide');
    expect(second).not.toContain('goes on');
  });
});

test.each(Object.entries(LOOMS))('on a loom, %s: two pages, nothing covered', async (_, loom) => {
  const options = readPlanOptions('', 'needs', { ...NEEDS, ...loom, paper: 'letter' });
  for (const name of ['plain weave', 'overshot', 'turned twill, 80 ends', 'summer and winter'] as const) {
    const pages = readPdf(await planSheets(planWarps([CLOTHS[name]()], options), options));
    expect([name, ...pages.map(complaints)]).toEqual([name, [], []]);
  }
});

test('type over type and type beyond the margin are seen', async () => {
  const pdf = new Pdf({ paper: 'a4', seen: AT_THE_LOOM }, 'spoilt');
  pdf.page();
  pdf.text('warp and weft', 20, 20);
  pdf.text('weft', 27, 21.5);
  pdf.text('beside', 50, 20);
  pdf.text('out', 205, 40);
  const [page] = readPdf(await pdf.finish());
  expect(complaints(page!)).toEqual(['“out” beyond the margin', '“warp and weft” under “weft”']);
});

test('the rules are 100 mm and 4 in long, the picture is at actual size', async () => {
  const options = readPlanOptions('', 'needs', NEEDS);
  const [page] = readPdf(await planSheets(planWarps([CLOTHS['hound’s tooth']()], options), options));
  const level = page!.strokes.filter(({ height }) => height === 0).map(({ width }) => (width * 25.4) / 72);
  for (const length of [100, 101.6]) expect(level.some((mm) => Math.abs(mm - length) < 0.1)).toBe(true);
  const [picture] = page!.pictures;
  expect(words(page!)).toContain(`actual size, ${Math.round((picture!.width * 25.4) / 72)} mm: 5.9 repeats across`);
});

test('what a piece is too short for is said', async () => {
  const options = readPlanOptions('', 'needs', NEEDS);
  const [page] = readPdf(await planSheets(planWarps([CLOTHS['twill, 400 ends']()], options), options));
  expect(words(page!)).toContain(
    'A piece of 112 picks shows part of one repeat, which takes 400: 18 in (45.7 cm) finished.',
  );
});

test('tie-ups in words: what rises, what sinks, both', () => {
  const said = (flags: Record<string, string>, make = CLOTHS['twill, 20 ends']): string => {
    const [warp] = planWarps([make()], readPlanOptions('', 'needs', { ...NEEDS, ...flags }));
    return Object.fromEntries(figures(warp!, warp!.pieces[0]!))['tie-up'] ?? '';
  };
  expect(said({})).toBe('treadle 1: 1 2; 2: 2 3; 3: 3 4; 4: 1 4 (shafts up)');
  expect(said({ loom: 'sinking' })).toBe('treadle 1: 3 4; 2: 1 4; 3: 1 2; 4: 2 3 (shafts down)');
  expect(said({ loom: 'countermarch' })).toContain(
    'treadle 1: 1 2; 2: 2 3; 3: 3 4; 4: 1 4 (shafts up; all others down)',
  );
  expect(said({ loom: 'table' })).toBe('');
  // Four more shafts on the loom carry no ends, and are left untied.
  expect(said({ loom: 'countermarch, 8 shafts' })).toBe(said({ loom: 'countermarch' }));
  const bands = () => kept('turned twill on four shafts', { warp: 'DDLDL', by: 'unit' });
  expect(said({ loom: '6 treadles' }, bands)).toBe(
    '8 lifts on 6 treadles with two feet: treadle 1: 1; 2: 2; 3: 3; 4: 4; 5: 1 2; 6: 3 4 (shafts up)',
  );
});

test('steps that recur are written once, and read back to every pick', () => {
  const options = readPlanOptions('', 'needs', { ...NEEDS, loom: 'table' });
  const unfolded = (steps: string): string[] =>
    [...steps.matchAll(/\(([^)]*)\)×(\d+)|([^()/×]+)/g)].flatMap(([, block, times, single]) =>
      single !== undefined
        ? [single.trim()].filter((step) => step !== '')
        : Array.from({ length: Number(times) }, () => block!.split(' / ')).flat(),
    );
  for (const make of Object.values(CLOTHS)) {
    const [piece] = planWarps([make()], options)[0]!.pieces;
    const { lines, tabby } = pickSheet(piece!);
    if (tabby !== undefined) continue;
    const lifts = piece!.tied.lifts.map((lift) => lift.join(' '));
    expect(lines.flatMap((line) => unfolded(line.steps))).toEqual(lifts);
  }
});

test('the same plan gives the same bytes', async () => {
  const options = readPlanOptions('', 'needs', NEEDS);
  const cloths = [CLOTHS['twill, 20 ends'](), CLOTHS.crackle()];
  const twice = await Promise.all([0, 1].map(() => planSheets(planWarps(cloths, options), options)));
  expect(twice[0]!.equals(twice[1]!)).toBe(true);
});

test('what is too long for two pages goes on to the next, every end and pick once', async () => {
  const options = readPlanOptions('', 'needs', { ...NEEDS, width: '48 in' });
  const gamp = gampOf(
    ['DDLDL', 'DDDLL', 'DL', 'DDLL', 'LLDLD'].map((warp) => kept('2/2 twill', { warp })),
    options,
    { separator: 4 },
  );
  const warps = planWarps([gamp.cloth], gampNeeds(gamp, options));
  const [key, ...pages] = readPdf(await planSheets(warps, gampNeeds(gamp, options), gamp));
  for (let square = 1; square <= 25; square++) expect(key!.lines.map((line) => line.text)).toContain(String(square));
  expect(pages.length).toBeGreaterThan(2);
  const lists = pages.slice(1);
  expect(words(lists[0]!)).toContain('continued on next page');
  expect(words(lists.at(-1)!)).not.toContain('continued on next page');
  const large = lists.flatMap((page) => page.lines.filter((line) => line.size === 11)).map((line) => line.text);
  for (const { lines } of [
    ...threadingSections(warps[0]!, gamp.warps),
    ...pickSections(warps[0]!.pieces[0]!, gamp.wefts)!,
  ]) {
    for (const line of lines) expect(large.join(' ')).toContain(line.ends.join(' '));
  }
  // Sections are named in both lists, and every square has its code on the key.
  for (const { number, from, threads, order } of gamp.wefts) {
    const named = `section ${number}, ${order}: ${from} to ${from + threads - 1}`;
    expect(lists.map(words).join(' ').split(named).length).toBeGreaterThanOrEqual(2);
  }
  for (const { kept: square } of gamp.squares) expect(words(key!)).toContain(square.code);
  expect(words(key!)).toContain('so fine that only texture shows, no larger pattern: 13, 14, 18, 19');
});

test('the sheet says what the plan for programs says', () => {
  const options = readPlanOptions('', 'needs', NEEDS);
  const warps = planWarps([CLOTHS['twill, 20 ends'](), CLOTHS.overshot()], options);
  const plan = JSON.parse(planText(warps, yarnOrder(warps, options)));
  expect(plan).toMatchObject({ format: 'shedlight-plan', version: 1 });
  for (const [w, warp] of warps.entries()) {
    const threading = plan.warps[w].threading.split(' ') as string[];
    expect(threading).toHaveLength(warp.ends.length);
    for (const { letter, ends } of warp.wound) {
      const floating = letter === warp.floating.letter ? warp.floating.ends : 0;
      expect(threading.filter((end) => end.endsWith(letter))).toHaveLength(ends - floating);
    }
    for (const [p, piece] of warp.pieces.entries()) {
      expect(plan.warps[w].pieces[p].said).toEqual(Object.fromEntries(figures(warp, piece)));
      expect(plan.warps[w].pieces[p].throws).toHaveLength(piece.draft.weft.length);
    }
  }
});
