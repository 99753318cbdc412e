import PDFDocument from 'pdfkit';
import sharp from 'sharp';
import type { Draft } from '../../draft/draft.js';
import type { Seen } from '../../draft/point-of-view.js';
import type { Paper, PlanOptions } from '../../plan/options/plan-options.js';
import { paintCloth } from '../../render/cloth.js';
import { mostThat } from '../../render/text.js';
import { fromTheLeft, type Typeface, typeFile, typefaceOf } from '../../render/type.js';

/** Millimetres of each paper, upright, and the margin on all sides. */
export const SIZES: Readonly<Record<Paper, { readonly width: number; readonly height: number }>> = {
  a4: { width: 210, height: 297 },
  letter: { width: 215.9, height: 279.4 },
};
export const MARGIN = 10;
/** Base line of the project's title, above the margin. */
const HEAD_LINE = 8;

/** Type sizes in points (1/72 in); SMALL is the smallest used. */
export const SMALL = 9;
export const NUMBERS = 11;

const POINTS = 72 / 25.4;
/** The date written into every PDF: a fixed one, so that the same plan gives the same bytes. */
const FIXED_DATE = new Date(0);

/** How a line of type stands. */
interface Type {
  /** Points. Default: 9. */
  readonly size?: number;
  readonly bold?: boolean;
  readonly align?: 'left' | 'middle' | 'right';
  readonly grey?: number;
}

/** A rectangle on a page, in millimetres. */
export interface Frame {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** How a piece of cloth stands on paper. */
interface Shown {
  /** Millimetres of cloth to the millimetre of paper. Default: 1. */
  readonly times?: number;
  readonly grey?: boolean;
}

/** What all pages of a document share. */
export type Pages = Pick<PlanOptions, 'paper' | 'project' | 'seen'>;

/** Pixels of a picture per millimetre of paper: 300 per inch. */
const FINE = 300 / 25.4;

/**
 * Draws on pages of one paper size. Positions in millimetres from the top left corner; text is placed by its base line.
 */
export class Pdf {
  readonly width: number;
  readonly height: number;
  readonly seen: Seen;
  private readonly project: string | undefined;
  private readonly document: PDFKit.PDFDocument;
  private readonly parts: Buffer[] = [];
  private readonly whole: Promise<Buffer>;
  private readonly registered = new Set<string>();
  /** Whether the page has a box in place of a letter that the type lacks. */
  private boxes = false;

  constructor({ paper, project, seen }: Pages, title: string) {
    const { width, height } = SIZES[paper];
    this.width = width;
    this.height = height;
    this.seen = seen;
    this.project = project;
    this.document = new PDFDocument({
      size: [width * POINTS, height * POINTS],
      margin: 0,
      autoFirstPage: false,
      // This version has no second copy of title and date in XML, which would need escaping.
      pdfVersion: '1.3',
      info: { Title: title, Producer: 'shedlight', Creator: 'shedlight', CreationDate: FIXED_DATE },
    });
    this.whole = new Promise((resolve, reject) => {
      this.document.on('data', (part: Buffer) => this.parts.push(part));
      this.document.on('end', () => resolve(Buffer.concat(this.parts)));
      this.document.on('error', reject);
    });
  }

  /** Begins a new page. */
  page(): void {
    this.sayBoxes();
    this.document.addPage();
    if (this.project !== undefined)
      this.text(this.fitted([this.project], this.width / 2), MARGIN, HEAD_LINE, { bold: true });
  }

