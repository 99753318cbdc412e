import { spacing } from '../../draft/draft.js';
import type { PiecePlan } from '../../plan/piece/piece-plan.js';
import { settWords } from '../../plan/piece/sett-advice.js';
import type { WarpPlan } from '../../plan/piece/warp-plan.js';
import type { Loom } from '../../structure/loom/loom-fit.js';
import { sayLength, sayLong, sayWeight } from '../../words/measure.js';
import { USUAL_CAUTIONS } from '../paper/cautions.js';
import { MARGIN, type Pdf, SMALL } from '../paper/paper.js';
import { drawDraft } from './sheet-draft.js';
import { figures } from './sheet-figures.js';
import { drawFoot } from './sheet-foot.js';
import { drawThreading, drawWinding, LEADING, threadingRows } from './sheet-lists.js';
import { drawPicks, pickRows } from './sheet-picks.js';

/** Side of the picture at actual size: at least 60 mm, at most this, and three repeats where they fit. */
const PICTURE = { least: 62, most: 84 };

/** For whom a sheet is. */
interface SheetOptions {
  readonly weaver?: string;
  readonly loom: Loom;
}

/**
 * Adds the two pages of one cloth: picture, draft and figures; then winding, threading, picks, and blanks. Longer
 * lists, such as those of a gamp, continue on further pages.
 */
export async function addSheet(pdf: Pdf, warp: WarpPlan, piece: PiecePlan, options: SheetOptions): Promise<void> {
  pdf.page();
  const top = head(pdf, warp, piece, options, 1);
  const side = pictureSide(piece);
  await pdf.cloth(piece.draft, { x: MARGIN, y: top, width: side, height: side });
  pdf.box(MARGIN, top, side, side);
  const across = spacing(piece.draft.sett).across;
  const repeats = (side / (piece.draft.warp.length * across)).toFixed(1);
  pdf.text(`actual size, ${side} mm: ${repeats} repeats across`, MARGIN, top + side + 4);
  const bottom = numbers(pdf, warp, piece, MARGIN + side + 5, top + 3);
  const drafted = Math.max(top + side + 8, bottom + 1);
  const foot = pdf.height - MARGIN - 17;
  await drawDraft(pdf, piece, options.loom.kind, {
    x: MARGIN,
    y: drafted,
    width: pdf.width - 2 * MARGIN,
    height: foot - drafted - 2,
  });
  drawFoot(pdf, piece.draft.yarns);

  const half = (pdf.width - 2 * MARGIN - 6) / 2;
  let ends = threadingRows(pdf, warp, half);
  let picks = pickRows(pdf, piece, half);
  for (let page = 2; page === 2 || ends.length + picks.length > 0; page++) {
    pdf.page();
    const lists = head(pdf, warp, piece, options, page);
    const bottom = pdf.height - MARGIN - (page === 2 ? RECORD + 3 : 0);
    const left = { x: MARGIN, y: lists, width: half };
    const wound = page === 2 ? drawWinding(pdf, warp, { ...left, height: 60 }) + 3 : lists;
    if (page === 2 || ends.length > 0) {
      ends = drawThreading(pdf, warp, ends, { ...left, y: wound, height: bottom - wound });
    }
    if (page === 2 || picks.length > 0) {
      picks = drawPicks(pdf, piece, picks, { x: MARGIN + half + 6, y: lists, width: half, height: bottom - lists });
    }
    if (page === 2) reckoning(pdf, warp, piece, bottom + 3);
  }
}

/** Height of the part of the second page that is filled in by hand, in millimetres. */
const RECORD = 106;

function head(pdf: Pdf, warp: WarpPlan, piece: PiecePlan, { weaver, loom }: SheetOptions, page: number): number {
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
  const y = MARGIN + 4.5 + Math.max(2, lines.length) * 5;
  if (page > 1) return y - 2;
  const who = weaver === undefined ? 'weaver' : `weaver ${weaver}`;
  pdf.text(who, MARGIN, y + 1);
  const from = MARGIN + pdf.textWidth(who) + 2;
  if (weaver === undefined) pdf.line(from, y + 1.5, MARGIN + 55, y + 1.5);
  pdf.text('date', MARGIN + 60, y + 1);
  pdf.line(MARGIN + 68, y + 1.5, MARGIN + 95, y + 1.5);
  pdf.text(
    `${LOOM_WORDS[piece.tied.manner === 'lift plan' ? 'table' : loom.kind]}; face up; warp ${warp.number}`,
    right,
    y + 1,
    { align: 'right' },
  );
  pdf.line(MARGIN, y + 3.2, right, y + 3.2, 0.4);
  return y + 6;
}

