import { type Fold, folded, type PickLine, pickSheet, type ThreadingLine, threadingLines } from './lists.js';
import { NUMBERS, type Sheets } from './paper.js';
import type { PiecePlan } from './piece-plan.js';
import type { Frame } from './sheet-draft.js';
import type { WarpPlan } from './warp-plan.js';

const LEADING = 4.1;
const LINE = 5.2;
const TICK = 2.8;

/** How the warp is wound: the ways with their knots, the chains with their counting ties. Returns where it ends. */
export function drawWinding(sheets: Sheets, warp: WarpPlan, frame: Frame): number {
  const { winding, yarns } = warp;
  let y = title(sheets, `winding warp ${warp.number}, least work first`, frame);
  for (const [at, { way, knots, passes }] of winding.ways.entries()) {
    const said = `${at + 1}. ${way}: ${knots} knot${knots === 1 ? '' : 's'}, ${passes} walks`;
    y = sheets.paragraph(said, frame.x, y, frame.width, LEADING);
  }
  for (const { yarn, ends, rounds, oneMore, tieEvery, ties } of winding.chains) {
    const { letter } = yarns[yarn]!;
    const more = oneMore ? ' and one end' : '';
    const shown = ties.length <= 16 ? ties.join(' ') : `${ties.slice(0, 8).join(' ')} … ${ties.slice(-3).join(' ')}`;
    const said = `${letter}: ${ends} ends, ${rounds} rounds${more}; tie every ${tieEvery}: ${shown}`;
    y = sheets.paragraph(said, frame.x, y, frame.width, LEADING);
  }
  if (winding.chains.length > 1) {
    const runs = winding.stretch.map((run) => `${run.ends}${yarns[run.yarn]!.letter}`);
    const shown = runs.length <= 24 ? runs.join(' ') : `${runs.slice(0, 24).join(' ')} …`;
    const pegs = winding.even
      ? 'even runs: all changes at peg 1'
      : 'odd runs: changes at both pegs (double every run to keep them at one)';
    y = sheets.paragraph(
      `in order: ${shown}, a tie every ${winding.tieEvery}; ${pegs}`,
      frame.x,
      y,
      frame.width,
      LEADING,
    );
  }
  const { floating } = warp;
  return floating.ends === 0
    ? y
    : sheets.paragraph(
        `apart: ${floating.ends} floating selvedges in ${floating.letter}`,
        frame.x,
        y,
        frame.width,
        LEADING,
      );
}

/** The threading of one repeat in groups with boxes to tick, and the running totals of all repeats. */
export function drawThreading(sheets: Sheets, warp: WarpPlan, frame: Frame): void {
  let y = title(sheets, 'threading, end 1 at the left: shaft and yarn of each end', frame) + 0.6;
  const bottom = frame.y + frame.height;
  const totals = totalLines(sheets, warp, frame.width);
  const room = Math.floor((bottom - y - totals.length * LINE) / LINE);
  const folds = folded(threadingLines(warp), (line) => `${line.ends.join(' ')} ${line.times}`);
  const rows = folds.flatMap((fold) => threadingRows(sheets, fold, frame.width));
  const shown = rows.length <= room ? rows : rows.slice(0, room - 1);
  for (const row of shown) {
    sheets.text(row.numbers, frame.x, y);
    sheets.text(row.ends, frame.x + 17, y, { size: NUMBERS, bold: true });
    if (row.tick) sheets.box(frame.x + frame.width - TICK, y - TICK + 0.3, TICK, TICK);
    y += LINE;
  }
  if (shown.length < rows.length) {
    sheets.text(`goes on to end ${warp.repeat}; the whole list is in plan.json`, frame.x, y);
    y += LINE;
  }
  sheets.line(frame.x, y - LINE + 1.6, frame.x + frame.width, y - LINE + 1.6, 0.5);
  for (const line of totals) {
    let x = frame.x;
    for (const word of line) {
      const ticked = /^\d+$/.test(word);
      if (ticked) sheets.box(x, y - TICK + 0.3, TICK, TICK);
      sheets.text(word, x + (ticked ? TICK + 0.8 : 0), y);
      x += wordWidth(sheets, word);
    }
    y += LINE;
  }
}

