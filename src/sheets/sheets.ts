import type { Share } from '../plan/deal/deal.js';
import type { Gamp } from '../plan/gamp/gamp-plan.js';
import type { PlanOptions } from '../plan/options/plan-options.js';
import type { WarpPlan } from '../plan/piece/warp-plan.js';
import { lettersLacking } from '../render/type.js';
import { addAlbum } from './album.js';
import { addContactSheets, type Contact } from './contact-pages.js';
import { addWarpLabels } from './labels.js';
import { type Pages, Pdf } from './paper/paper.js';
import { addGampKey } from './warp-sheet/gamp-sheet.js';
import { addSheet } from './warp-sheet/warp-sheet.js';
import { addYarnOrder } from './yarn-order.js';

/**
 * The PDF with the sheets of all pieces, two pages each, after the key of a gamp. The same plan gives the same bytes.
 */
export async function planSheets(warps: readonly WarpPlan[], options: PlanOptions, gamp?: Gamp): Promise<Buffer> {
  const pdf = new Pdf(options, 'Sample warps');
  if (gamp !== undefined) await addGampKey(pdf, gamp);
  for (const warp of warps) {
    for (const piece of warp.pieces)
      await addSheet(pdf, warp, piece, { loom: options.loom, ...(gamp && { sections: gamp }) });
  }
  return pdf.finish();
}

/** The PDF with the sheets of a group: two pages for each weaver, for the weaver's own loom. */
export async function dealSheets(shares: readonly Share[], warps: readonly WarpPlan[], pages: Pages): Promise<Buffer> {
  const pdf = new Pdf(pages, 'Sheets for the weavers');
  for (const [at, { weaver }] of shares.entries()) {
    const warp = warps[at]!;
    await addSheet(pdf, warp, warp.pieces[0]!, { weaver: toldApart(weaver.name, at), loom: weaver.loom });
  }
  return pdf.finish();
}

/** A weaver's name on paper; with a number where letters of it cannot be drawn. */
function toldApart(name: string, at: number): string {
  return lettersLacking(name).length > 0 ? `${at + 1}, ${name}` : name;
}

/** A weaver's name where it stands alone; with a word, where a yarn has that letter. */
function asWeaver(name: string, warps: readonly WarpPlan[]): string {
  const isYarn = warps.some(({ yarns }) => yarns.some(({ letter }) => letter === name.toUpperCase()));
  return isYarn ? `weaver ${name}` : name;
}

/** The teacher's PDF: contact sheets of all cloths, one yarn order for all warps, and labels for the chains. */
export async function teacherSheets(
  title: string,
  warps: readonly WarpPlan[],
  needs: Pages & Pick<PlanOptions, 'columns' | 'pictures' | 'inHand' | 'putUps'>,
  { weavers, gamp }: { readonly weavers?: readonly string[]; readonly gamp?: Gamp | undefined } = {},
): Promise<Buffer> {
  const { paper, columns, pictures } = needs;
  const pdf = new Pdf(needs, title);
  const named = weavers?.map((name) => asWeaver(name, warps));
  const contacts =
    gamp?.squares.map(({ number, kept }): Contact => ({ number, cloth: kept, draft: kept.draft })) ??
    warps
      .flatMap((warp) => warp.pieces)
      .map(({ number, cloth, draft }, at): Contact => {
        const weaver = named?.[at];
        return { number, cloth, draft, ...(weaver !== undefined && { weaver }) };
      });
  const list = weavers === undefined ? 'in the order of the shortlist, warp by warp' : 'in the order of the weavers';
  const sorted = gamp === undefined ? list : 'the squares of the gamp, by number';
  await addContactSheets(pdf, paper, contacts, { title, sorted, columns, pictures });
  addYarnOrder(pdf, 'Yarn for all', warps, needs, named);
  addWarpLabels(pdf, warps, weavers);
  return pdf.finish();
}

/** The PDF with album pages for the finished swatches of all warps. */
export async function albumSheets(
  warps: readonly WarpPlan[],
  pages: Pages,
  weavers?: readonly string[],
): Promise<Buffer> {
  const pdf = new Pdf(pages, 'Album of swatches');
  const pieces = warps.flatMap((warp) => warp.pieces);
  addAlbum(pdf, pieces, weavers?.map(toldApart));
  return pdf.finish();
}