const LOOM_WORDS: Readonly<Record<Loom['kind'], string>> = {
  rising: 'rising shed, filled = shaft up',
  sinking: 'sinking shed, filled = shaft down',
  countermarch: 'countermarch, o rises, x sinks',
  table: 'lift plan, marked = shaft up',
};

function pictureSide(piece: PiecePlan): number {
  const { across, along } = spacing(piece.draft.sett);
  const three = 3 * Math.max(piece.draft.warp.length * across, piece.draft.weft.length * along);
  return Math.round(Math.max(PICTURE.least, Math.min(PICTURE.most, three)));
}

/** Writes the figures beside the picture; returns the base line after the last. */
function numbers(pdf: Pdf, warp: WarpPlan, piece: PiecePlan, x: number, y: number): number {
  const column = x + 24;
  const width = pdf.width - MARGIN - column;
  let at = y;
  for (const [what, said] of figures(warp, piece)) {
    pdf.text(what, x, at, { bold: true });
    at = pdf.paragraph(said, column, at, width, LEADING);
  }
  for (const caution of [...piece.cautions, ...warp.cautions]) {
    pdf.text('note', x, at, { bold: true });
    at = pdf.paragraph(caution, column, at, width, LEADING, { bold: true });
  }
  return at;
}

/**
 * Draws the foot of the second page: arithmetic of length and yarn, blanks for results, room for the swatch, cautions.
 */
function reckoning(pdf: Pdf, warp: WarpPlan, piece: PiecePlan, y: number): void {
  const { per, length } = warp;
  const right = pdf.width - MARGIN;
  pdf.line(MARGIN, y, right, y, 0.4);
  const box = 75;
  const blanks = 46;
  const width = right - MARGIN - box - blanks - 6;
  let at = pdf.paragraph(`length of warp ${warp.number}`, MARGIN, y + 4.5, width, LEADING, { bold: true });
  for (const { what, how, mm } of length.lines) {
    at = pdf.paragraph(
      `${what}: ${how} = ${what === 'wind' ? sayLong(mm, per) : sayLength(mm, per)}`,
      MARGIN,
      at,
      width,
      LEADING - 0.3,
    );
  }
  if (piece.settAdvice !== undefined) {
    at = pdf.paragraph('closest sett', MARGIN, at + 1, width, LEADING, { bold: true });
    at = pdf.paragraph(settWords(piece.settAdvice, piece.draft), MARGIN, at, width, LEADING - 0.3);
  }
  at = pdf.paragraph('yarn for this warp, includes 10 % reserve', MARGIN, at + 1, width, LEADING, { bold: true });
  for (const amount of warp.yarn) {
    const weight = amount.gramsWithReserve === null ? '' : `, ${sayWeight(amount.gramsWithReserve, per)}`;
    at = pdf.paragraph(
      `${amount.letter}: ${sayLong(amount.withReserve, per)}${weight}`,
      MARGIN,
      at,
      width,
      LEADING - 0.3,
    );
  }
  const x = MARGIN + width + 3;
  pdf.text('your results', x, y + 4.5, { bold: true });
  BLANKS.forEach((blank, row) => {
    const line = y + 11.2 + row * 7.2;
    pdf.text(blank, x, line);
    pdf.line(x + pdf.textWidth(blank) + 1, line + 0.5, x + blanks, line + 0.5);
  });
  pdf.box(right - box, y + 3, box, box);
  pdf.text('swatch', right - box + 2, y + 7);
  pdf.text(`mark cloth no. ${piece.number} in the weaving`, right - box + 2, y + 3 + box - 2);
  let foot = Math.max(at, y + box + 3) + 4.5;
  for (const caution of USUAL_CAUTIONS) foot = pdf.paragraph(caution, MARGIN, foot, right - MARGIN, LEADING - 0.3);
}

/** Labels of the blanks that are filled in by hand, then typed into the form for results. */
const BLANKS = [
  'ends per inch or cm',
  'picks per inch or cm',
  'width on the loom',
  'warp used',
  'off the loom',
  'finished',
  'how finished',
  'what I changed',
  'stars, 0 to 5',
];
