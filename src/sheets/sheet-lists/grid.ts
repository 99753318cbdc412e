import { luminance, type Yarn } from '../../colour/yarn.js';
import type { LoomKind } from '../../structure/loom/loom-fit.js';
import { greyOf, NUMBERS, type Pdf, SMALL } from '../paper/paper.js';

/** Sides of cells in millimetres: the smallest with room for a letter, and for an 11 pt number. */
export const LETTERED = 3;
const NUMBERED = 4.1;
/** Side from which numbers and letters are larger, and their size in points. */
const ROOMY = 6;
const LARGE = 14;
/** Half the height of figures and capitals, in millimetres for each point of type. */
const HALF_HIGH = 0.122;
/** Share of black in the drawn cells of a dark yarn: less than the yarn has, to save ink. */
const TINT = 0.3;
/** Greys of the lines between cells, and of every fourth. */
const FINE = 0.6;
const FOURTH = 0.35;

/** Draws marks in squares of one size. */
export class Grid {
  private readonly pdf: Pdf;
  private readonly cell: number;

  constructor(pdf: Pdf, cell: number) {
    this.pdf = pdf;
    this.cell = cell;
  }

  /** Draws the lines between squares, in grey, every fourth darker. */
  lines(x: number, y: number, columns: number, rows: number): void {
    const { cell, pdf } = this;
    if (rows === 0) return;
    const line = (at: number, x1: number, y1: number, x2: number, y2: number): void =>
      at % 4 === 0 ? pdf.line(x1, y1, x2, y2, 0.2, FOURTH) : pdf.line(x1, y1, x2, y2, 0.1, FINE);
    const [right, bottom] = [x + columns * cell, y + rows * cell];
    for (let c = 0; c <= columns; c++) line(c, x + c * cell, y, x + c * cell, bottom);
    for (let r = 0; r <= rows; r++) line(r, x, y + r * cell, right, y + r * cell);
  }

  /** Writes the number of a shaft or treadle, or fills the square if there is no room for it. */
  mark(x: number, y: number, number: string): void {
    const { cell, pdf } = this;
    const size = cell < NUMBERED ? SMALL : cell < ROOMY ? NUMBERS : LARGE;
    if (pdf.textWidth(number, size, true) > cell - 0.4) this.square(x, y, 0.12);
    else
      pdf.text(number, x + cell / 2, y + cell / 2 + size * HALF_HIGH, {
        size,
        bold: true,
        align: 'middle',
      });
  }

  /** The row of a shaft, from the top: shaft 1 lies nearest the cloth. */
  row(shaft: number, shafts: number): number {
    return this.pdf.seen.threading === 'below' ? shaft - 1 : shafts - shaft;
  }

  /** Draws the ties of one treadle in `shafts` rows. */
  ties(
    { rise, sink }: { readonly rise: readonly number[]; readonly sink: readonly number[] },
    x: number,
    y: number,
    shafts: number,
    kind: LoomKind,
  ): void {
    const row = (shaft: number): number => y + this.row(shaft, shafts) * this.cell;
    for (const shaft of rise) this.tie(x, row(shaft), kind === 'countermarch' ? 'o' : 'filled');
    for (const shaft of sink) this.tie(x, row(shaft), kind === 'countermarch' ? 'x' : 'filled');
  }

  private square(x: number, y: number, edge: number): void {
    const { cell, pdf } = this;
    const side = cell * (1 - 2 * edge);
    pdf.fill([[x + cell * edge, y + cell * edge, side, side]], '#000000');
  }

  private tie(x: number, y: number, how: 'filled' | 'o' | 'x'): void {
    const { cell, pdf } = this;
    const thick = Math.min(0.5, cell * 0.12);
    const [near, far] = [cell * 0.22, cell * 0.78];
    if (how === 'filled') this.square(x, y, 0.15);
    else if (how === 'o') pdf.ring(x + cell / 2, y + cell / 2, cell * 0.3, thick);
    else {
      pdf.line(x + near, y + near, x + far, y + far, thick);
      pdf.line(x + near, y + far, x + far, y + near, thick);
    }
  }

  /** Fills a square with the tint of a yarn, and writes its letter. */
  letter(x: number, y: number, yarn: Yarn): void {
    const { cell, pdf } = this;
    pdf.box(x, y, cell, cell, tintOf(yarn), 0.08);
    const size = cell < ROOMY ? SMALL : NUMBERS;
    pdf.text(yarn.letter, x + cell / 2, y + cell / 2 + size * HALF_HIGH, { size, bold: true, align: 'middle' });
  }
}

/** The tint of a yarn: its grey, as a printer without colours prints it, made lighter. */
export function tintOf(yarn: Pick<Yarn, 'hex'>): string {
  // The inverse of the standard's transfer curve turns luminance into the number of that grey.
  const y = luminance(yarn.hex);
  const grey = y <= 0.0031308 ? 12.92 * y : 1.055 * y ** (1 / 2.4) - 0.055;
  return greyOf(1 - TINT * (1 - grey));
}

export function bracketAbove(pdf: Pdf, x: number, y: number, width: number): void {
  pdf.line(x, y, x + width, y, 0.4);
  for (const end of [x, x + width]) pdf.line(end, y, end, y + 1.2, 0.4);
}

export function bracketBeside(pdf: Pdf, x: number, y: number, height: number): void {
  pdf.line(x, y, x, y + height, 0.4);
  for (const end of [y, y + height]) pdf.line(x, end, x - 1.2, end, 0.4);
}
