import { shaftCount } from '../../draft/draft.js';
import { folded } from '../../plan/piece/folds.js';
import type { PiecePlan } from '../../plan/piece/piece-plan.js';
import type { LoomKind } from '../../structure/loom/loom-fit.js';
import { counted } from '../../words/counts.js';
import type { Frame, Pdf } from '../paper/paper.js';
import { bracketAbove, bracketBeside, Grid, LETTERED } from '../sheet-lists/grid.js';

/** Sides of cells that are tried, in millimetres, the largest first; those of a tie-up. */
const CELLS = [4.4, 4.1, 3.7, 3.3, LETTERED] as const;
const [TIE_CELL, SMALL_TIE_CELL] = [4.4, 3.5] as const;
/** Least cell beside which every number has room, and the width of the word about a treadling that is listed. */
const NUMBERED = 3.4;
const TREADLING_WORD = 62;
/** Most threads in a stretch that is drawn once and worked several times, and the fewest ends and picks it must save. */
const LONGEST_FOLD = 40;
const LEAST_ENDS = 12;
const LEAST_PICKS = 6;
/** Heights and widths in millimetres: numbers and bracket over a line, space under it, and the space between stretches. */
const ABOVE = 6.6;
const BELOW = 3;
const LEFT = 5;
const BETWEEN = 3;
/** Width beside a column of the treadling for pick numbers at its left, and for brackets at its right. */
const NUMBERS_WIDE = 9;
const BRACKET_WIDE = 10;
/** Fewest threads of a stretch that stand alone on a line. */
const LEAST_ALONE = 8;

/** Threads that follow one another, drawn once; numbered from 0. */
interface Stretch {
  readonly from: number;
  readonly size: number;
  readonly times: number;
}

/** What is drawn of a draft that is too long for one piece: lines of the threading, and columns of the treadling. */
export interface SplitDraft {
  readonly cell: number;
  /** Side of a cell of the tie-up. */
  readonly tie: number;
  readonly lines: readonly (readonly Stretch[])[];
  readonly columns: readonly (readonly Stretch[])[];
}

/**
 * Splits a draft into lines and columns that fit a frame, with the largest cells that do. Where the treadling does not
 * fit, it is left to the list of picks; undefined if the threading alone is too high.
 */
export function splitDraft(pdf: Pdf, piece: PiecePlan, frame: Frame): SplitDraft | undefined {
  const picks = stretchesOf(pickWords(piece), LEAST_PICKS);
  for (const [tie, withPicks] of [
    [TIE_CELL, true],
    [TIE_CELL, false],
    [SMALL_TIE_CELL, false],
  ] as const) {
    for (const cell of CELLS) {
      const lines = linesOf(pdf, piece, cell, frame.width);
      const free = frame.height - lines.length * lineHeight(piece, cell);
      const room = columnRoom(piece, cell, frame.width);
      if (free < tieUpSize(piece, tie).height + 1) continue;
      if (!withPicks) return { cell, tie, lines, columns: [] };
      const columns = columnsOf(picks, cell, room, free - 9);
      if (columns !== undefined) return { cell, tie, lines, columns };
    }
  }
  return undefined;
}

/** Lines of the threading alone, with the smallest cells, for a page after one with a tie-up in cells of this side. */
export function threadingAlone(pdf: Pdf, piece: PiecePlan, width: number, tie: number = TIE_CELL): SplitDraft {
  return { cell: LETTERED, tie, lines: linesOf(pdf, piece, LETTERED, width), columns: [] };
}

