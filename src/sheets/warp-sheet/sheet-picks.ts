import { type Fold, folded, type PickLine, pickSheet } from '../../plan/piece/lists.js';
import type { PiecePlan } from '../../plan/piece/piece-plan.js';
import { restingSides } from '../../plan/warp/pick-list.js';
import { type Frame, NUMBERS, type Pdf } from '../paper/paper.js';
import { LEADING, LINE, title } from './sheet-lists.js';

/** Millimetres from row to row if the list is in two columns. */
const COMPACT = 4.6;
/** Most rows in a group that is written once and woven several times. */
const BLOCK = 24;
/** Indent, in millimetres, of steps that take lines of their own. */
const INDENT = 17;

/** A row of the pick list. */
interface PickRow {
  readonly numbers: string;
  readonly shuttle: string;
  /** The line of the pick list that begins with this row; absent in continuation rows and headings. */
  readonly line?: PickLine;
  readonly steps: string;
}

/** All rows of the pick list of one repeat, for a column `width` millimetres wide. */
export function pickRows(pdf: Pdf, piece: PiecePlan, width: number): PickRow[] {
  const key = (line: PickLine): string =>
    [line.to - line.from, line.shuttle, line.start, line.rests, line.steps, line.carry].join();
  return folded(pickSheet(piece).lines, key, BLOCK).flatMap((fold) => foldedPicks(pdf, fold, width));
}

/** Draws the pick list of one repeat; returns the rows for which there was no room. */
export function drawPicks(pdf: Pdf, piece: PiecePlan, rows: readonly PickRow[], frame: Frame): PickRow[] {
  const steps = piece.tied.manner === 'lift plan' ? 'shafts up' : 'treadles';
  const example = piece.tied.manner === 'lift plan' ? ' (12: 1 and 2)' : '';
  const heading = `picks of one repeat: shuttle and direction, picks carried, ${steps}${example}`;
  let y = title(pdf, heading, frame) + 0.6;
  const { tabby } = pickSheet(piece);
  if (tabby !== undefined) {
    const said = `After each pick listed, ${tabby.shuttle} from the ${tabby.start}, ${steps} ${tabby.steps.replace(' ', ' and ')} in turn.`;
    y = pdf.paragraph(said, frame.x, y, frame.width, LEADING) + 1;
  }
  const home = pdf.wrapped(homeWords(piece), frame.width);
  const free = frame.y + frame.height - y;
  const room = Math.max(0, Math.floor(free / LINE) - 1);
  const narrow = Math.floor((free - home.length * LEADING) / COMPACT) - 1;
  if (
    rows.length + home.length > room &&
    rows.length <= 2 * narrow &&
    rows.every((row) => isShort(pdf, row, frame, numbersWidth(pdf, rows)))
  ) {
    return drawCompact(pdf, piece, rows, { ...frame, y });
  }
  const all = rows.length + home.length <= room;
  const shown = all ? rows : rows.slice(0, Math.min(room, rows.length - 1));
  for (const row of shown) {
    pdf.text(row.numbers, frame.x, y);
    pdf.text(row.shuttle, frame.x + 15, y, { bold: true });
    const x = frame.x + 17 + pdf.textWidth(row.shuttle, undefined, true);
    if (row.line !== undefined) pdf.text(sideWords(row.line), x, y);
    const type = { size: NUMBERS, bold: true };
    if (row.line === undefined) pdf.text(row.steps, frame.x + INDENT, y, type);
    else pdf.text(row.steps, frame.x + frame.width, y, { ...type, align: 'right' });
    y += LINE;
  }
  if (!all) {
    pdf.text('continued on next page', frame.x, y);
    return rows.slice(shown.length);
  }
  pdf.paragraph(homeWords(piece), frame.x, y, frame.width, LEADING);
  return [];
}

/** Whether a row fits half the width, with a pointer for its side. */
function isShort(pdf: Pdf, row: PickRow, { width }: Frame, after: number): boolean {
  const words = pdf.textWidth(row.shuttle, undefined, true) + pdf.textWidth(row.steps, NUMBERS, true);
  return after + words + (row.line === undefined ? 0 : 5) <= width / 2 - 3;
}

