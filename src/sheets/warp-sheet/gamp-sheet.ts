import { spacing } from '../../draft/draft.js';
import type { Gamp, GampSection } from '../../plan/gamp/gamp-plan.js';
import { andList } from '../../words/counts.js';
import { sayLength } from '../../words/measure.js';
import { MARGIN, type Pdf } from '../paper/paper.js';
import { drawBoxes, drawRows, type Row, textRows } from '../sheet-lists/rows.js';
import { drawRules } from './sheet-foot.js';

const LEADING = 4.4;

/** Adds the key of a gamp: its picture with numbered squares, the orders of the sections, the code of each square. */
export async function addGampKey(pdf: Pdf, gamp: Gamp): Promise<void> {
  pdf.page();
  const { draft, code, recipe } = gamp.cloth;
  const right = pdf.width - MARGIN;
  pdf.text(recipe, MARGIN, MARGIN + 4.5, { size: 13, bold: true });
  pdf.text(code, right, MARGIN + 4.5, { size: 14, bold: true, align: 'right' });
  pdf.text(`${gamp.squares.length} squares, ${choiceWords(gamp)}`, MARGIN, MARGIN + 9.5);
  const { across, along } = spacing(draft.sett);
  const { seen } = pdf;
  const [ends, picks] = [draft.warp.length, draft.weft.length];
  const size = { width: ends * across, height: picks * along };
  const scale = Math.min(1, PICTURE / size.width, PICTURE / size.height);
  const paper = { width: size.width * scale, height: size.height * scale };
  const top = MARGIN + 13;
  await pdf.cloth(draft, { x: MARGIN, y: top, ...paper }, { times: 1 / scale });
  pdf.box(MARGIN, top, paper.width, paper.height);
  for (const { number, warp, weft } of gamp.squares) {
    const own = gamp.warps[warp - 1]!;
    const down = gamp.wefts[weft - 1]!;
    const left = (seen.end === 'right' ? ends - own.from + 1 - own.threads : own.from - 1) * across * scale;
    const above = (seen.pick === 'bottom' ? picks - down.from + 1 - down.threads : down.from - 1) * along * scale;
    const [x, y] = [MARGIN + left, top + above];
    const wide = pdf.textWidth(String(number), undefined, true) + 1.6;
    pdf.box(x, y, wide, 4, '#ffffff', 0.1);
    pdf.text(String(number), x + 0.8, y + 3.1, { bold: true });
  }
  const beside = MARGIN + paper.width + 6;
  const listed = list(pdf, `warp sections, from the ${seen.end}`, 'ends', gamp.warps, beside, top + 3, right - beside);
  const sections = list(
    pdf,
    `weft sections, from the ${seen.pick}`,
    'picks',
    gamp.wefts,
    beside,
    listed + 2,
    right - beside,
  );
  let y = Math.max(top + paper.height, sections) + 5;
  const said = [
    `drawn at ${Math.round(scale * 100)} % of ${sayLength(size.width, draft.sett.per)} in the reed`,
    ...likenessWords(gamp),
  ];
  for (const line of said) y = pdf.paragraph(line, MARGIN, y, right - MARGIN, LEADING);
  addSquares(pdf, gamp, y + 1);
}

/** Greatest side of the picture of a gamp, in millimetres: a larger one takes much ink. */
const PICTURE = 118;
const COLUMNS = 3;

/** How many cloths a choice of sections weaves, and how many any choice could. */
function choiceWords({ choice: { cloths, atMost, exact } }: Gamp): string {
  const most = exact ? 'no choice of sections weaves more' : `no choice of sections weaves more than ${atMost}`;
  return `${cloths} different cloths; ${most}`;
}

/** What squares have in common: the same cloth; no pattern but the texture of the weave. */
function likenessWords({ squares }: Gamp): string[] {
  const of = (cloth: number): number[] => squares.filter((s) => s.cloth === cloth).map(({ number }) => number);
  const groups = [...new Set(squares.map(({ cloth }) => cloth))].filter((cloth) => cloth > 0).map(of);
  const alike = groups.filter((group) => group.length > 1).map(andList);
  const flat = of(0);
  return [
    ...(alike.length === 0 ? [] : [`the same cloth, turned, mirrored or with colours swapped: ${alike.join('; ')}`]),
    ...(flat.length === 0 ? [] : [`so fine that only texture shows, no larger pattern: ${flat.join(', ')}`]),
  ];
}

/** Adds the codes of the squares, with a box to tick for those that are liked. */
function addSquares(pdf: Pdf, { squares }: Gamp, y: number): void {
  const width = (pdf.width - 2 * MARGIN) / COLUMNS;
  const numbers = Math.max(...squares.map(({ number }) => pdf.textWidth(String(number)))) + 3;
  const line = (at: number): Row => ({
    height: LEADING,
    draw: (x, base) =>
      squares.slice(at * COLUMNS, (at + 1) * COLUMNS).forEach(({ number, kept }, column) => {
        const left = x + column * width;
        drawBoxes(pdf, 1, left, base);
        pdf.text(String(number), left + 5, base);
        pdf.text(kept.code, left + 5 + numbers, base, { bold: true });
      }),
  });
  let rows: Row[] = [
    ...textRows(pdf, 'squares you like, and their codes, by which they are kept and planned', 3 * width, true),
    ...Array.from({ length: Math.ceil(squares.length / COLUMNS) }, (_, at) => line(at)),
  ];
  for (let top = y; rows.length > 0; top = MARGIN) {
    if (top === MARGIN) pdf.page();
    const height = pdf.height - MARGIN - 12 - top;
    rows = drawRows(pdf, rows, { x: MARGIN, y: top, width: 3 * width, height }).rest;
    if (top !== MARGIN || rows.length === 0) drawRules(pdf, MARGIN, pdf.height - MARGIN);
  }
}

function list(
  pdf: Pdf,
  title: string,
  what: string,
  sections: readonly GampSection[],
  x: number,
  top: number,
  width: number,
): number {
  pdf.text(title, x, top, { bold: true });
  let y = top + LEADING;
  for (const { number, order, from, threads } of sections) {
    const said = `${number}. ${order}, ${what} ${from} to ${from + threads - 1}`;
    y = pdf.paragraph(said, x, y, width, LEADING);
  }
  return y;
}
