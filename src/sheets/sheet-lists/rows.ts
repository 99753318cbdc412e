import type { Frame, Pdf } from '../paper/paper.js';

/** Millimetres from line to line of running text, and from row to row of a list. */
export const LEADING = 3.9;
export const LINE = 4.9;
/** Side of a box to tick, and the distance from box to box. */
const TICK = 2.8;
const TICK_STEP = 3.7;

/** A row of a list: its height in millimetres, and how it is drawn, by the left end of its base line. */
export interface Row {
  readonly height: number;
  readonly draw: (x: number, y: number) => void;
  /** A heading, which is not left alone at the foot of a column. */
  readonly heads?: boolean;
}

/** Height of the base line in a row, from the foot of the row. */
const FOOT = 1.2;

/**
 * Draws rows into a column while there is room; returns the rows that are left, and the y under what was drawn. The last
 * line says where the list is continued.
 */
export function drawRows(
  pdf: Pdf,
  rows: readonly Row[],
  { x, y, height }: Frame,
  next: 'page' | 'column' = 'page',
): { rest: Row[]; y: number } {
  const fits = rowsThatFit(rows, height);
  let top = y;
  for (const row of rows.slice(0, fits)) {
    top += row.height;
    row.draw(x, top - FOOT);
  }
  const rest = rows.slice(fits);
  if (rest.length > 0 && fits > 0)
    pdf.text(`continued ${next === 'page' ? 'on next page' : 'in the next column'}`, x, top + LEADING - FOOT);
  return { rest, y: top };
}

/** How many rows fit a height, a line that says where they are continued included; headings stay with what follows. */
export function rowsThatFit(rows: readonly Row[], height: number): number {
  if (heightOf(rows) <= height + 1e-6) return rows.length;
  let room = height - LEADING;
  let fits = 0;
  while (fits < rows.length && rows[fits]!.height <= room) room -= rows[fits++]!.height;
  while (fits > 0 && rows[fits - 1]!.heads) fits--;
  return fits;
}

/** Rows of running text, broken to a width. */
export function textRows(pdf: Pdf, words: string, width: number, bold = false): Row[] {
  return pdf.wrapped(words, width, { bold }).map((line) => ({
    height: LEADING,
    heads: bold,
    draw: (x, y) => pdf.text(line, x, y, { bold }),
  }));
}

/** Height of rows together, in millimetres. */
export function heightOf(rows: readonly Row[]): number {
  return rows.reduce((sum, row) => sum + row.height, 0);
}

/** An empty row. */
export function space(height: number): Row {
  return { height, draw: () => {} };
}

/** Rows in columns of equal width side by side, as low as can be; each column is read down before the next. */
export function inColumns(pdf: Pdf, rows: readonly Row[], columns: number, width: number, between: number): Row {
  const step = (width + between) / columns;
  let high = heightOf(rows) / columns;
  let parts = columnsOf(rows, high);
  for (; parts.length > columns; parts = columnsOf(rows, high)) high += 0.5;
  const height = Math.max(...parts.map(heightOf));
  return {
    height,
    draw: (x, y) => {
      const top = y + FOOT - height;
      parts.forEach((part, c) => {
        drawRows(pdf, part, { x: x + c * step, y: top, width: step - between, height });
        const line = x + c * step - between / 2;
        if (c > 0) pdf.line(line, top + 1, line, y + FOOT, 0.2);
      });
    },
  };
}

/** Rows in columns of a height; headings stay with what follows. */
function columnsOf(rows: readonly Row[], height: number): Row[][] {
  const parts: Row[][] = [];
  for (let rest = rows; rest.length > 0; ) {
    let fits = 0;
    for (let used = rest[0]!.height; fits < rest.length && used <= height; used += rest[fits]?.height ?? 0) fits++;
    while (fits > 1 && fits < rest.length && rest[fits - 1]!.heads) fits--;
    parts.push(rest.slice(0, Math.max(1, fits)));
    rest = rest.slice(Math.max(1, fits));
  }
  return parts;
}

/** How many boxes fit a width. */
export function boxesIn(width: number): number {
  return Math.max(0, Math.floor((width + TICK_STEP - TICK) / TICK_STEP));
}

/** Draws boxes to tick, side by side, their foot on a base line. */
export function drawBoxes(pdf: Pdf, count: number, x: number, y: number): void {
  for (let at = 0; at < count; at++) pdf.box(x + at * TICK_STEP, y - TICK + 0.3, TICK, TICK);
}

/** Width of so many boxes in a row. */
export function boxesWidth(count: number): number {
  return count === 0 ? 0 : (count - 1) * TICK_STEP + TICK;
}

/** Most boxes for the repeats of a warp or a piece. */
const MOST_BOXES = 80;

/**
 * Rows of boxes to tick for repeats, one each or one for a round number of them, with running totals: a number after
 * each box, or after every five where there are many.
 *
 * @param totals threads done after each repeat
 * @param what the threads are, `all ends so far`
 */
export function tickRows(pdf: Pdf, totals: readonly number[], what: string, width: number): Row[] {
  const steps = [1, 2, 5, 10, 20, 50].flatMap((step) => [step, step * 100, step * 10_000]).sort((a, b) => a - b);
  const each = steps.find((step) => totals.length / step <= MOST_BOXES)!;
  const told = totals.filter((_, r) => (r + 1) % each === 0 || r === totals.length - 1);
  const said = each === 1 ? 'repeats done' : `a box for every ${each} repeats`;
  const heads = textRows(pdf, `${said}, and ${what}:`, width).map((row) => ({ ...row, heads: true }));
  const group = told.length <= 16 ? 1 : 5;
  const groups = Array.from({ length: Math.ceil(told.length / group) }, (_, g) =>
    told.slice(g * group, (g + 1) * group),
  );
  const number = Math.max(...told.map((total) => pdf.textWidth(String(total))));
  const step = boxesWidth(group) + 1 + number + 3;
  const across = Math.max(1, Math.floor((width + 3) / step));
  const rows = Array.from({ length: Math.ceil(groups.length / across) }, (_, line): Row => {
    const own = groups.slice(line * across, (line + 1) * across);
    return {
      height: LINE,
      draw: (x, y) =>
        own.forEach((boxes, at) => {
          drawBoxes(pdf, boxes.length, x + at * step, y);
          pdf.text(String(boxes.at(-1)), x + at * step + boxesWidth(boxes.length) + 1, y);
        }),
    };
  });
  return [...heads, ...rows];
}