/** Draws lines of the threading; returns how many of them there was room for, and the height of those. */
export function drawThreadingLines(
  pdf: Pdf,
  piece: PiecePlan,
  { cell, lines }: SplitDraft,
  frame: Frame,
): { drawn: number; height: number } {
  const { draft } = piece;
  const shafts = shaftCount(draft);
  const grid = new Grid(pdf, cell);
  const high = lineHeight(piece, cell);
  const mirrored = pdf.seen.end === 'right';
  /** The left edge of what is `wide` and begins at x, counted from the edge of end 1. */
  const left = (x: number, wide: number): number => (mirrored ? 2 * frame.x + frame.width - x - wide : x);
  const drawn = Math.min(lines.length, Math.floor(frame.height / high + 1e-9));
  lines.slice(0, drawn).forEach((line, at) => {
    const top = frame.y + at * high + ABOVE;
    const rows = top + cell * 1.25;
    for (let s = 1; s <= shafts; s++) {
      const y = rows + (grid.row(s, shafts) + 0.5) * cell + 1.1;
      if (mirrored) pdf.text(String(s), frame.x + frame.width - LEFT + 1, y);
      else pdf.text(String(s), frame.x + LEFT - 1, y, { align: 'right' });
    }
    let x = frame.x + LEFT;
    for (const stretch of line) {
      const { from, size, times } = stretch;
      for (let i = 0; i < size; i++) {
        grid.letter(left(x + i * cell, cell), top, draft.yarns[draft.warp[from + i]!]!);
        if (times === 1 && isNumbered(from, i, size))
          pdf.text(String(from + i + 1), left(x + (i + 0.5) * cell, 0), top - 1, { align: 'middle' });
      }
      if (times > 1) {
        pdf.text(foldWords(stretch), left(x, 0), top - 2.6, { align: mirrored ? 'right' : 'left' });
        bracketAbove(pdf, left(x, size * cell), top - 1.6, size * cell);
      }
      grid.lines(left(x, size * cell), rows, size, shafts);
      for (let i = 0; i < size; i++) {
        for (const shaft of draft.threading[from + i]!)
          grid.mark(left(x + i * cell, cell), rows + grid.row(shaft, shafts) * cell, String(shaft));
      }
      x += stretchWidth(pdf, stretch, cell);
      const last = from + size * times === draft.warp.length;
      const bar = left(x - BETWEEN + 1, 0);
      if (last) pdf.line(bar, top, bar, rows + shafts * cell, 0.9);
    }
  });
  return { drawn, height: drawn * high };
}

/**
 * Draws the tie-up alone: as large as beside a draft, or as a frame allows. Where the cells are smaller than figures, every
 * second shaft or treadle has its number.
 */
export function drawTies(pdf: Pdf, piece: PiecePlan, kind: LoomKind, frame: Frame, most: number = TIE_CELL): void {
  const { draft, tied } = piece;
  const shafts = shaftCount(draft);
  const [wide, high] = [frame.width - LEFT, frame.height - 9];
  const cell = Math.min(most, wide / tied.treadles.length, high / shafts);
  const step = cell < NUMBERED ? 2 : 1;
  const across = cell < pdf.textWidth(String(tied.treadles.length)) + 0.6 ? 2 : 1;
  const grid = new Grid(pdf, cell);
  const [left, top] = [frame.x + LEFT, frame.y + 9];
  pdf.text('tie-up', frame.x, frame.y + 3.4, { bold: true });
  grid.lines(left, top, tied.treadles.length, shafts);
  tied.treadles.forEach((treadle, t) => {
    if (t % across === 0) pdf.text(String(t + 1), left + (t + 0.5) * cell, top - 1, { align: 'middle' });
    grid.ties(treadle, left + t * cell, top, shafts, kind);
  });
  for (let s = 1; s <= shafts; s += step)
    pdf.text(String(s), left - 1, top + (grid.row(s, shafts) + 0.5) * cell + 1.1, { align: 'right' });
}

/** The side of the cells with which a tie-up has room in a frame, beside a word about the treadling; undefined if none. */
export function tieCellFor(piece: PiecePlan, frame: Frame): number | undefined {
  return [TIE_CELL, SMALL_TIE_CELL].find((cell) => {
    const { width, height } = tieUpSize(piece, cell);
    return height + 2 <= frame.height && width + TREADLING_WORD <= frame.width;
  });
}

/** Draws the tie-up, large, and the columns of the treadling beside it. */
export function drawTieUp(pdf: Pdf, piece: PiecePlan, kind: LoomKind, split: SplitDraft, frame: Frame): void {
  const { width } = tieUpSize(piece, split.tie);
  if (width > 0) drawTies(pdf, piece, kind, frame, split.tie);
  if (split.columns.length === 0) {
    pdf.text('treadling: the list of picks on page 2', frame.x + width, frame.y + 3.4);
    return;
  }
  drawColumns(pdf, piece, split, { ...frame, x: frame.x + width });
}

