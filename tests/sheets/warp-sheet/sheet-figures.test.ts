import { describe, expect, test } from 'vitest';
import type { KeptCloth } from '../../../src/formats/shortlist.js';
import { readPlanOptions } from '../../../src/plan/options/plan-options.js';
import { planWarps } from '../../../src/plan/piece/warp-plan.js';
import { planSheets } from '../../../src/sheets/sheets.js';
import { figures } from '../../../src/sheets/warp-sheet/sheet-figures.js';
import { kept } from '../../plan/cloths.js';
import { complaints } from '../../plan/legible.js';
import { type PdfPage, readPdf } from '../../plan/pdf-text.js';
import { wandering } from './hard-cloths.js';

const words = (page: PdfPage): string => page.lines.map((line) => line.text).join(' ');
const needsOn = (paper: string) => readPlanOptions('', 'needs', { 'yarn size': '8/2 cotton', paper });
/** The first page of a cloth's sheet. */
const firstPage = async (cloth: KeptCloth, paper = 'a4', options = needsOn(paper)): Promise<PdfPage> => {
  const [page] = readPdf(await planSheets(planWarps([cloth], options), options));
  return page!;
};
/** A cloth whose warp order begins later, and its weft order on the third pick. */
const begun = (cloth: KeptCloth, warp: number): KeptCloth => ({
  ...cloth,
  order: { ...cloth.order!, start: [warp, 2] },
});

describe('what a recipe says in short stands on the sheet in words', () => {
  test('heddles: shafts of equal numbers together, empty shafts too', () => {
    const plan = (cloth: KeptCloth) => planWarps([cloth], needsOn('a4'))[0]!;
    const said = (cloth: KeptCloth) => Object.fromEntries(figures(plan(cloth), plan(cloth).pieces[0]!)).heddles;
    expect(said(kept('2/2 twill', { warp: 'DL' }))).toBe('shafts 1–4: 100 each');
    const few = wandering({ ends: 4, shafts: 12 });
    const { heddles, ends } = plan(few);
    expect(heddles.reduce((sum, each) => sum + each, 0)).toBe(ends.length);
    expect(said(few)).toMatch(/^shaft.*, shafts \d–12: none$/);
  });

  test.each(['a4', 'letter'])('where the orders begin, on %s', async (paper) => {
    const cloth = kept('2/2 twill', { warp: 'DDDDLLLL' });
    for (const options of [needsOn(paper), readPlanOptions('', 'needs', { paper, mirror: 'single', border: '8 D' })]) {
      const page = await firstPage(begun(cloth, 4), paper, options);
      expect(words(page)).toContain('begin warp order begins on end 5, weft order on pick 3');
      expect(complaints(page)).toEqual([]);
    }
    expect(words(await firstPage(cloth, paper))).not.toContain('order begins');
  });
});
