import { type Fold, folded, type ThreadingLine, threadingLines } from '../../plan/piece/lists.js';
import type { WarpPlan } from '../../plan/piece/warp-plan.js';
import { counted } from '../../words/counts.js';
import { type Frame, NUMBERS, type Pdf } from '../paper/paper.js';

export const LEADING = 4.1;
export const LINE = 5.2;
const TICK = 2.8;

/**
 * Draws how to wind the warp: ways with their knots, chains with their counting ties. Returns the base line after it.
 */
export function drawWinding(pdf: Pdf, warp: WarpPlan, frame: Frame): number {
  const { winding, yarns } = warp;
  let y = title(pdf, `winding warp ${warp.number}, least work first (walk: peg to peg)`, frame);
  for (const [at, { way, knots, passes }] of winding.ways.entries()) {
    const said = `${at + 1}. ${way}: ${counted(knots, 'knot')}, ${passes} passes peg to peg`;
    y = pdf.paragraph(said, frame.x, y, frame.width, LEADING);
  }
  for (const { yarn, ends, rounds, oneMore, tieEvery, ties } of winding.chains) {
    const { letter } = yarns[yarn]!;
    const more = oneMore ? ' and one end' : '';
    const shown = ties.length <= 16 ? ties.join(' ') : `${ties.slice(0, 8).join(' ')} … ${ties.slice(-3).join(' ')}`;
    const said = `${letter}: ${ends} ends, ${rounds} rounds${more}; tie every ${tieEvery}: ${shown}`;
    y = pdf.paragraph(said, frame.x, y, frame.width, LEADING);
  }
  if (winding.chains.length > 1) {
    const runs = winding.stretch.map((run) => yarns[run.yarn]!.letter + (run.ends > 1 ? run.ends : ''));
    const shown = runs.length <= 24 ? runs.join(' ') : `${runs.slice(0, 24).join(' ')} … as they are threaded`;
    const pegs = winding.even
      ? 'even runs: all changes at peg 1'
      : 'odd runs: changes at both pegs (double every run to keep them at one)';
    y = pdf.paragraph(
      `in order: ${shown}, a counting tie every ${winding.tieEvery}; ${pegs}`,
      frame.x,
      y,
      frame.width,
      LEADING,
    );
  }
  const { floating } = warp;
  return floating.ends === 0
    ? y
    : pdf.paragraph(
        `apart: ${floating.ends} floating selvedges in ${floating.letter}`,
        frame.x,
        y,
        frame.width,
        LEADING,
      );
}

/** A row of the threading list; a box to tick where a group ends. */
interface ThreadingRow {
  readonly numbers: string;
  readonly ends: string;
  readonly tick: boolean;
}

/** All rows of the threading list of one repeat, for a column `width` millimetres wide. */
export function threadingRows(pdf: Pdf, warp: WarpPlan, width: number): ThreadingRow[] {
  const folds = folded(threadingLines(warp), (line) => `${line.ends.join(' ')} ${line.times}`);
  return folds.flatMap((fold) => foldedThreading(pdf, fold, width));
}

/**
 * Draws the threading list of one repeat, in groups with boxes to tick, and after it the running totals of all repeats.
 * Returns the rows for which there was no room.
 */
export function drawThreading(pdf: Pdf, warp: WarpPlan, rows: readonly ThreadingRow[], frame: Frame): ThreadingRow[] {
  let y = title(pdf, 'threading, end 1 at the left: shaft and yarn of each end', frame) + 0.6;
  const totals = totalLines(pdf, warp, frame.width);
  const room = Math.max(0, Math.floor((frame.y + frame.height - y) / LINE) - 1);
  const all = rows.length + totals.length <= room;
  // The last row is kept on one page with the words that follow the list.
  const shown = all ? rows : rows.slice(0, Math.min(room, rows.length - 1));
  for (const row of shown) {
    pdf.text(row.numbers, frame.x, y);
    pdf.text(row.ends, frame.x + 17, y, { size: NUMBERS, bold: true });
    if (row.tick) pdf.box(frame.x + frame.width - TICK, y - TICK + 0.3, TICK, TICK);
    y += LINE;
  }
  if (!all) {
    pdf.text('continued on next page', frame.x, y);
    return rows.slice(shown.length);
  }
  pdf.line(frame.x, y - LINE + 1.6, frame.x + frame.width, y - LINE + 1.6, 0.5);
  for (const line of totals) {
    let x = frame.x;
    for (const word of line) {
      const ticked = /^\d+$/.test(word);
      if (ticked) pdf.box(x, y - TICK + 0.3, TICK, TICK);
      pdf.text(word, x + (ticked ? TICK + 0.8 : 0), y);
      x += wordWidth(pdf, word);
    }
    y += LINE;
  }
  return [];
}

