import type { Gamp } from '../../plan/gamp/gamp-plan.js';
import type { PiecePlan } from '../../plan/piece/piece-plan.js';
import type { WarpPlan } from '../../plan/piece/warp-plan.js';
import type { Loom } from '../../structure/loom/loom-fit.js';
import { MARGIN, type Pdf, SMALL } from '../paper/paper.js';

/** For whom a sheet is, and the sections of a gamp. */
export interface SheetOptions {
  readonly weaver?: string;
  readonly loom: Loom;
  readonly sections?: Pick<Gamp, 'warps' | 'wefts'>;
}

/** The y under the head of a page of lists. */
export const LISTS_TOP = MARGIN + 12.5;

/** Draws the head of a page; returns the y under it. */
export function drawHead(
  pdf: Pdf,
  warp: WarpPlan,
  piece: PiecePlan,
  { weaver, loom }: SheetOptions,
  page: number,
): number {
  const right = pdf.width - MARGIN;
  const { cloth } = piece;
  pdf.text(cloth.code, right, MARGIN + 4.5, { size: 14, bold: true, align: 'right' });
  pdf.text(`sheet ${piece.number}, page ${page}`, right, MARGIN + 9, { align: 'right' });
  const width = right - MARGIN - 42;
  const size = pdf.wrapped(cloth.recipe, width, { size: 13, bold: true }).length > 2 ? SMALL : 13;
  const lines = pdf.wrapped(cloth.recipe, width, { size, bold: true }).slice(0, 2);
  lines.forEach((line, at) => {
    pdf.text(line, MARGIN, MARGIN + 4.5 + at * 5, { size, bold: true });
  });
  if (page > 1) return LISTS_TOP;
  let y = MARGIN + 15.5;
  const shed = `${LOOM_WORDS[piece.tied.manner === 'lift plan' ? 'table' : loom.kind]}; face up; warp ${warp.number}${warp.onTheLoom ? ', on the loom' : ''}`;
  const free = right - MARGIN - pdf.textWidth(shed) - DATE - 8;
  const who = weaver === undefined ? 'weaver' : `weaver ${weaver}`;
  const long = pdf.textWidth(who) > free;
  // A name that is too long for its place takes lines of its own.
  if (long) y = pdf.paragraph(pdf.fitted([who], 2 * (right - MARGIN) - 10), MARGIN, y, right - MARGIN, 4.2);
  else pdf.text(who, MARGIN, y);
  if (weaver === undefined) pdf.line(MARGIN + pdf.textWidth(who) + 2, y + 0.5, MARGIN + free, y + 0.5);
  const date = long ? MARGIN : MARGIN + free + 4;
  pdf.text('date', date, y);
  pdf.line(date + 8, y + 0.5, date + DATE, y + 0.5);
  pdf.text(shed, right, y, { align: 'right' });
  pdf.line(MARGIN, y + 2.2, right, y + 2.2, 0.4);
  return y + 5;
}

/** Millimetres for the word date and a line to write on. */
const DATE = 32;

const LOOM_WORDS: Readonly<Record<Loom['kind'], string>> = {
  rising: 'rising shed, filled = shaft up',
  sinking: 'sinking shed, filled = shaft down',
  countermarch: 'countermarch, o rises, x sinks',
  table: 'lift plan, marked = shaft up',
};
