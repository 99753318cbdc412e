import type { PiecePlan } from '../../plan/piece/piece-plan.js';
import type { WarpPlan } from '../../plan/piece/warp-plan.js';
import { type Frame, MARGIN, type Pdf } from '../paper/paper.js';
import { drawRows, heightOf, inColumns, type Row, rowsThatFit, space, textRows } from './rows.js';
import { drawHead, LISTS_TOP, type SheetOptions } from './sheet-head.js';
import { picksRows } from './sheet-picks.js';
import { cautionRows, closeRecordRows, recordOf } from './sheet-record.js';
import { threadingRows } from './sheet-threading.js';
import { windingRows } from './sheet-winding.js';

/** Space between the two columns of lists, and over the record, in millimetres. */
const BETWEEN = 6;
const OVER = 3;

/**
 * Adds the pages of lists, with the blanks at the foot of the first. What one page cannot hold in two columns is set
 * closely, across the page, where it then fits; else it continues on further pages.
 *
 * @param free what the first page of the sheet has left
 * @returns how many pages the sheet has then
 */
export function addLists(pdf: Pdf, warp: WarpPlan, piece: PiecePlan, options: SheetOptions, free?: Frame): number {
  const all = pdf.width - 2 * MARGIN;
  const width = (all - BETWEEN) / 2;
  const height = pdf.height - MARGIN - LISTS_TOP;
  const record = recordOf(pdf, warp, piece);
  const room = height - record.height - OVER;
  let [left, right] = inTwoColumns(pdf, warp, piece, options, width, room);
  if (Math.max(heightOf(left), heightOf(right)) > room + 1e-6 && addClosely(pdf, warp, piece, options, free)) return 2;
  let page = 1;
  while (page === 1 || left.length > 0 || right.length > 0) {
    page++;
    pdf.page();
    const y = drawHead(pdf, warp, piece, options, page);
    const [first, second] = [MARGIN, MARGIN + width + BETWEEN].map((x) => {
      return { x, y, width, height: page === 2 ? room : height };
    });
    // Picks that go on after the end of the threading take both columns.
    if (left.length === 0) right = drawRows(pdf, right, first!, 'column').rest;
    left = drawRows(pdf, left, first!).rest;
    right = drawRows(pdf, right, second!).rest;
    if (page === 2) record.draw(y + room + OVER);
  }
  return page;
}

/** How the warp is wound and threaded: nothing if it is on the loom. */
function warpRows(pdf: Pdf, warp: WarpPlan, width: number, sections: SheetOptions['sections']): [Row[], Row[]] {
  if (warp.onTheLoom) return [[], []];
  return [windingRows(pdf, warp, width), threadingRows(pdf, warp, width, sections?.warps)];
}

/** Threading at the left, picks at the right, and the winding first or where there is room for it. */
function inTwoColumns(
  pdf: Pdf,
  warp: WarpPlan,
  piece: PiecePlan,
  { sections }: SheetOptions,
  width: number,
  height: number,
): [Row[], Row[]] {
  const [winding, threading] = warpRows(pdf, warp, width, sections);
  const picks = picksRows(pdf, piece, width, height, sections?.wefts);
  const [own, other] = [winding, threading].map(heightOf);
  const beside = own! + other! > height && own! + heightOf(picks) <= height;
  const left = beside ? threading : [...winding, ...threading];
  const right = beside ? [...picks, space(2), ...winding] : picks;
  // What is too long for the left column goes under the right one, where all of it fits there.
  const fits = rowsThatFit(left, height);
  const rest = [space(2), ...textRows(pdf, 'threading, continued', width, true), ...left.slice(fits)];
  if (fits === left.length || heightOf(right) + heightOf(rest) > height) return [left, right];
  const said = textRows(pdf, 'continued in the next column', width);
  return [
    [...left.slice(0, fits), ...said],
    [...right, ...rest],
  ];
}

/**
 * Adds one page with all lists across it, over the record as usual, or else a close one: the swatch is left to the
 * album, and the cautions stand on what the first page has left. Returns false, and adds nothing, where neither fits.
 */
function addClosely(pdf: Pdf, warp: WarpPlan, piece: PiecePlan, options: SheetOptions, free?: Frame): boolean {
  const width = pdf.width - 2 * MARGIN;
  const height = pdf.height - MARGIN - LISTS_TOP;
  const record = recordOf(pdf, warp, piece);
  const cautions = cautionRows(pdf, width);
  const onFirst = free !== undefined && heightOf(cautions) <= free.height;
  const foot = [...closeRecordRows(pdf, warp, piece, width), ...(onFirst ? [] : cautions)];
  const head = acrossRows(pdf, warp, piece, options, width);
  const over = (under: number): Row[] | undefined => {
    const room = height - heightOf(head) - under;
    const rows = options.sections === undefined ? [...head, ...picksRows(pdf, piece, width, room)] : head;
    return heightOf(rows) + under <= height + 1e-6 ? rows : undefined;
  };
  const usual = over(record.height + OVER);
  const close = over(heightOf(foot));
  if (usual === undefined && close === undefined) return false;
  if (usual === undefined && onFirst) drawRows(pdf, cautions, free);
  pdf.page();
  const y = drawHead(pdf, warp, piece, options, 2);
  drawRows(pdf, usual ?? [...close!, ...foot], { x: MARGIN, y, width, height });
  if (usual !== undefined) record.draw(y + height - record.height);
  return true;
}

/** Winding and threading in two columns, and the groups of a gamp's picks, which are as narrow. */
function acrossRows(pdf: Pdf, warp: WarpPlan, piece: PiecePlan, { sections }: SheetOptions, width: number): Row[] {
  const half = (width - BETWEEN) / 2;
  const picks = sections === undefined ? [] : [space(2), ...picksRows(pdf, piece, half, 0, sections.wefts)];
  const rows = [...warpRows(pdf, warp, half, sections).flat(), ...picks];
  return rows.length === 0 ? [] : [inColumns(pdf, rows, 2, width, BETWEEN), space(2)];
}
