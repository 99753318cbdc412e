import { drawdown } from '../cloth/drawdown.js';
import { colourAt, colourFace } from '../cloth/face.js';
import { luminance, type Yarn } from '../colour/yarn.js';
import type { LoomKind } from './loom.js';
import { type Frame, greyOf, NUMBERS, type Sheets, SMALL } from './paper.js';
import type { PiecePlan } from './piece-plan.js';

/** Millimetres of a cell in which an 11 pt number stands, of the largest cell, and of the smallest that can be counted. */
const NUMBERED = 4.1;
const LARGEST = 6;
const SMALLEST = 1;
/** Room for the shaft numbers at the left, and for pick numbers and starting words at the right. */
const LEFT = 16;
const RIGHT = 16;
const HEAD = 9;

/**
 * Draws one repeat: colours and threading on top, tie-up at the right, treadling with colours below it, the drawdown in
 * the greys of its yarns. What is too large to be counted is drawn as far as it goes, and so marked.
 */
export function drawDraft(sheets: Sheets, piece: PiecePlan, kind: LoomKind, frame: Frame): void {
  const { draft, tied } = piece;
  const { warp, weft } = draft;
  const shafts = Math.max(...draft.threading.flat(), ...draft.tieUp.flat());
  const columns = tied.manner === 'lift plan' ? shafts : tied.treadles.length;
  const across = (frame.width - LEFT - RIGHT) / (Math.max(warp.length, 1) + columns + 3.5);
  const along = (frame.height - HEAD) / (weft.length + shafts + 3);
  const cell = Math.max(SMALLEST, Math.min(LARGEST, across, along));
  const ends = Math.min(warp.length, Math.floor((frame.width - LEFT - RIGHT) / cell - columns - 3.5));
  const picks = Math.min(weft.length, Math.floor((frame.height - HEAD) / cell - shafts - 3));
  const left = frame.x + LEFT;
  const threading = frame.y + HEAD + cell * 1.25;
  const cloth = threading + (shafts + 0.7) * cell;
  const right = left + (ends + 0.7) * cell;
  const bar = right + (columns + 0.4) * cell;
  const grid = new Grid(sheets, cell);

  bracket(sheets, left, frame.y + 3.4, ends * cell, countWords('end', ends, warp.length));
  for (let i = 0; i < ends; i++) {
    grid.letter(left + i * cell, threading - cell * 1.25, draft.yarns[warp[i]!]!);
    if (isNumbered(i, ends, cell))
      sheets.text(String(i + 1), left + (i + 0.5) * cell, frame.y + HEAD - 1, { align: 'middle' });
  }
  grid.lines(left, threading, ends, shafts);
  for (let i = 0; i < ends; i++) {
    for (const shaft of draft.threading[i]!)
      grid.mark(left + i * cell, threading + (shafts - shaft) * cell, String(shaft));
  }
  for (let s = 1; s <= shafts; s++) {
    if (cell >= 3.2)
      sheets.text(String(s), left - 1.5, threading + (shafts - s + 0.5) * cell + 1.1, { align: 'right' });
  }
  grid.lines(right, threading, columns, tied.manner === 'lift plan' ? 0 : shafts);
  tied.treadles.forEach(({ rise, sink }, t) => {
    for (const shaft of rise)
      grid.tie(right + t * cell, threading + (shafts - shaft) * cell, kind === 'countermarch' ? 'o' : 'up');
    for (const shaft of sink)
      grid.tie(right + t * cell, threading + (shafts - shaft) * cell, kind === 'countermarch' ? 'x' : 'down');
  });
  for (let t = 0; t < columns; t++) {
    if (cell >= 3.2)
      sheets.text(String(t + 1), right + (t + 0.5) * cell, frame.y + HEAD + cell * 0.9, { align: 'middle' });
  }

  const face = colourFace(drawdown(draft), warp, weft);
  draft.yarns.forEach((yarn, index) => {
    const squares: [number, number, number, number][] = [];
    for (let j = 0; j < picks; j++) {
      for (let i = 0; i < ends; i++) {
        if (colourAt(face, j, i) === index) squares.push([left + i * cell, cloth + j * cell, cell, cell]);
      }
    }
    sheets.fill(squares, shade(yarn));
  });
  grid.lines(left, cloth, ends, picks);
  grid.lines(right, cloth, columns, picks);
  for (let j = 0; j < picks; j++) {
    const pressed = tied.manner === 'lift plan' ? tied.lifts[j]! : tied.treadling[j]!;
    for (const treadle of pressed) grid.mark(right + (treadle - 1) * cell, cloth + j * cell, String(treadle));
    grid.letter(bar, cloth + j * cell, draft.yarns[weft[j]!]!);
    if (isNumbered(j, picks, cell)) sheets.text(String(j + 1), bar + cell + 1.5, cloth + (j + 0.5) * cell + 1.1);
  }
  sheets.text('begin', left - 4.5, cloth + cell * 0.5 + 0.2, { align: 'right' });
  sheets.text('here', left - 4.5, cloth + cell * 0.5 + 3.6, { align: 'right' });
  sheets.pointer(left - 3.2, cloth + cell * 0.5, 'right', 2.4);
  const words = tied.manner === 'lift plan' ? 'shafts raised' : tied.manner;
  sheets.text(`${countWords('pick', picks, weft.length)}, ${words}`, frame.x + frame.width, frame.y + 3.4, {
    align: 'right',
  });
}

