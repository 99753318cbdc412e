import { drawdown } from '../../cloth/drawdown.js';
import { colourAt, colourFace } from '../../cloth/face.js';
import { luminance, type Yarn } from '../../colour/yarn.js';
import { shaftCount, spacing } from '../../draft/draft.js';
import type { PiecePlan } from '../../plan/piece/piece-plan.js';
import type { LoomKind } from '../../structure/loom/loom-fit.js';
import { counted } from '../../words/counts.js';
import { type Frame, greyOf, NUMBERS, type Pdf } from '../paper/paper.js';

/**
 * Sides of cells in millimetres: the smallest with room for an 11 pt number, the largest, the smallest to be counted.
 */
const NUMBERED = 4.1;
const LARGEST = 6;
const SMALLEST = 1;
/** Millimetres of a cell in which a letter stands; width of one figure in type. */
const LETTERED = 3.2;
const FIGURE = 2;
/** Height of a line of type in millimetres. */
const LINE = 4;
/** Threads from number to number beside what is too fine to be counted. */
const STEPS = [50, 100, 200, 500, 1000] as const;
/** Width for the shaft numbers at the left, and for pick numbers and starting words at the right, in millimetres. */
const LEFT = 16;
const RIGHT = 16;
const HEAD = 9;

/**
 * Draws one repeat: colours and threading on top, tie-up at the right, treadling with colours below it, the drawdown in
 * the greys of its yarns. A repeat that is too large to be counted is drawn whole as cloth, made small to fit.
 */
export async function drawDraft(pdf: Pdf, piece: PiecePlan, kind: LoomKind, frame: Frame): Promise<void> {
  const { draft, tied } = piece;
  const shafts = shaftCount(draft);
  const columns = tied.manner === 'lift plan' ? shafts : tied.treadles.length;
  const across = (frame.width - LEFT - RIGHT) / (draft.warp.length + columns + 3.5);
  const along = (frame.height - HEAD) / (draft.weft.length + shafts + 3);
  const cell = Math.min(LARGEST, across, along);
  if (cell < SMALLEST) await drawWhole(pdf, piece, frame);
  else drawCounted(pdf, piece, kind, frame, { cell, shafts, columns });
}

interface Size {
  readonly cell: number;
  readonly shafts: number;
  /** Treadles, or the shafts of a lift plan. */
  readonly columns: number;
}