/** Writes the heading of a list; returns the base line after it. */
export function title(pdf: Pdf, words: string, { x, y, width }: Frame): number {
  return pdf.paragraph(words, x, y + 3.4, width, LEADING, { bold: true });
}

/** Rows of a fold of threading lines, wrapped to the width. */
function foldedThreading(pdf: Pdf, { lines, times }: Fold<ThreadingLine>, width: number): ThreadingRow[] {
  const first = lines[0]!.from;
  const length = lines.at(-1)!.to - first + 1;
  const head =
    times === 1
      ? []
      : [{ numbers: `${first}–${first + length * times - 1}`, ends: `${times} times these lines:`, tick: false }];
  const rows = lines.flatMap((line) => {
    const said = line.ends.join(' ') + (line.times > 1 ? ` ×${line.times}` : '');
    const parts = pdf.wrapped(said, width - 17 - TICK - 2, { size: NUMBERS, bold: true });
    return parts.map((ends, at) => ({
      numbers: at === 0 ? `${line.from}–${line.to}` : '',
      ends,
      tick: at === parts.length - 1,
    }));
  });
  return [...head, ...rows];
}

/** The words of the running totals, broken into lines; a bare number gets a box to tick. */
function totalLines(pdf: Pdf, warp: WarpPlan, width: number): string[][] {
  const { repeats, repeat, border, balance } = warp;
  const all = Array.from({ length: repeats }, (_, r) => border + (r + 1) * repeat);
  const shown =
    all.length <= 24 ? all : all.filter((_, r) => (r + 1) % Math.ceil(all.length / 20) === 0 || r === all.length - 1);
  const counts = warp.wound.map(
    ({ letter, ends }) => `${letter} ${ends - (letter === warp.floating.letter ? warp.floating.ends : 0)}`,
  );
  const words = [
    ...(border > 0 ? [...borderWords(warp, -border), String(border)] : []),
    `${counted(repeats, 'repeat')}, ends threaded so far:`,
    ...shown.map(String),
    ...(balance > 0
      ? [
          `${balance === 1 ? 'end 1' : `ends 1 to ${balance}`} again to balance:`,
          String(border + repeats * repeat + balance),
        ]
      : []),
    ...(border > 0 ? [...borderWords(warp, balance), String(warp.ends.length)] : []),
    `in all ${counts.join(', ')}`,
  ];
  const lines: string[][] = [[]];
  let used = 0;
  for (const word of words) {
    const wide = wordWidth(pdf, word);
    if (used + wide > width && used > 0) {
      lines.push([]);
      used = 0;
    }
    lines.at(-1)!.push(word);
    used += wide;
  }
  return lines;
}

/** Words for threading a border that begins at end `from` of a repeat (counted from 0; negative: before the repeat). */
function borderWords({ border, repeat, ends, yarns }: WarpPlan, from: number): string[] {
  const first = (((from % repeat) + repeat) % repeat) + 1;
  return [`border: ${border} ends in ${yarns[ends[0]!.yarn]!.letter},`, `threaded from end ${first} of the repeat on:`];
}

function wordWidth(pdf: Pdf, word: string): number {
  return pdf.textWidth(word) + (/^\d+$/.test(word) ? TICK + 3 : 3);
}