/** The picks of one repeat, by shuttle, in one column or two. */
export function drawPicks(sheets: Sheets, piece: PiecePlan, frame: Frame): void {
  const steps = piece.tied.manner === 'lift plan' ? 'shafts up' : 'treadles';
  let y = title(sheets, `picks of one repeat: shuttle, from side to side, picks carried past, ${steps}`, frame) + 0.6;
  const key = (line: PickLine): string =>
    [line.to - line.from, line.shuttle, line.start, line.rests, line.steps, line.carry].join();
  const { tabby, lines } = pickSheet(piece);
  if (tabby !== undefined) {
    const said = `After each pick listed, ${tabby.shuttle} from the ${tabby.start}, ${steps} ${tabby.steps.replace(' ', ' and ')} in turn.`;
    y = sheets.paragraph(said, frame.x, y, frame.width, LEADING) + 1;
  }
  const rows = folded(lines, key).flatMap((fold) => pickRows(sheets, fold, frame.width));
  const room = Math.floor((frame.y + frame.height - y - 2 * LINE) / LINE);
  const shown = rows.length <= room ? rows : rows.slice(0, room - 1);
  for (const row of shown) {
    sheets.text(row.numbers, frame.x, y);
    sheets.text(row.shuttle, frame.x + 15, y, { bold: true });
    if (row.start !== undefined) {
      const x = frame.x + 17 + sheets.textWidth(row.shuttle, undefined, true);
      sheets.text(row.start, x, y);
    }
    sheets.text(row.steps, frame.x + frame.width, y, { size: NUMBERS, bold: true, align: 'right' });
    y += LINE;
  }
  if (shown.length < rows.length) {
    sheets.text(`goes on to pick ${piece.draft.weft.length}; the whole list is in plan.json`, frame.x, y);
    y += LINE;
  }
  const home = piece.shuttles.map(({ name, side }, s) => {
    const last = piece.list.filter((thrown) => thrown.shuttle === s).at(-1)!;
    return last.to === side ? `${name} is back on the ${side}` : `${name} ends on the ${last.to}: next repeat mirrored`;
  });
  sheets.paragraph(`After one repeat ${home.join('; ')}.`, frame.x, y, frame.width, LEADING);
}

function title(sheets: Sheets, words: string, { x, y, width }: Frame): number {
  return sheets.paragraph(words, x, y + 3.4, width, LEADING, { bold: true });
}

interface ThreadingRow {
  readonly numbers: string;
  readonly ends: string;
  readonly tick: boolean;
}

/** Rows of a fold of threading lines, wrapped to the width. */
function threadingRows(sheets: Sheets, { lines, times }: Fold<ThreadingLine>, width: number): ThreadingRow[] {
  const first = lines[0]!.from;
  const length = lines.at(-1)!.to - first + 1;
  const head =
    times === 1
      ? []
      : [{ numbers: `${first}–${first + length * times - 1}`, ends: `${times} times these lines:`, tick: false }];
  const rows = lines.flatMap((line) => {
    const said = line.ends.join(' ') + (line.times > 1 ? ` × ${line.times}` : '');
    const parts = sheets.wrapped(said, width - 17 - TICK - 2, { size: NUMBERS, bold: true });
    return parts.map((ends, at) => ({
      numbers: at === 0 ? `${line.from}–${line.to}` : '',
      ends,
      tick: at === parts.length - 1,
    }));
  });
  return [...head, ...rows];
}

/** Words of the running totals, broken into lines: a bare number gets a box to tick. */
function totalLines(sheets: Sheets, warp: WarpPlan, width: number): string[][] {
  const { repeats, repeat, border, balance } = warp;
  const all = Array.from({ length: repeats }, (_, r) => border + (r + 1) * repeat);
  const shown =
    all.length <= 24 ? all : all.filter((_, r) => (r + 1) % Math.ceil(all.length / 20) === 0 || r === all.length - 1);
  const counts = warp.wound.map(
    ({ letter, ends }) => `${letter} ${ends - (letter === warp.floating.letter ? warp.floating.ends : 0)}`,
  );
  const words = [
    ...(border > 0 ? [`border ${border} ends:`, String(border)] : []),
    `${repeats} repeat${repeats === 1 ? '' : 's'}, ends threaded so far:`,
    ...shown.map(String),
    ...(balance > 0 ? [`ends 1 to ${balance} again to balance:`, String(border + repeats * repeat + balance)] : []),
    ...(border > 0 ? ['border:', String(warp.ends.length)] : []),
    `in all ${counts.join(', ')}`,
  ];
  const lines: string[][] = [[]];
  let used = 0;
  for (const word of words) {
    const wide = wordWidth(sheets, word);
    if (used + wide > width && used > 0) {
      lines.push([]);
      used = 0;
    }
    lines.at(-1)!.push(word);
    used += wide;
  }
  return lines;
}

function wordWidth(sheets: Sheets, word: string): number {
  return sheets.textWidth(word) + (/^\d+$/.test(word) ? TICK + 3 : 3);
}

interface PickRow {
  readonly numbers: string;
  readonly shuttle: string;
  readonly start?: string;
  readonly steps: string;
}

function pickRows(sheets: Sheets, { lines, times }: Fold<PickLine>, width: number): PickRow[] {
  const first = lines[0]!.from;
  const length = lines.at(-1)!.to - first + 1;
  const head: PickRow[] =
    times === 1
      ? []
      : [{ numbers: `${first}–${first + length * times - 1}`, shuttle: `${times} times these lines:`, steps: '' }];
  const rows = lines.flatMap((line) => {
    const carry = line.carry > 0 ? `, carry ${line.carry}` : '';
    const start = `${line.start} to ${line.rests}${carry}`;
    const own = sheets.textWidth(line.shuttle, undefined, true) + sheets.textWidth(start) + 22;
    const parts = sheets.wrapped(line.steps, Math.max(25, width - own), { size: NUMBERS, bold: true });
    return parts.map(
      (steps, at): PickRow =>
        at === 0
          ? {
              numbers: line.from === line.to ? `${line.from}` : `${line.from}–${line.to}`,
              shuttle: line.shuttle,
              start,
              steps,
            }
          : { numbers: '', shuttle: '', steps },
    );
  });
  return [...head, ...rows];
}