/** Width of the pick numbers at the left of a column, in millimetres. */
function numbersWidth(pdf: Pdf, rows: readonly PickRow[]): number {
  return Math.max(...rows.map(({ numbers }) => pdf.textWidth(numbers))) + 2;
}

/** Draws the pick list in two columns; a pointer shows the direction of the first pick of each row. */
function drawCompact(pdf: Pdf, piece: PiecePlan, rows: readonly PickRow[], frame: Frame): PickRow[] {
  const { x, width } = frame;
  const half = Math.ceil(rows.length / 2);
  const column = width / 2 - 3;
  const after = numbersWidth(pdf, rows);
  pdf.pointer(x, frame.y - 1.1, 'right');
  pdf.text('first pick from left to right', x + 3.5, frame.y);
  const y = frame.y + COMPACT;
  rows.forEach((row, at) => {
    const left = x + (at < half ? 0 : width / 2 + 3);
    const line = y + (at % half) * COMPACT;
    pdf.text(row.numbers, left, line);
    pdf.text(row.shuttle, left + after, line, { bold: true });
    const way = left + after + 1.5 + pdf.textWidth(row.shuttle, undefined, true);
    if (row.line !== undefined) pdf.pointer(way, line - 1.1, row.line.start === 'left' ? 'right' : 'left');
    pdf.text(row.steps, left + column, line, { size: NUMBERS, bold: true, align: 'right' });
  });
  pdf.line(x + width / 2, y - 3, x + width / 2, y + (half - 1) * COMPACT + 1, 0.2);
  pdf.paragraph(homeWords(piece), x, y + half * COMPACT, width, LEADING);
  return [];
}

/** Words for where the shuttles lie after one repeat. */
function homeWords({ shuttles, draft }: PiecePlan): string {
  const sides = shuttles.map(({ side }) => side);
  const rests = restingSides(draft, draft.weft.length, sides);
  const home = shuttles.map(({ name, side }, s) => {
    return rests[s] === side
      ? `${name} is back on the ${side}`
      : `${name} ends on the ${rests[s]}: next repeat mirrored`;
  });
  return `After one repeat ${home.join('; ')}.`;
}

function foldedPicks(pdf: Pdf, { lines, times }: Fold<PickLine>, width: number): PickRow[] {
  const first = lines[0]!.from;
  const length = lines.at(-1)!.to - first + 1;
  const head: PickRow[] =
    times === 1
      ? []
      : [{ numbers: `${first}–${first + length * times - 1}`, shuttle: `${times} times these:`, steps: '' }];
  const rows = lines.flatMap((line): PickRow[] => {
    const numbers = line.from === line.to ? `${line.from}` : `${line.from}–${line.to}`;
    const row = { numbers, shuttle: line.shuttle, line, steps: '' };
    const type = { size: NUMBERS, bold: true };
    const words = pdf.textWidth(line.shuttle, undefined, true) + pdf.textWidth(sideWords(line)) + INDENT + 4;
    if (words + pdf.textWidth(line.steps, NUMBERS, true) <= width) return [{ ...row, steps: line.steps }];
    // A repeated group begins on a line of its own, and so do the steps after it.
    const parts = line.steps.split(/(?<=×\d+) | (?=\(|[\d+]+×)/);
    const own = parts.flatMap((part) => inLines(part, pdf.wrapped(part, width - INDENT, type).length));
    return [row, ...own.map((steps) => ({ numbers: '', shuttle: '', steps }))];
  });
  return [...head, ...rows];
}

/** Divides steps into `lines` lines of equal numbers of steps. */
function inLines(steps: string, lines: number): string[] {
  const each = steps.split(' ');
  const count = Math.ceil(each.length / lines);
  return Array.from({ length: Math.ceil(each.length / count) }, (_, line) =>
    each.slice(line * count, (line + 1) * count).join(' '),
  );
}

/** `left to right, carry 4`. */
function sideWords({ start, rests, carry }: PickLine): string {
  return `${start} to ${rests}${carry > 0 ? `, carry ${carry}` : ''}`;
}
