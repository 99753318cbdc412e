import { addAlbum } from './album.js';
import { addContactSheets, type Contact } from './contact.js';
import type { Share } from './deal.js';
import type { Gamp } from './gamp-plan.js';
import { addGampKey } from './gamp-sheet.js';
import { addWarpLabels } from './labels.js';
import type { Needs, Paper } from './needs.js';
import { Sheets } from './paper.js';
import { addSheet } from './sheet.js';
import type { WarpPlan } from './warp-plan.js';
import { addYarnOrder } from './yarn-order.js';

/** The sheets of all pieces of a plan as PDF, two pages each, a gamp's key before them. The same plan gives the same bytes. */
export async function planSheets(warps: readonly WarpPlan[], needs: Needs, gamp?: Gamp): Promise<Buffer> {
  const sheets = new Sheets(needs.paper, 'Sample warps');
  if (gamp !== undefined) await addGampKey(sheets, gamp);
  for (const warp of warps) {
    for (const piece of warp.pieces) await addSheet(sheets, warp, piece, { loom: needs.loom });
  }
  return sheets.finish();
}

/** The sheets of a group as PDF: two pages for each weaver, made for their loom. */
export async function dealSheets(shares: readonly Share[], warps: readonly WarpPlan[], paper: Paper): Promise<Buffer> {
  const sheets = new Sheets(paper, 'Sheets for the weavers');
  for (const [at, { weaver }] of shares.entries()) {
    const warp = warps[at]!;
    await addSheet(sheets, warp, warp.pieces[0]!, { weaver: weaver.name, loom: weaver.loom });
  }
  return sheets.finish();
}

/** The teacher's PDF: contact sheets of all cloths, one yarn order for all warps, and labels for their chains. */
export async function teacherSheets(
  title: string,
  warps: readonly WarpPlan[],
  needs: Pick<Needs, 'paper' | 'columns' | 'pictures'>,
  weavers?: readonly string[],
): Promise<Buffer> {
  const { paper, columns, pictures } = needs;
  const sheets = new Sheets(paper, title);
  const contacts = warps
    .flatMap((warp) => warp.pieces)
    .map(({ number, cloth, draft }, at): Contact => {
      const weaver = weavers?.[at];
      return { number, cloth, draft, ...(weaver !== undefined && { weaver }) };
    });
  const sorted = weavers === undefined ? 'in the order of the shortlist, warp by warp' : 'in the order of the weavers';
  await addContactSheets(sheets, paper, contacts, { title, sorted, columns, pictures });
  addYarnOrder(sheets, 'Yarn for all', warps, weavers);
  addWarpLabels(sheets, warps, weavers);
  return sheets.finish();
}

/** Album pages for the finished swatches of all warps as PDF. */
export async function albumSheets(
  warps: readonly WarpPlan[],
  paper: Paper,
  weavers?: readonly string[],
): Promise<Buffer> {
  const sheets = new Sheets(paper, 'Album of swatches');
  const pieces = warps.flatMap((warp) => warp.pieces);
  addAlbum(sheets, pieces, weavers);
  return sheets.finish();
}