/** Height of the tie-up, its heading included, in millimetres. */
export function tieUpHeight(piece: PiecePlan, { tie }: SplitDraft): number {
  return tieUpSize(piece, tie).height;
}

function drawColumns(pdf: Pdf, piece: PiecePlan, { cell, columns }: SplitDraft, { x, y }: Frame): void {
  const { draft, tied } = piece;
  const wide = treadleCount(piece);
  const grid = new Grid(pdf, cell);
  const [what, how] =
    tied.manner === 'lift plan'
      ? ['lift plan', 'shafts up']
      : ['treadling', tied.manner === 'two feet' ? 'two treadles where two are marked' : 'one treadle a pick'];
  const where = columns.length > 1 ? `, in ${columns.length} columns` : '';
  pdf.text(`${what}: one repeat, ${counted(draft.weft.length, 'pick')}${where}; ${how}`, x, y + 3.4, { bold: true });
  columns.forEach((column, number) => {
    const left = x + number * columnWidth(piece, cell) + NUMBERS_WIDE;
    const head = y + 9;
    for (let t = 0; t < wide; t++) {
      const said = String(t + 1);
      if (pdf.textWidth(said) <= cell || t === 0 || t === wide - 1)
        pdf.text(said, left + (t + 0.5) * cell, head - 1, { align: 'middle' });
    }
    const high = column.reduce((sum, { size }) => sum + size * cell + BETWEEN, -BETWEEN);
    const upward = pdf.seen.pick === 'bottom';
    /** The upper edge of what is `tall` and begins so far from the column's first pick. */
    const top = (from: number, tall: number): number => head + (upward ? high - from - tall : from);
    let at = 0;
    for (const stretch of column) {
      const { from, size, times } = stretch;
      grid.lines(left, top(at, size * cell), wide, size);
      for (let j = 0; j < size; j++) {
        const pick = from + j;
        const row = top(at + j * cell, cell);
        const pressed = tied.manner === 'lift plan' ? tied.lifts[pick]! : tied.treadling[pick]!;
        for (const treadle of pressed) grid.mark(left + (treadle - 1) * cell, row, String(treadle));
        grid.letter(left + (wide + 0.3) * cell, row, draft.yarns[draft.weft[pick]!]!);
        if (isNumbered(from, j, size) && (times === 1 || j === 0))
          pdf.text(String(pick + 1), left - 1.5, row + 0.5 * cell + 1.1, { align: 'right' });
      }
      if (times > 1) {
        const upper = top(at, size * cell);
        bracketBeside(pdf, left + (wide + 1.3) * cell + 2, upper, size * cell);
        pdf.text(`× ${times}`, left + (wide + 1.3) * cell + 3, upper + (size * cell) / 2 + 1.1);
      }
      at += size * cell;
      const last = top(at + 0.3, 0);
      if (from + size * times === draft.weft.length) pdf.line(left, last, left + (wide + 1.3) * cell, last, 0.9);
      at += BETWEEN;
    }
  });
}

function linesOf(pdf: Pdf, piece: PiecePlan, cell: number, width: number): Stretch[][] {
  const { draft } = piece;
  const words = draft.threading.map((shafts, i) => `${shafts.join('+')} ${draft.warp[i]}`);
  const room = width - LEFT;
  const lines: Stretch[][] = [[]];
  let used = 0;
  for (const stretch of stretchesOf(words, LEAST_ENDS)) {
    let left = stretch;
    for (;;) {
      const wide = stretchWidth(pdf, left, cell);
      const cells = Math.floor((room - used - 1) / cell / 4) * 4;
      if (used + wide - BETWEEN + 1 <= room) {
        lines.at(-1)!.push(left);
        used += wide;
        break;
      }
      if (left.times > 1 || cells < LEAST_ALONE) {
        lines.push([]);
        used = 0;
        continue;
      }
      // Lines of equal lengths where a stretch needs several.
      const own = used > 0 ? cells : Math.min(cells, Math.ceil(left.size / Math.ceil(left.size / cells) / 4) * 4);
      lines.at(-1)!.push({ ...left, size: own });
      lines.push([]);
      left = { ...left, from: left.from + own, size: left.size - own };
      used = 0;
    }
  }
  return lines.filter((line) => line.length > 0);
}