  /** Writes one line of type; an empty box, to be written in, stands for a letter that the type lacks. */
  text(text: string, x: number, y: number, { size = SMALL, bold = false, align = 'left', grey = 0 }: Type = {}): void {
    const said = drawable(text);
    if (said === '') return;
    const wide = this.textWidth(said, size, bold);
    let left = align === 'left' ? x : align === 'right' ? x - wide : x - wide / 2;
    for (const { face, stretch } of stretchesOf(fromTheLeft(said))) {
      if (face === undefined) {
        const side = BOX * size;
        for (const _ of stretch) {
          this.box(left + side * 0.05, y - side * 0.8, side * 0.9, side, undefined, 0.15);
          left += side;
        }
        this.boxes = true;
        continue;
      }
      const font = this.font(face, bold).fontSize(size).fillColor(greyOf(grey));
      font.text(stretch, left * POINTS, y * POINTS, { lineBreak: false, baseline: 'alphabetic' });
      left += this.document.widthOfString(stretch) / POINTS;
    }
  }

  /** Writes lines of type, broken between words to fit a width; returns the base line of the next line. */
  paragraph(text: string, x: number, y: number, width: number, leading: number, type: Type = {}): number {
    let line = y;
    for (const part of this.wrapped(text, width, type)) {
      this.text(part, x, line, type);
      line += leading;
    }
    return line;
  }

  /**
   * Breaks a text into lines no wider than `width`, between words but not between a number and its measure, or within a
   * word that is too long.
   */
  wrapped(text: string, width: number, { size = SMALL, bold = false }: Type = {}): string[] {
    const lines: string[] = [];
    for (const word of drawable(text)
      .split(/(?<!\d)\s+|\s+(?!(?:in|mm|cm|m|yd|oz|g|lb|kg|%)\b|%)/)
      .flatMap((long) => this.pieces(long, width, size, bold))) {
      const longer = lines.length === 0 ? word : `${lines.at(-1)} ${word}`;
      if (lines.length > 0 && this.textWidth(longer, size, bold) <= width) lines[lines.length - 1] = longer;
      else lines.push(word);
    }
    return lines;
  }

  /** Width of a line of type in millimetres. */
  textWidth(text: string, size = SMALL, bold = false): number {
    const widthOf = ({ face, stretch }: Stretch): number =>
      face === undefined
        ? [...stretch].length * BOX * size
        : this.font(face, bold).fontSize(size).widthOfString(stretch) / POINTS;
    return stretchesOf(drawable(text)).reduce((sum, each) => sum + widthOf(each), 0);
  }

  /** Joins as many whole clauses as fit a line; a first clause that is too long is cut and ends in an ellipsis. */
  fitted(clauses: readonly string[], width: number, type: Type = {}): string {
    const [first = '', ...others] = clauses;
    const fits = (text: string): boolean => this.textWidth(text, type.size, type.bold) <= width;
    if (fits(first)) {
      return others.reduce((line, clause) => (fits(`${line}; ${clause}`) ? `${line}; ${clause}` : line), first);
    }
    const cut = mostThat((count) => fits(`${first.slice(0, count).trimEnd()} …`), first.length);
    return `${first.slice(0, cut).trimEnd()} …`;
  }

  line(x1: number, y1: number, x2: number, y2: number, thick = 0.2, grey = 0): void {
    this.document
      .lineWidth(thick * POINTS)
      .strokeColor(greyOf(grey))
      .moveTo(x1 * POINTS, y1 * POINTS)
      .lineTo(x2 * POINTS, y2 * POINTS)
      .stroke();
  }

  /** Draws a rectangle with an outline, filled if a colour is given. */
  box(x: number, y: number, width: number, height: number, fill?: string, thick = 0.2): void {
    this.document
      .lineWidth(thick * POINTS)
      .strokeColor('#000000')
      .rect(x * POINTS, y * POINTS, width * POINTS, height * POINTS);
    if (fill === undefined) this.document.stroke();
    else this.document.fillAndStroke(fill, '#000000');
  }

  /** Draws filled rectangles of one colour, without outlines. */
  fill(rectangles: readonly (readonly [x: number, y: number, width: number, height: number])[], colour: string): void {
    if (rectangles.length === 0) return;
    for (const [x, y, width, height] of rectangles) {
      this.document.rect(x * POINTS, y * POINTS, width * POINTS, height * POINTS);
    }
    this.document.fill(colour);
  }

