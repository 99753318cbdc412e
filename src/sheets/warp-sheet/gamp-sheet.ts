import { spacing } from '../../draft/draft.js';
import type { Gamp, GampSection } from '../../plan/gamp/gamp-plan.js';
import { andList } from '../../words/counts.js';
import { sayLength } from '../../words/measure.js';
import { MARGIN, type Pdf } from '../paper/paper.js';
import { drawRules } from './sheet-foot.js';

const LEADING = 4.4;

/** Adds the key of a gamp: a picture of the whole gamp with numbered squares, and the orders of the sections. */
export async function addGampKey(pdf: Pdf, gamp: Gamp): Promise<void> {
  pdf.page();
  const { draft, code, recipe } = gamp.cloth;
  const right = pdf.width - MARGIN;
  pdf.text(recipe, MARGIN, MARGIN + 4.5, { size: 13, bold: true });
  pdf.text(code, right, MARGIN + 4.5, { size: 14, bold: true, align: 'right' });
  const { cloths, atMost, exact } = gamp.choice;
  const most = exact ? 'no choice of sections weaves more' : `no choice of sections weaves more than ${atMost}`;
  pdf.text(`${gamp.squares.length} squares, ${cloths} different cloths; ${most}`, MARGIN, MARGIN + 9.5);
  const { across, along } = spacing(draft.sett);
  const size = { width: draft.warp.length * across, height: draft.weft.length * along };
  const lists = (Math.max(gamp.warps.length, gamp.wefts.length) + 2) * LEADING * 1.4 + 16;
  const room = { width: right - MARGIN, height: pdf.height - 2 * MARGIN - 16 - lists };
  const scale = Math.min(1, room.width / size.width, room.height / size.height);
  const paper = { width: size.width * scale, height: size.height * scale };
  const top = MARGIN + 13;
  await pdf.cloth(draft, { x: MARGIN, y: top, ...paper }, { times: 1 / scale });
  pdf.box(MARGIN, top, paper.width, paper.height);
  for (const { number, warp, weft } of gamp.squares) {
    const own = gamp.warps[warp - 1]!;
    const down = gamp.wefts[weft - 1]!;
    const x = MARGIN + (own.from - 1) * across * scale;
    const y = top + (down.from - 1) * along * scale;
    const wide = pdf.textWidth(String(number), undefined, true) + 1.6;
    pdf.box(x, y, wide, 4, '#ffffff', 0.1);
    pdf.text(String(number), x + 0.8, y + 3.1, { bold: true });
  }
  let y = top + paper.height + 5;
  pdf.text(`drawn at ${Math.round(scale * 100)} % of ${sayLength(size.width, draft.sett.per)} in the reed`, MARGIN, y);
  y += LEADING;
  const alike = alikeSquares(gamp);
  if (alike !== '')
    y = pdf.paragraph(`alike, but for turning or exchange: ${alike}`, MARGIN, y, right - MARGIN, LEADING);
  y += 1;
  const half = (right - MARGIN) / 2;
  list(pdf, 'warp sections, from the left', 'ends', gamp.warps, MARGIN, y, half - 4);
  list(pdf, 'weft sections, from the first pick', 'picks', gamp.wefts, MARGIN + half, y, half);
  drawRules(pdf, MARGIN, pdf.height - MARGIN);
}

/** Numbers of the squares that weave the same cloth, `2 and 4; 6 and 8`; squares without a pattern come last. */
function alikeSquares({ squares }: Gamp): string {
  const of = (cloth: number): number[] => squares.filter((s) => s.cloth === cloth).map(({ number }) => number);
  const groups = [...new Set(squares.map(({ cloth }) => cloth))].filter((cloth) => cloth > 0).map(of);
  const flat = of(0);
  return [
    ...groups.filter((group) => group.length > 1).map(andList),
    ...(flat.length > 0 ? [`no pattern shows in ${flat.join(', ')}`] : []),
  ].join('; ');
}

function list(
  pdf: Pdf,
  title: string,
  what: string,
  sections: readonly GampSection[],
  x: number,
  top: number,
  width: number,
): void {
  pdf.text(title, x, top, { bold: true });
  let y = top + LEADING;
  for (const { number, order, from, threads } of sections) {
    const said = `${number}. ${order}, ${what} ${from} to ${from + threads - 1}`;
    y = pdf.paragraph(said, x, y, width, LEADING);
  }
}
