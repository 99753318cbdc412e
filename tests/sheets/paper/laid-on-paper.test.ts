import { describe, expect, test } from 'vitest';
import type { KeptCloth } from '../../../src/formats/shortlist.js';
import { readPlanOptions } from '../../../src/plan/options/plan-options.js';
import { blocksInWords } from '../../../src/plan/piece/block-words.js';
import { planWarps } from '../../../src/plan/piece/warp-plan.js';
import { explore } from '../../../src/search/explore.js';
import { planSheets, teacherSheets } from '../../../src/sheets/sheets.js';
import { kept, YARNS } from '../../plan/cloths.js';
import { complaints } from '../../plan/legible.js';
import { type PdfPage, readPdf } from '../../plan/pdf-text.js';
import { QUESTION } from '../../search/question.js';

const words = (page: PdfPage): string => page.lines.map((line) => line.text).join(' ');
const needsOn = (paper: string) => readPlanOptions('', 'needs', { yarns: '8/2 cotton', paper });
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
const byBlock = async (structure: string): Promise<KeptCloth> => {
  const { found } = await explore({
    ...QUESTION,
    structures: [structure],
    orders: [[0, 1, 0, 0, 1]],
    weft: { rule: 'fixed', order: [0] },
    by: ['block'],
  });
  return { ...found[0]!, note: '', stars: 0 };
};

describe('what a recipe says in short stands on the sheet in words', () => {
  test.each(['a4', 'letter'])('where the orders begin, on %s', async (paper) => {
    const cloth = kept('2/2 twill', { warp: 'DDDDLLLL' });
    for (const options of [needsOn(paper), readPlanOptions('', 'needs', { paper, mirror: 'single', border: '8 D' })]) {
      const page = await firstPage(begun(cloth, 4), paper, options);
      expect(words(page)).toContain('begin warp order begins on end 5, weft order on pick 3');
      expect(complaints(page)).toEqual([]);
    }
    expect(words(await firstPage(cloth, paper))).not.toContain('order begins');
  });

  // Turned taqueté: a unit D L D L weaves block A, L D L D weaves block B (B. Blumenthal, as reported in a weaver’s journal).
  test('which colour of turned taqueté by block makes which block', async () => {
    const cloth = await byBlock('turned taqueté');
    const page = await firstPage(cloth);
    expect(words(page)).toContain('blocks D weaves block A (a unit of D L D L), L block B (a unit of L D L D)');
    expect(complaints(page)).toEqual([]);
    const letters = cloth.draft.warp.map((yarn) => YARNS[yarn]!.letter).join('');
    // The order D L D D L, an element a unit.
    expect(letters).toBe(['DLDL', 'LDLD', 'DLDL', 'DLDL', 'LDLD'].join(''));
  });

  test('of other structures by block the letters alone; none by thread or unit, or on a draft', async () => {
    expect(words(await firstPage(await byBlock('summer and winter')))).toContain('blocks D weaves block A, L block B');
    expect(blocksInWords('summer and winter', 'unit', YARNS)).toBeUndefined();
    expect(blocksInWords('my towel', 'block', YARNS)).toBeUndefined();
  });

  test.each(['a4', 'letter'])('the contact sheet explains the short form, where there is one, on %s', async (paper) => {
    const cloths = ['DDDDLLLL', 'DDLDL', 'DDDLL'].map((warp) => kept('2/2 twill', { warp }));
    const options = needsOn(paper);
    const sheet = async (list: readonly KeptCloth[]) =>
      readPdf(await teacherSheets('Round', planWarps(list, options), options))[0]!;
    const later = await sheet(cloths.map(begun));
    expect(words(later)).toContain('from 5/3: the warp order begins on end (by unit: unit) 5, the weft order on pick');
    expect(complaints(later)).toEqual([]);
    expect(words(await sheet(cloths))).not.toContain('from 5/3');
  });
});