  /** Draws the outline of a circle. */
  ring(x: number, y: number, radius: number, thick = 0.2): void {
    this.document
      .lineWidth(thick * POINTS)
      .strokeColor('#000000')
      .circle(x * POINTS, y * POINTS, radius * POINTS)
      .stroke();
  }

  /** Draws a solid triangle that points right, left or down. */
  pointer(x: number, y: number, to: 'left' | 'right' | 'down', size = 2): void {
    const [s, h] = [size * POINTS, (size / 2) * POINTS];
    const [a, b] = [x * POINTS, y * POINTS];
    if (to === 'right') this.document.polygon([a, b - h], [a + s, b], [a, b + h]);
    else if (to === 'left') this.document.polygon([a + s, b - h], [a, b], [a + s, b + h]);
    else this.document.polygon([a - h, b], [a + h, b], [a, b + s]);
    this.document.fill('#000000');
  }

  /** Draws woven cloth that fills a frame, beginning at the edges of the point of view. */
  async cloth(draft: Draft, frame: Frame, { times = 1, grey = false }: Shown = {}): Promise<void> {
    const millimetres = { width: frame.width * times, height: frame.height * times };
    const { width, height, rgb } = paintCloth(draft, {
      millimetres,
      perMillimetre: FINE / times,
      grey,
      seen: this.seen,
    });
    const png = await sharp(rgb, { raw: { width, height, channels: 3 } })
      .png({ compressionLevel: 9 })
      .toBuffer();
    const size = { width: frame.width * POINTS, height: frame.height * POINTS };
    this.document.image(png, frame.x * POINTS, frame.y * POINTS, size);
  }

  /** Ends the document and returns its bytes. */
  async finish(): Promise<Buffer> {
    this.sayBoxes();
    this.document.end();
    return this.whole;
  }

  /** Chooses one font, and takes it into the document when it is first needed. */
  private font(face: Typeface, bold: boolean): PDFKit.PDFDocument {
    const name = `${face}${bold ? ' bold' : ''}`;
    if (!this.registered.has(name)) this.document.registerFont(name, typeFile(face, bold));
    this.registered.add(name);
    return this.document.font(name);
  }

  /** Says at the head of a page what its boxes are. */
  private sayBoxes(): void {
    if (!this.boxes) return;
    const said = 'Each box in a name is a letter that this type does not have: write it in by hand.';
    this.text(said, this.width - MARGIN, HEAD_LINE, { align: 'right' });
    this.boxes = false;
  }

  private pieces(word: string, width: number, size: number, bold: boolean): string[] {
    const found: string[] = [];
    let rest = word;
    do {
      const fitting = mostThat((count) => this.textWidth(rest.slice(0, count), size, bold) <= width, rest.length);
      const cut = Math.max(1, fitting);
      found.push(rest.slice(0, cut));
      rest = rest.slice(cut);
    } while (rest !== '');
    return found;
  }
}

/** Converts a grey from 0 (black) to 1 (white) to `#rrggbb`. */
export function greyOf(grey: number): string {
  const part = Math.round(Math.max(0, Math.min(1, grey)) * 255)
    .toString(16)
    .padStart(2, '0');
  return `#${part}${part}${part}`;
}

/** Side of the box that stands for a letter which the type lacks, in millimetres for each point of the type. */
const BOX = 0.42;

/** A text as it is drawn: letters put together with their accents, straight quotes for prime signs. */
function drawable(text: string): string {
  return text.normalize('NFC').replaceAll('″', '"').replaceAll('′', "'");
}

/** A stretch of a text that is in one font, or, without a face, in none. */
interface Stretch {
  readonly face: Typeface | undefined;
  stretch: string;
}

function stretchesOf(text: string): Stretch[] {
  const found: Stretch[] = [];
  for (const sign of text) {
    const face = typefaceOf(sign);
    const last = found.at(-1);
    if (last !== undefined && last.face === face) last.stretch += sign;
    else found.push({ face, stretch: sign });
  }
  return found;
}
