import { mostThat, textPath, textWidth } from '../../render/text.js';

/** Picture points per millimetre of a sheet: 200 per inch. */
export const POINTS = 200 / 25.4;
/** The smallest type on a sheet, in millimetres: 7 printer's points of 1/72 inch. */
export const SMALL = (7 * 25.4) / 72;
/** The type of a sheet's name, in millimetres. */
export const TITLE = (13 * 25.4) / 72;
/** From line to line of the smallest type, and from picture to picture across, in millimetres. */
export const LEADING = 2.75;
export const GUTTER = 4;

const INK = '#1c1f26';
const QUIET = '#54585f';

/** Writes on one page. Positions and sizes in millimetres from its top left corner; `y` is the base line. */
export class Pen {
  private readonly drawn: string[] = [];

  text(text: string, x: number, y: number, style: TextStyle = {}): void {
    const { size = SMALL, bold = false, align = 'left', quiet = false } = style;
    const place = { x: x * POINTS, y: y * POINTS, size: size * POINTS, bold, align };
    this.drawn.push(`<path fill="${quiet ? QUIET : INK}" d="${textPath(text, place)}"/>`);
  }

  /** Draws a rectangle, filled with a colour or outlined. */
  box(x: number, y: number, width: number, height: number, fill = 'none'): void {
    const at = [x, y, width, height].map((mm) => Math.round(mm * POINTS));
    const line = `fill="${fill}" stroke="${QUIET}" stroke-width="1"`;
    this.drawn.push(`<rect x="${at[0]! + 0.5}" y="${at[1]! + 0.5}" width="${at[2]}" height="${at[3]}" ${line}/>`);
  }

  /** Draws a straight line two picture points thick. */
  line(x1: number, y1: number, x2: number, y2: number): void {
    const [a, b, c, d] = [x1, y1, x2, y2].map((mm) => Math.round(mm * POINTS));
    this.drawn.push(`<path d="M${a} ${b}L${c} ${d}" stroke="${INK}" stroke-width="2"/>`);
  }

  /** Everything written, as an SVG drawing of `width` × `height` picture points. */
  layer(width: number, height: number): string {
    const size = `width="${width}" height="${height}"`;
    return `<svg xmlns="http://www.w3.org/2000/svg" ${size}>${this.drawn.join('')}</svg>`;
  }
}

interface TextStyle {
  readonly size?: number;
  readonly bold?: boolean;
  readonly align?: 'left' | 'middle' | 'right';
  readonly quiet?: boolean;
}

/** Breaks a text between words into at most `most` lines of `width` millimetres; cuts it with … if it is too long. */
export function wrapped(text: string, width: number, most: number, size = SMALL, bold = false): string[] {
  const lines: string[] = [];
  let line = '';
  const words = text.split(' ');
  for (const [at, word] of words.entries()) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (line === '' || textWidth(longer, size, bold) <= width) {
      line = longer;
    } else if (lines.length + 1 === most) {
      line = `${line} ${words.slice(at).join(' ')}`;
      break;
    } else {
      lines.push(line);
      line = word;
    }
  }
  return [...lines, line].map((part) => cut(part, width, size, bold));
}

/** The first wording that fits into `width` millimetres; if none fits, the last one, cut. */
export function fitting(wordings: readonly string[], width: number): string {
  return wordings.find((wording) => textWidth(wording, SMALL) <= width) ?? cut(wordings.at(-1)!, width, SMALL, false);
}

function cut(text: string, width: number, size: number, bold: boolean): string {
  if (textWidth(text, size, bold) <= width) return text;
  const signs = [...text];
  const kept = (count: number) =>
    `${signs
      .slice(0, count)
      .join('')
      .replace(/[\s,·]+$/, '')}…`;
  return kept(mostThat((count) => textWidth(kept(count), size, bold) <= width, signs.length));
}
