import { inflateSync } from 'node:zlib';

/** A line of type as it stands on a page. */
export interface PdfLine {
  readonly text: string;
  /** Points. */
  readonly size: number;
  readonly bold: boolean;
  /** Where it begins, on its base line: points from the left edge and from the top. */
  readonly x: number;
  readonly y: number;
}

/** A straight line, from point to point, or the box of a picture. */
export interface PdfBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** One page: its size in points, and what is on it in the order in which it was drawn. */
export interface PdfPage {
  readonly width: number;
  readonly height: number;
  readonly lines: readonly PdfLine[];
  /** Lines of two points. */
  readonly strokes: readonly PdfBox[];
  readonly pictures: readonly PdfBox[];
}

const NUMBER = String.raw`(-?[\d.]+)`;
const TEXT = new RegExp(String.raw`1 0 0 1 ${NUMBER} ${NUMBER} Tm|/(F\d+) ([\d.]+) Tf|\[([^\]]*)\] TJ`, 'g');
const STROKE = new RegExp(String.raw`${NUMBER} ${NUMBER} m\n${NUMBER} ${NUMBER} l\nS`, 'g');
const PICTURE = new RegExp(String.raw`${NUMBER} 0 0 ${NUMBER} ${NUMBER} ${NUMBER} cm\n/I\d+ Do`, 'g');

/** Reads back the pages of a PDF as our sheets are written: streams deflated, type with a table back to characters. */
export function readPdf(bytes: Buffer): PdfPage[] {
  const text = bytes.toString('latin1');
  const objects = new Map<string, string>();
  for (const [, number, body] of text.matchAll(/(?:^|\n)(\d+) 0 obj\n([\s\S]*?)\nendobj/g)) objects.set(number!, body!);
  const stream = (number: string): string => {
    const body = objects.get(number)!;
    const from = body.indexOf('stream\n') + 'stream\n'.length;
    const data = Buffer.from(body.slice(from, body.lastIndexOf('\nendstream')), 'latin1');
    return inflateSync(data).toString('latin1');
  };
  const kids = [...objects.values()].find((body) => body.includes('/Type /Pages'))!;
  const pages = [...kids.slice(kids.indexOf('/Kids')).matchAll(/(\d+) 0 R/g)].map(
    ([, number]) => objects.get(number!)!,
  );
  return pages.map((page) => {
    const [, width, height] = /\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(page)!;
    const resources = objects.get(/\/Resources (\d+) 0 R/.exec(page)![1]!)!;
    const fonts = new Map<string, Font>();
    for (const [, name, number] of resources.matchAll(/\/(F\d+) (\d+) 0 R/g)) {
      const font = objects.get(number!)!;
      const table = characters(stream(/\/ToUnicode (\d+) 0 R/.exec(font)![1]!));
      fonts.set(name!, { table, bold: /\/BaseFont \S*Bold/.test(font) });
    }
    const content = stream(/\/Contents (\d+) 0 R/.exec(page)![1]!);
    const numbers = (found: RegExpMatchArray): number[] => found.slice(1).map(Number);
    const strokes = [...content.matchAll(STROKE)].map(numbers).map(([x1, y1, x2, y2]) => {
      return { x: Math.min(x1!, x2!), y: Math.min(y1!, y2!), width: Math.abs(x2! - x1!), height: Math.abs(y2! - y1!) };
    });
    const pictures = [...content.matchAll(PICTURE)].map(numbers).map(([wide, down, x, y]) => {
      return { x: x!, y: y! + Math.min(0, down!), width: wide!, height: Math.abs(down!) };
    });
    const lines = linesOf(content, fonts, Number(height));
    return { width: Number(width), height: Number(height), lines, strokes, pictures };
  });
}

/** What each code of a font stands for. */
function characters(table: string): Map<string, string> {
  const known = new Map<string, string>();
  for (const [, from, , list] of table.matchAll(/<([0-9a-f]+)> <([0-9a-f]+)> \[([^\]]*)\]/g)) {
    [...list!.matchAll(/<([0-9a-f ]+)>/g)].forEach(([, unicode], at) => {
      const code = (Number.parseInt(from!, 16) + at).toString(16).padStart(4, '0');
      const units = unicode!.replaceAll(' ', '').match(/.{4}/g)!;
      known.set(code, String.fromCharCode(...units.map((unit) => Number.parseInt(unit, 16))));
    });
  }
  return known;
}

interface Font {
  readonly table: ReadonlyMap<string, string>;
  readonly bold: boolean;
}

function linesOf(content: string, fonts: ReadonlyMap<string, Font>, height: number): PdfLine[] {
  const lines: PdfLine[] = [];
  let font: Font = { table: new Map(), bold: false };
  let [x, y, size] = [0, 0, 0];
  for (const [, left, up, name, points, shown] of content.matchAll(TEXT)) {
    if (left !== undefined) [x, y] = [Number(left), height - Number(up)];
    else if (name !== undefined) {
      font = fonts.get(name)!;
      size = Number(points);
    } else {
      const codes = [...shown!.matchAll(/<([0-9a-f]*)>/g)].flatMap(([, hex]) => hex!.match(/.{4}/g) ?? []);
      const text = codes.map((code) => font.table.get(code) ?? '?').join('');
      lines.push({ text, size, bold: font.bold, x, y });
    }
  }
  return lines;
}
