import { drawdown } from '../../cloth/drawdown.js';
import { colourAt, colourFace } from '../../cloth/face.js';
import { shaftCount } from '../../draft/draft.js';
import { asDrawn, numberAt } from '../../draft/point-of-view.js';
import type { PiecePlan } from '../../plan/piece/piece-plan.js';
import type { LoomKind } from '../../structure/loom/loom-fit.js';
import { counted } from '../../words/counts.js';
import type { Frame, Pdf } from '../paper/paper.js';
import { bracketAbove, bracketBeside, Grid, tintOf } from '../sheet-lists/grid.js';

/** Sides of cells in millimetres: the largest and the smallest. */
const LARGEST = 7;
const SMALLEST = 3.4;
/** Width of one figure in type. */
const FIGURE = 2;
/** Height of a line of type in millimetres. */
const LINE = 4;
/** Width for the shaft numbers at the left, and for pick numbers and starting words at the right, in millimetres. */
const LEFT = 16;
const RIGHT = 16;
const HEAD = 9;

/**
 * Draws one repeat: colours and threading above or below, tie-up at the right, treadling with colours beside the
 * drawdown in tints of its yarns. Returns false, and draws nothing, where the cells would be too small.
 */
export function drawDraft(pdf: Pdf, piece: PiecePlan, kind: LoomKind, frame: Frame): boolean {
  const { draft, tied } = piece;
  const shafts = shaftCount(draft);
  const columns = tied.manner === 'lift plan' ? shafts : tied.treadles.length;
  const across = (frame.width - LEFT - RIGHT) / (draft.warp.length + columns + 3.5);
  const along = (frame.height - HEAD) / (draft.weft.length + shafts + 3);
  const cell = Math.min(LARGEST, across, along);
  if (cell < SMALLEST) return false;
  drawCounted(pdf, piece, kind, frame, { cell, shafts, columns });
  return true;
}

interface Size {
  readonly cell: number;
  readonly shafts: number;
  /** Treadles, or the shafts of a lift plan. */
  readonly columns: number;
}

function drawCounted(pdf: Pdf, piece: PiecePlan, kind: LoomKind, frame: Frame, size: Size): void {
  const { seen } = pdf;
  const draft = asDrawn(piece.draft, seen);
  const { tied } = piece;
  const below = seen.threading === 'below';
  const { warp, weft } = draft;
  const { cell, shafts, columns } = size;
  const [ends, picks] = [warp.length, weft.length];
  const left = frame.x + LEFT;
  const top = frame.y + HEAD;
  const threading = below ? top - 2 + (picks + 0.7) * cell : top + cell * 1.25;
  const cloth = below ? top - 2 : threading + (shafts + 0.7) * cell;
  const colours = below ? threading + (shafts + 0.25) * cell : threading - cell * 1.25;
  const right = left + (ends + 0.7) * cell;
  const bar = right + (columns + 0.4) * cell;
  const grid = new Grid(pdf, cell);

  const said = countWords('end', ends);
  pdf.text(said, left, frame.y + 3.4);
  bracketAbove(pdf, left, frame.y + 4.6, ends * cell);
  const manner = MANNERS[tied.manner];
  const after = Math.max(right, left + pdf.textWidth(said) + 4);
  pdf.text(
    `${countWords('pick', picks)}, ${manner}`,
    Math.min(after, rightmost(pdf, frame, picks, manner)),
    frame.y + 3.4,
  );
  for (let i = 0; i < ends; i++) {
    const number = numberAt(i, ends, seen.end);
    grid.letter(left + i * cell, colours, draft.yarns[warp[i]!]!);
    if (isNumbered(number - 1, ends, cell))
      pdf.text(String(number), left + (i + 0.5) * cell, below ? colours + cell + 3.4 : top - 1, { align: 'middle' });
  }
  grid.lines(left, threading, ends, shafts);
  for (let i = 0; i < ends; i++) {
    for (const shaft of draft.threading[i]!)
      grid.mark(left + i * cell, threading + grid.row(shaft, shafts) * cell, String(shaft));
  }
  for (let s = 1; s <= shafts; s++) {
    pdf.text(String(s), left - 1.5, threading + (grid.row(s, shafts) + 0.5) * cell + 1.1, { align: 'right' });
  }
  grid.lines(right, threading, columns, tied.manner === 'lift plan' ? 0 : shafts);
  tied.treadles.forEach((treadle, t) => {
    grid.ties(treadle, right + t * cell, threading, shafts, kind);
  });
  // A digit is two millimetres wide.
  const roomy = cell >= (columns > 9 ? 2 * FIGURE : FIGURE);
  for (let t = 0; t < columns; t++) {
    if (roomy || ((t === 0 || t === columns - 1) && columns * cell >= 4 * FIGURE))
      pdf.text(String(t + 1), right + (t + 0.5) * cell, below ? colours + 3.2 : top + cell * 0.9, { align: 'middle' });
  }

  const face = colourFace(drawdown(draft), warp, weft);
  draft.yarns.forEach((yarn, index) => {
    const squares: [number, number, number, number][] = [];
    for (let j = 0; j < picks; j++) {
      for (let i = 0; i < ends; i++) {
        if (colourAt(face, j, i) === index) squares.push([left + i * cell, cloth + j * cell, cell, cell]);
      }
    }
    pdf.fill(squares, tintOf(yarn));
  });
  grid.lines(left, cloth, ends, picks);
  grid.lines(right, cloth, columns, picks);
  for (let j = 0; j < picks; j++) {
    const number = numberAt(j, picks, seen.pick);
    const pressed = tied.manner === 'lift plan' ? tied.lifts[number - 1]! : tied.treadling[number - 1]!;
    for (const treadle of pressed) grid.mark(right + (treadle - 1) * cell, cloth + j * cell, String(treadle));
    grid.letter(bar, cloth + j * cell, draft.yarns[weft[j]!]!);
    if (isNumbered(number - 1, picks, cell)) pdf.text(String(number), bar + cell + 1.5, cloth + (j + 0.5) * cell + 1.1);
  }
  bracketBeside(pdf, bar + cell + 3 + pdf.textWidth(String(picks)), cloth, picks * cell);
  const first = cloth + cell * (seen.pick === 'bottom' ? picks - 0.5 : 0.5);
  pdf.text('begin', left - 4.5, first + 0.2, { align: 'right' });
  pdf.text('here', left - 4.5, first + 3.6, { align: 'right' });
  pdf.pointer(left - 3.2, first, 'right', 2.4);
}

const MANNERS: Readonly<Record<PiecePlan['tied']['manner'], string>> = {
  'one foot': 'one treadle a pick',
  'two feet': 'two treadles together where two are marked',
  'lift plan': 'shafts raised',
};

/** Rightmost x at which words about the picks can begin and still end within the frame. */
function rightmost(pdf: Pdf, frame: Frame, picks: number, manner: string): number {
  return frame.x + frame.width - pdf.textWidth(`${countWords('pick', picks)}, ${manner}`);
}

/** `one repeat, 20 ends`. */
function countWords(what: 'end' | 'pick', count: number): string {
  return `one repeat, ${counted(count, what)}`;
}

/** Whether a thread has its number beside it: the first, every fifth or tenth, and the last where there is room for it. */
function isNumbered(at: number, all: number, cell: number): boolean {
  const every = 5;
  if (at === 0 || (at + 1) % every === 0) return true;
  const sinceLast = at < every ? at : (at + 1) % every;
  const room = Math.max(LINE, String(all).length * FIGURE + 0.7);
  return at === all - 1 && sinceLast * cell >= room;
}
