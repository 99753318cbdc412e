import type { Seen } from '../../draft/point-of-view.js';
import type { GampSection } from '../../plan/gamp/gamp-plan.js';
import { folded } from '../../plan/piece/folds.js';
import {
  type GroupLine,
  type ListSection,
  type ThreadingPart,
  threadingParts,
  threadingSections,
} from '../../plan/piece/threading-list.js';
import type { WarpPlan } from '../../plan/piece/warp-plan.js';
import { counted } from '../../words/counts.js';
import { NUMBERS, type Pdf } from '../paper/paper.js';
import { boxesIn, boxesWidth, drawBoxes, LINE, type Row, space, textRows, tickRows } from './rows.js';

/** Indent in millimetres of what a group says, and the place of the brackets of groups that recur in turn. */
const INDENT = 18;
const BRACKET = 15.5;
/** Most rows of a bracket, and of boxes under a group, that are not divided between pages. */
const KEPT_TOGETHER = 4;

/**
 * The threading list of the whole warp in the order in which it is threaded, in groups with a box to tick for each time,
 * and a box with the running total for each repeat.
 */
export function threadingRows(pdf: Pdf, warp: WarpPlan, width: number, sections?: readonly GampSection[]): Row[] {
  const parts =
    sections === undefined ? partRows(pdf, warp, width) : sectionRows(pdf, threadingSections(warp, sections), width);
  const counts = warp.wound.map(
    ({ letter, ends }) => `${letter} ${ends - (letter === warp.floating.letter ? warp.floating.ends : 0)}`,
  );
  return [
    space(2),
    ...textRows(pdf, `threading, end 1 at the ${pdf.seen.end}: shaft and yarn of each end`, width, true),
    ...parts,
    ...textRows(pdf, `in all ${warp.ends.length}: ${counts.join(', ')}`, width),
  ];
}

/** Rows of the sections of a gamp, each under its name; a separator of one line has its name in that line. */
export function sectionRows(pdf: Pdf, sections: readonly ListSection[], width: number): Row[] {
  return sections.flatMap(({ title, lines }) => {
    const rows = groupRows(pdf, lines, width);
    if (title !== 'separator' || rows.length > 1) return [...textRows(pdf, title, width, true), ...rows];
    const [row] = rows;
    const named = (x: number, y: number) => {
      row!.draw(x, y);
      pdf.text(title, x + width - boxesWidth(lines[0]!.times) - 2, y, { align: 'right' });
    };
    return [{ ...row!, draw: named }];
  });
}

function partRows(pdf: Pdf, warp: WarpPlan, width: number): Row[] {
  let before = 0;
  return threadingParts(warp).flatMap((part) => {
    const totals = Array.from({ length: part.times }, (_, r) => before + ((r + 1) * part.ends) / part.times);
    before += part.ends;
    return [
      ...textRows(pdf, partWords(part, warp, before, pdf.seen.end), width, true),
      ...groupRows(pdf, part.lines, width),
      ...(part.what === 'repeats' ? tickRows(pdf, totals, 'all ends so far', width) : []),
    ];
  });
}

/** Rows for groups of threads; groups that recur in turn stand in a bracket, with boxes for every time. */
export function groupRows(pdf: Pdf, lines: readonly GroupLine[], width: number): Row[] {
  const folds = folded(lines, (line) => `${line.ends.join(' ')} ${line.times}`);
  return folds.flatMap(({ lines: own, times }) => {
    const first = own[0]!.from;
    const all = (own.at(-1)!.to - first + 1) * times;
    const rows = own.flatMap((line) => lineRows(pdf, line, times, width));
    if (times === 1) return rows;
    const short = rows.length <= KEPT_TOGETHER;
    const bracketed = rows.map((row, at): Row => {
      const heads = row.heads || (short && at < rows.length - 1);
      return { ...row, heads, draw: (x, y) => drawBracketed(pdf, row, x, y, at === 0, at === rows.length - 1) };
    });
    const head = `${first}–${first + all - 1}: ${times} times what the bracket holds`;
    return [...textRows(pdf, head, width).map((row) => ({ ...row, heads: true })), ...bracketed];
  });
}

function drawBracketed(pdf: Pdf, row: Row, x: number, y: number, first: boolean, last: boolean): void {
  row.draw(x, y);
  const [top, foot] = [y + 1.2 - row.height + (first ? 0.8 : 0), y + (last ? 0.6 : 1.2)];
  pdf.line(x + BRACKET, top, x + BRACKET, foot, 0.4);
  if (first) pdf.line(x + BRACKET, top, x + BRACKET + 1.4, top, 0.4);
  if (last) pdf.line(x + BRACKET, foot, x + BRACKET + 1.4, foot, 0.4);
}

function lineRows(pdf: Pdf, line: GroupLine, times: number, width: number): Row[] {
  const said = line.ends.join(' ') + (line.times > 1 ? ` ×${line.times}` : '');
  const type = { size: NUMBERS, bold: true };
  const parts = pdf.wrapped(said, width - INDENT - boxesWidth(1) - 1, type);
  const rows = parts.map((ends, at): Row => {
    const numbers = at > 0 ? '' : line.from === line.to ? `${line.from}` : `${line.from}–${line.to}`;
    return {
      height: LINE,
      heads: at < parts.length - 1,
      draw: (x, y) => {
        pdf.text(numbers, x, y);
        pdf.text(ends, x + INDENT, y, type);
      },
    };
  });
  // Boxes beside the last words, and the others on lines of their own.
  const boxes = line.times * times;
  const last = rows.pop()!;
  const beside = Math.min(boxes, boxesIn(width - INDENT - 2 - pdf.textWidth(parts.at(-1)!, NUMBERS, true)));
  const each = boxesIn(width - INDENT);
  const lines = Math.ceil((boxes - beside) / each);
  const short = lines < KEPT_TOGETHER;
  const under = Array.from({ length: lines }, (_, at): Row => {
    const count = Math.min(each, boxes - beside - at * each);
    return {
      height: LINE - 1,
      heads: short && at < lines - 1,
      draw: (x, y) => drawBoxes(pdf, count, x + width - boxesWidth(count), y),
    };
  });
  return [
    ...rows,
    {
      ...last,
      heads: short && lines > 0,
      draw: (x, y) => {
        last.draw(x, y);
        drawBoxes(pdf, beside, x + width - boxesWidth(beside), y);
      },
    },
    ...under,
  ];
}

function partWords(
  { what, times, ends }: ThreadingPart,
  { ends: all, yarns, border }: WarpPlan,
  done: number,
  first: Seen['end'],
): string {
  const last = first === 'left' ? 'right' : 'left';
  const letter = yarns[all[0]!.yarn]!.letter;
  if (what === 'first border') return `${first} border: ${counted(ends, 'end')} in ${letter}, ${done} in all so far`;
  if (what === 'last border') return `${last} border: ${counted(ends, 'end')} in ${letter}, ${done} in all`;
  if (what === 'balance') return `${counted(ends, 'end')} to balance, ${done} in all so far`;
  const begin = border > 0 ? ', numbered from 1 in each' : '';
  return times === 1 ? `once: ${counted(ends, 'end')}` : `${times} repeats of ${counted(ends / times, 'end')}${begin}:`;
}