/** Columns of at most `height` millimetres, as many as `room` has; undefined if they are too few. */
function columnsOf(stretches: readonly Stretch[], cell: number, room: number, height: number): Stretch[][] | undefined {
  const columns: Stretch[][] = [[]];
  let used = 0;
  for (const stretch of stretches) {
    let left = stretch;
    while (left.size > 0) {
      const cells = Math.floor((height - used - 1.5) / cell);
      const fits = left.size <= cells;
      const own = fits ? left.size : left.times > 1 || cells < 4 ? 0 : Math.floor(cells / 4) * 4;
      if (own > 0) columns.at(-1)!.push({ ...left, size: own });
      used += own * cell + BETWEEN;
      left = { ...left, from: left.from + own, size: left.size - own };
      if (left.size > 0) {
        if (used === BETWEEN && own === 0) return undefined;
        columns.push([]);
        if (columns.length > room) return undefined;
        used = 0;
      }
    }
  }
  return columns;
}

/** Threads in stretches: repetitions that save enough are folded, all others run on. */
function stretchesOf(words: readonly string[], least: number): Stretch[] {
  const found: { from: number; size: number; times: number }[] = [];
  let at = 0;
  for (const { lines, times } of folded(words, (word) => word, LONGEST_FOLD)) {
    const fold = lines.length * (times - 1) >= least;
    const size = fold ? lines.length : lines.length * times;
    const last = found.at(-1);
    if (!fold && last !== undefined && last.times === 1) last.size += size;
    else found.push({ from: at, size, times: fold ? times : 1 });
    at += lines.length * times;
  }
  return found;
}

function pickWords({ draft, tied }: PiecePlan): string[] {
  const pressed = tied.manner === 'lift plan' ? tied.lifts : tied.treadling;
  return draft.weft.map((yarn, j) => `${pressed[j]} ${yarn}`);
}

function stretchWidth(pdf: Pdf, stretch: Stretch, cell: number): number {
  const cells = stretch.size * cell;
  return (stretch.times === 1 ? cells : Math.max(cells, pdf.textWidth(foldWords(stretch)))) + BETWEEN;
}

/** `1–48, 6 times`. */
function foldWords({ from, size, times }: Stretch): string {
  return `${from + 1}–${from + size * times}, ${times} times`;
}

function lineHeight(piece: PiecePlan, cell: number): number {
  return ABOVE + cell * (1.25 + shaftCount(piece.draft)) + BELOW;
}

function treadleCount({ tied, draft }: PiecePlan): number {
  return tied.manner === 'lift plan' ? shaftCount(draft) : tied.treadles.length;
}

/** Width and height of the tie-up with what is round it; nothing on a lift plan. */
function tieUpSize({ tied, draft }: PiecePlan, cell: number = TIE_CELL): { width: number; height: number } {
  if (tied.manner === 'lift plan') return { width: 0, height: 0 };
  return { width: LEFT + tied.treadles.length * cell + 7, height: 9 + shaftCount(draft) * cell };
}

function columnWidth(piece: PiecePlan, cell: number): number {
  return NUMBERS_WIDE + (treadleCount(piece) + 1.3) * cell + BRACKET_WIDE;
}

/** How many columns of the treadling fit beside the tie-up. */
function columnRoom(piece: PiecePlan, cell: number, width: number): number {
  return Math.floor((width - tieUpSize(piece).width) / columnWidth(piece, cell));
}

/** Whether a thread of a stretch has its number: the first, and every fifth of the repeat that is not too near to it. */
function isNumbered(from: number, at: number, size: number): boolean {
  return at === 0 || ((from + at + 1) % 5 === 0 && at >= 3 && size > 3);
}
