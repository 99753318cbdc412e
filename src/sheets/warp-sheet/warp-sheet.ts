import { draftSeenInWords } from '../../draft/point-of-view.js';
import type { PiecePlan } from '../../plan/piece/piece-plan.js';
import type { WarpPlan } from '../../plan/piece/warp-plan.js';
import { type Frame, MARGIN, type Pdf } from '../paper/paper.js';
import { addLists } from '../sheet-lists/list-pages.js';
import { LEADING } from '../sheet-lists/rows.js';
import { drawHead, type SheetOptions } from '../sheet-lists/sheet-head.js';
import { drawPictures, drawWholeRepeat, pictureWidth } from './picture.js';
import { drawDraft } from './sheet-draft.js';
import { figures } from './sheet-figures.js';
import { drawFoot } from './sheet-foot.js';
import {
  drawThreadingLines,
  drawTies,
  drawTieUp,
  type SplitDraft,
  splitDraft,
  threadingAlone,
  tieCellFor,
  tieUpHeight,
} from './split-draft.js';

/** Height of the heading of a threading in lines. */
const HEAD = 4.5;

/**
 * Adds the pages of one cloth: picture, figures and draft; then winding, threading, picks, and blanks. What is too long
 * for two pages continues on further ones.
 */
export async function addSheet(pdf: Pdf, warp: WarpPlan, piece: PiecePlan, options: SheetOptions): Promise<void> {
  pdf.page();
  const top = drawHead(pdf, warp, piece, options, 1);
  const repeats = options.sections === undefined ? undefined : 1;
  const under = await drawPictures(pdf, piece, MARGIN, top, repeats);
  const bottom = numbers(pdf, warp, piece, options, MARGIN + pictureWidth(piece, repeats) + 5, top + 3);
  const drafted = Math.max(under, bottom) + 2;
  const width = pdf.width - 2 * MARGIN;
  const frame = { x: MARGIN, y: drafted, width, height: pdf.height - MARGIN - 19 - drafted };
  const { later, free, tiesLater } = await drawDraftIn(pdf, piece, options, frame);
  drawFoot(pdf, piece.draft.yarns);
  const pages = addLists(pdf, warp, piece, options, free);
  addThreading(pdf, warp, piece, options, later, pages + 1, tiesLater === true);
}

/** Draws the draft as it fits a frame; returns what needs pages of its own, and what is left of the frame. */
async function drawDraftIn(
  pdf: Pdf,
  piece: PiecePlan,
  { loom }: SheetOptions,
  frame: Frame,
): Promise<{ readonly later?: SplitDraft; readonly tiesLater?: true; readonly free?: Frame }> {
  if (drawDraft(pdf, piece, loom.kind, frame)) return {};
  const split = splitDraft(pdf, piece, { ...frame, height: frame.height - HEAD });
  if (split !== undefined) {
    drawThreadingHead(pdf, piece, split, frame);
    const { height } = drawThreadingLines(pdf, piece, split, { ...frame, y: frame.y + HEAD });
    drawTieUp(pdf, piece, loom.kind, split, { ...frame, y: frame.y + HEAD + height });
    if (split.columns.length > 0) return {};
    const used = HEAD + height + Math.max(6, tieUpHeight(piece, split));
    return { free: { ...frame, y: frame.y + used, height: frame.height - used } };
  }
  const tie = tieCellFor(piece, frame);
  const alone = threadingAlone(pdf, piece, frame.width, tie);
  if (tie === undefined) {
    pdf.text(
      'no room for the draft here: picks are on page 2, tie-up and threading on the pages after',
      frame.x,
      frame.y + 3.4,
    );
    return { later: alone, tiesLater: true };
  }
  drawTieUp(pdf, piece, loom.kind, alone, frame);
  const used = Math.max(6, tieUpHeight(piece, alone)) + 2;
  await drawWholeRepeat(pdf, piece, { ...frame, y: frame.y + used, height: frame.height - used });
  return { later: alone };
}

function drawThreadingHead(pdf: Pdf, { draft }: PiecePlan, { lines }: SplitDraft, { x, y }: Frame): void {
  const split = lines.length > 1 ? `, in ${lines.length} lines` : '';
  const said = `threading: one repeat, ${draft.warp.length} ends${split}; end 1 at the ${pdf.seen.end}; at the thick bar begin again from end 1`;
  pdf.text(said, x, y + 3.4, { bold: true });
}

/** Adds pages with the lines of a threading too long for the first page. */
function addThreading(
  pdf: Pdf,
  warp: WarpPlan,
  piece: PiecePlan,
  options: SheetOptions,
  later: SplitDraft | undefined,
  first: number,
  tiesLater: boolean,
): void {
  let lines = later?.lines ?? [];
  let page = first;
  if (later !== undefined && tiesLater) {
    pdf.page();
    const y = drawHead(pdf, warp, piece, options, page++);
    const frame = { x: MARGIN, y, width: pdf.width - 2 * MARGIN, height: pdf.height - MARGIN - y };
    drawTies(pdf, piece, options.loom.kind, frame);
  }
  for (; later !== undefined && lines.length > 0; page++) {
    pdf.page();
    const y = drawHead(pdf, warp, piece, options, page);
    const frame = { x: MARGIN, y, width: pdf.width - 2 * MARGIN, height: pdf.height - MARGIN - y - HEAD };
    drawThreadingHead(pdf, piece, later, frame);
    lines = lines.slice(drawThreadingLines(pdf, piece, { ...later, lines }, { ...frame, y: y + HEAD }).drawn);
  }
}

/** Writes the figures beside the picture; returns the base line after the last. */
function numbers(pdf: Pdf, warp: WarpPlan, piece: PiecePlan, { sections }: SheetOptions, x: number, y: number): number {
  const column = x + 18;
  const width = pdf.width - MARGIN - column;
  let at = y;
  for (const [what, said] of [
    ...figures(warp, piece, sections?.warps),
    ['seen', draftSeenInWords(pdf.seen)],
  ] as const) {
    pdf.text(what, x, at, { bold: true });
    at = pdf.paragraph(said, column, at, width, LEADING);
  }
  for (const caution of [...piece.cautions, ...warp.cautions]) {
    pdf.text('note', x, at, { bold: true });
    at = pdf.paragraph(caution, column, at, width, LEADING, { bold: true });
  }
  return at;
}