/** Marks in squares of one size. */
class Grid {
  private readonly sheets: Sheets;
  private readonly cell: number;

  constructor(sheets: Sheets, cell: number) {
    this.sheets = sheets;
    this.cell = cell;
  }

  lines(x: number, y: number, columns: number, rows: number): void {
    const { cell, sheets } = this;
    if (rows === 0) return;
    const fine = cell < 2.5 ? 0.05 : 0.1;
    for (let c = 0; c <= columns; c++) {
      sheets.line(x + c * cell, y, x + c * cell, y + rows * cell, c % 4 === 0 ? fine * 2.5 : fine);
    }
    for (let r = 0; r <= rows; r++) {
      sheets.line(x, y + r * cell, x + columns * cell, y + r * cell, r % 4 === 0 ? fine * 2.5 : fine);
    }
  }

  /** The number of a shaft or treadle where there is room for it, else a filled square. */
  mark(x: number, y: number, number: string): void {
    const { cell, sheets } = this;
    if (cell < NUMBERED) sheets.fill([[x + cell * 0.12, y + cell * 0.12, cell * 0.76, cell * 0.76]], '#000000');
    else sheets.text(number, x + cell / 2, y + cell / 2 + 1.4, { size: NUMBERS, bold: true, align: 'middle' });
  }

  tie(x: number, y: number, how: 'up' | 'down' | 'o' | 'x'): void {
    const { cell, sheets } = this;
    if (how === 'up' || how === 'down') {
      sheets.fill([[x + cell * 0.15, y + cell * 0.15, cell * 0.7, cell * 0.7]], '#000000');
    } else if (cell >= 3.2)
      sheets.text(how, x + cell / 2, y + cell / 2 + 1, { size: SMALL, bold: true, align: 'middle' });
    else if (how === 'x') sheets.fill([[x + cell * 0.15, y + cell * 0.15, cell * 0.7, cell * 0.7]], '#000000');
  }

  /** The yarn of a thread: its grey, with its letter where there is room. */
  letter(x: number, y: number, yarn: Yarn): void {
    const { cell, sheets } = this;
    sheets.box(x, y, cell, cell, shade(yarn), 0.08);
    if (cell >= 3.2) {
      const grey = luminance(yarn.hex) > 0.18 ? 0 : 1;
      sheets.text(yarn.letter, x + cell / 2, y + cell / 2 + 1.1, { bold: true, align: 'middle', grey });
    }
  }
}

/** The grey of a yarn, as a printer without colours prints it. */
export function shade(yarn: Pick<Yarn, 'hex'>): string {
  // The inverse of the standard's transfer curve turns luminance into the number of that grey.
  const y = luminance(yarn.hex);
  return greyOf(y <= 0.0031308 ? 12.92 * y : 1.055 * y ** (1 / 2.4) - 0.055);
}

function bracket(sheets: Sheets, x: number, y: number, width: number, words: string): void {
  sheets.line(x, y + 1.2, x + width, y + 1.2, 0.4);
  sheets.line(x, y + 1.2, x, y + 2.4, 0.4);
  sheets.line(x + width, y + 1.2, x + width, y + 2.4, 0.4);
  sheets.text(words, x, y);
}

/** Says whether the repeat is drawn whole. */
function countWords(what: 'end' | 'pick', drawn: number, all: number): string {
  const whole = `one repeat, ${all} ${what}${all === 1 ? '' : 's'}`;
  return drawn === all ? whole : `${what}s 1 to ${drawn} of ${whole}; goes on`;
}

function isNumbered(at: number, all: number, cell: number): boolean {
  const every = cell >= 3.2 ? 5 : 10;
  return at === 0 || (at + 1) % every === 0 || (at === all - 1 && (at + 1) % every >= 2);
}
