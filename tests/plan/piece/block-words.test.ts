import { describe, expect, test } from 'vitest';
import type { KeptCloth } from '../../../src/formats/shortlist.js';
import { readPlanOptions } from '../../../src/plan/options/plan-options.js';
import { blocksInWords } from '../../../src/plan/piece/block-words.js';
import { planWarps } from '../../../src/plan/piece/warp-plan.js';
import { explore } from '../../../src/search/explore.js';
import { planSheets } from '../../../src/sheets/sheets.js';
import { QUESTION } from '../../search/question.js';
import { YARNS } from '../cloths.js';
import { complaints } from '../legible.js';
import { type PdfPage, readPdf } from '../pdf-text.js';

const words = (page: PdfPage): string => page.lines.map((line) => line.text).join(' ');
const needsOn = (paper: string) => readPlanOptions('', 'needs', { 'yarn size': '8/2 cotton', paper });
/** The first page of a cloth's sheet. */
const firstPage = async (cloth: KeptCloth, paper = 'a4', options = needsOn(paper)): Promise<PdfPage> => {
  const [page] = readPdf(await planSheets(planWarps([cloth], options), options));
  return page!;
};
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
});