function drawCounted(pdf: Pdf, piece: PiecePlan, kind: LoomKind, frame: Frame, size: Size): void {
  const { draft, tied } = piece;
  const { warp, weft } = draft;
  const { cell, shafts, columns } = size;
  const [ends, picks] = [warp.length, weft.length];
  const left = frame.x + LEFT;
  const threading = frame.y + HEAD + cell * 1.25;
  const cloth = threading + (shafts + 0.7) * cell;
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
    grid.letter(left + i * cell, threading - cell * 1.25, draft.yarns[warp[i]!]!);
    if (isNumbered(i, ends, cell))
      pdf.text(String(i + 1), left + (i + 0.5) * cell, frame.y + HEAD - 1, { align: 'middle' });
  }
  grid.lines(left, threading, ends, shafts);
  for (let i = 0; i < ends; i++) {
    for (const shaft of draft.threading[i]!)
      grid.mark(left + i * cell, threading + (shafts - shaft) * cell, String(shaft));
  }
  for (let s = 1; s <= shafts; s++) {
    if (cell >= LETTERED || ((s === 1 || s === shafts) && (shafts - 1) * cell >= LETTERED))
      pdf.text(String(s), left - 1.5, threading + (shafts - s + 0.5) * cell + 1.1, { align: 'right' });
  }
  grid.lines(right, threading, columns, tied.manner === 'lift plan' ? 0 : shafts);
  tied.treadles.forEach(({ rise, sink }, t) => {
    for (const shaft of rise)
      grid.tie(right + t * cell, threading + (shafts - shaft) * cell, kind === 'countermarch' ? 'o' : 'filled');
    for (const shaft of sink)
      grid.tie(right + t * cell, threading + (shafts - shaft) * cell, kind === 'countermarch' ? 'x' : 'filled');
  });
  // A digit is two millimetres wide.
  const roomy = cell >= (columns > 9 ? 2 * FIGURE : FIGURE);
  for (let t = 0; t < columns; t++) {
    if (roomy || ((t === 0 || t === columns - 1) && columns * cell >= 4 * FIGURE))
      pdf.text(String(t + 1), right + (t + 0.5) * cell, frame.y + HEAD + cell * 0.9, { align: 'middle' });
  }

  const face = colourFace(drawdown(draft), warp, weft);
  draft.yarns.forEach((yarn, index) => {
    const squares: [number, number, number, number][] = [];
    for (let j = 0; j < picks; j++) {
      for (let i = 0; i < ends; i++) {
        if (colourAt(face, j, i) === index) squares.push([left + i * cell, cloth + j * cell, cell, cell]);
      }
    }
    pdf.fill(squares, shade(yarn));
  });
  grid.lines(left, cloth, ends, picks);
  grid.lines(right, cloth, columns, picks);
  for (let j = 0; j < picks; j++) {
    const pressed = tied.manner === 'lift plan' ? tied.lifts[j]! : tied.treadling[j]!;
    for (const treadle of pressed) grid.mark(right + (treadle - 1) * cell, cloth + j * cell, String(treadle));
    grid.letter(bar, cloth + j * cell, draft.yarns[weft[j]!]!);
    if (isNumbered(j, picks, cell)) pdf.text(String(j + 1), bar + cell + 1.5, cloth + (j + 0.5) * cell + 1.1);
  }
  bracketBeside(pdf, bar + cell + 3 + pdf.textWidth(String(picks)), cloth, picks * cell);
  pdf.text('begin', left - 4.5, cloth + cell * 0.5 + 0.2, { align: 'right' });
  pdf.text('here', left - 4.5, cloth + cell * 0.5 + 3.6, { align: 'right' });
  pdf.pointer(left - 3.2, cloth + cell * 0.5, 'right', 2.4);
}

/** Least height in millimetres at which a picture shows anything. */
const LEAST_ROOM = 10;

