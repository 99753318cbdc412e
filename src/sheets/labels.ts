import type { WarpPlan } from '../plan/piece/warp-plan.js';
import { sayLong } from '../words/measure.js';
import { MARGIN, type Pdf } from './paper/paper.js';

/** Labels across and down a page, and the space between them, through which they are cut apart. */
const COLUMNS = 2;
const ROWS = 6;
const BETWEEN = 4;

/**
 * Adds labels to cut out, one for each chain of each warp: yarn, ends, length, and a note that the cross is at the top.
 *
 * @param weavers the weaver of each warp, if cloths were dealt
 */
export function addWarpLabels(pdf: Pdf, warps: readonly WarpPlan[], weavers?: readonly string[]): void {
  const width = (pdf.width - 2 * MARGIN - BETWEEN) / COLUMNS;
  const height = (pdf.height - 2 * MARGIN - (ROWS - 1) * BETWEEN) / ROWS;
  warps
    .flatMap((warp, at) =>
      (warp.faults.length > 0 ? [] : warp.wound).map((chain) => ({ warp, chain, weaver: weavers?.[at] })),
    )
    .forEach(({ warp, chain, weaver }, at) => {
      const place = at % (COLUMNS * ROWS);
      if (place === 0) pdf.page();
      const x = MARGIN + (place % COLUMNS) * (width + BETWEEN);
      const y = MARGIN + Math.floor(place / COLUMNS) * (height + BETWEEN);
      pdf.box(x, y, width, height, undefined, 0.1);
      // The hole for the tie.
      pdf.ring(x + width - 6, y + 6, 2.2);
      const { letter, ends } = chain;
      const { name } = warp.yarns.find((yarn) => yarn.letter === letter)!;
      pdf.text(letter, x + 4, y + 13, { size: 30, bold: true });
      pdf.text(pdf.fitted([name], width - 34, { size: 14 }), x + 16, y + 13, { size: 14 });
      pdf.text(`${ends} ends, ${sayLong(warp.length.wind, warp.per)}`, x + 4, y + 21, { size: 14, bold: true });
      const { floating } = warp;
      const apart =
        floating.ends > 0 && floating.letter === letter ? `; ${floating.ends} of them floating selvedges` : '';
      pdf.text(`cross at the top${apart}`, x + 4, y + 27.5, { size: 11 });
      const codes = warp.pieces.map(({ cloth }) => cloth.code).join(' ');
      const who = weaver === undefined ? '' : `weaver ${weaver}, `;
      pdf.text(pdf.fitted([`${who}warp ${warp.number}: ${codes}`], width - 8), x + 4, y + height - 5.5);
    });
}