/** Draws one repeat as cloth, as large as fits, with numbers beside its ends and picks. */
async function drawWhole(pdf: Pdf, { draft }: PiecePlan, frame: Frame): Promise<void> {
  const { across, along } = spacing(draft.sett);
  const [ends, picks] = [draft.warp.length, draft.weft.length];
  const left = frame.x + LEFT;
  const top = frame.y + HEAD + 5;
  const room = { width: frame.width - LEFT - RIGHT, height: frame.y + frame.height - top };
  if (room.height < LEAST_ROOM) {
    pdf.text('no room for the draft here: threading and picks are listed on the next page', left, frame.y + 3.4);
    return;
  }
  const scale = Math.min(1, room.width / (ends * across), room.height / (picks * along));
  const size = { width: ends * across * scale, height: picks * along * scale };
  pdf.text(
    `one repeat, ${ends} ends and ${picks} picks, at ${Math.round(scale * 100)} % of its size:`,
    left,
    frame.y + 3.4,
  );
  pdf.text('too fine to be counted here; threading and picks are listed on the next page', left, frame.y + 7.4);
  await pdf.cloth(draft, { x: left, y: top, ...size }, { times: 1 / scale });
  pdf.box(left, top, size.width, size.height);
  const step = STEPS.find((count) => count * Math.min(across, along) * scale >= 8) ?? STEPS.at(-1)!;
  const numbers = (count: number): number[] => [
    1,
    ...Array.from({ length: Math.floor(count / step) }, (_, k) => (k + 1) * step),
  ];
  for (const end of numbers(ends)) {
    const x = left + (end - 0.5) * across * scale;
    pdf.line(x, top, x, top - 1, 0.2);
    pdf.text(String(end), x, top - 1.6, { align: 'middle' });
  }
  for (const pick of numbers(picks)) {
    const y = top + (pick - 0.5) * along * scale;
    pdf.line(left + size.width, y, left + size.width + 1, y, 0.2);
    pdf.text(String(pick), left + size.width + 2, y + 1.1);
  }
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

/** Draws marks in squares of one size. */
class Grid {
  private readonly pdf: Pdf;
  private readonly cell: number;

  constructor(pdf: Pdf, cell: number) {
    this.pdf = pdf;
    this.cell = cell;
  }

  lines(x: number, y: number, columns: number, rows: number): void {
    const { cell, pdf } = this;
    if (rows === 0) return;
    const fine = cell < 2.5 ? 0.05 : 0.1;
    for (let c = 0; c <= columns; c++) {
      pdf.line(x + c * cell, y, x + c * cell, y + rows * cell, c % 4 === 0 ? fine * 2.5 : fine);
    }
    for (let r = 0; r <= rows; r++) {
      pdf.line(x, y + r * cell, x + columns * cell, y + r * cell, r % 4 === 0 ? fine * 2.5 : fine);
    }
  }

  /** Writes the number of a shaft or treadle, or fills the square if there is no room for it. */
  mark(x: number, y: number, number: string): void {
    const { cell, pdf } = this;
    if (cell < NUMBERED) pdf.fill([[x + cell * 0.12, y + cell * 0.12, cell * 0.76, cell * 0.76]], '#000000');
    else pdf.text(number, x + cell / 2, y + cell / 2 + 1.4, { size: NUMBERS, bold: true, align: 'middle' });
  }

  tie(x: number, y: number, how: 'filled' | 'o' | 'x'): void {
    const { cell, pdf } = this;
    const thick = Math.min(0.5, cell * 0.12);
    const [near, far] = [cell * 0.22, cell * 0.78];
    if (how === 'filled') pdf.fill([[x + cell * 0.15, y + cell * 0.15, cell * 0.7, cell * 0.7]], '#000000');
    else if (how === 'o') pdf.ring(x + cell / 2, y + cell / 2, cell * 0.3, thick);
    else {
      pdf.line(x + near, y + near, x + far, y + far, thick);
      pdf.line(x + near, y + far, x + far, y + near, thick);
    }
  }

  /** Fills a square with the grey of a yarn, and writes its letter if there is room. */
  letter(x: number, y: number, yarn: Yarn): void {
    const { cell, pdf } = this;
    pdf.box(x, y, cell, cell, shade(yarn), 0.08);
    if (cell >= LETTERED) {
      const grey = luminance(yarn.hex) > 0.18 ? 0 : 1;
      pdf.text(yarn.letter, x + cell / 2, y + cell / 2 + 1.1, { bold: true, align: 'middle', grey });
    }
  }
}

/** The grey of a yarn, as a printer without colours prints it. */
function shade(yarn: Pick<Yarn, 'hex'>): string {
  // The inverse of the standard's transfer curve turns luminance into the number of that grey.
  const y = luminance(yarn.hex);
  return greyOf(y <= 0.0031308 ? 12.92 * y : 1.055 * y ** (1 / 2.4) - 0.055);
}

function bracketAbove(pdf: Pdf, x: number, y: number, width: number): void {
  pdf.line(x, y, x + width, y, 0.4);
  for (const end of [x, x + width]) pdf.line(end, y, end, y + 1.2, 0.4);
}

function bracketBeside(pdf: Pdf, x: number, y: number, height: number): void {
  pdf.line(x, y, x, y + height, 0.4);
  for (const end of [y, y + height]) pdf.line(x, end, x - 1.2, end, 0.4);
}

/** `one repeat, 20 ends`. */
function countWords(what: 'end' | 'pick', count: number): string {
  return `one repeat, ${counted(count, what)}`;
}

/** Whether a thread has its number beside it: the first, every fifth or tenth, and the last where there is room for it. */
function isNumbered(at: number, all: number, cell: number): boolean {
  const every = cell >= LETTERED ? 5 : 10;
  if (at === 0 || (at + 1) % every === 0) return true;
  const sinceLast = at < every ? at : (at + 1) % every;
  const room = Math.max(LINE, String(all).length * FIGURE + 0.7);
  return at === all - 1 && sinceLast * cell >= room;
}
