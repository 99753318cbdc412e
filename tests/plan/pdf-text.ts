import { inflateSync } from 'node:zlib';

/** A line of type as it stands on a page. */
export interface PdfLine {
  readonly text: string;
  /** Points. */
  readonly size: number;
}

/** One page: its size in points, and its lines in the order in which they were written. */
export interface PdfPage {
  readonly width: number;
  readonly height: number;
  readonly lines: readonly PdfLine[];
}

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
    const fonts = new Map<string, Map<string, string>>();
    for (const [, name, number] of resources.matchAll(/\/(F\d+) (\d+) 0 R/g)) {
      fonts.set(name!, characters(stream(/\/ToUnicode (\d+) 0 R/.exec(objects.get(number!)!)![1]!)));
    }
    const lines = linesOf(stream(/\/Contents (\d+) 0 R/.exec(page)![1]!), fonts);
    return { width: Number(width), height: Number(height), lines };
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

function linesOf(content: string, fonts: ReadonlyMap<string, ReadonlyMap<string, string>>): PdfLine[] {
  const lines: PdfLine[] = [];
  let font: ReadonlyMap<string, string> = new Map();
  let size = 0;
  for (const [, name, points, shown] of content.matchAll(/\/(F\d+) ([\d.]+) Tf|\[([^\]]*)\] TJ/g)) {
    if (name !== undefined) {
      font = fonts.get(name)!;
      size = Number(points);
    } else {
      const codes = [...shown!.matchAll(/<([0-9a-f]*)>/g)].flatMap(([, hex]) => hex!.match(/.{4}/g) ?? []);
      lines.push({ text: codes.map((code) => font.get(code) ?? '?').join(''), size });
    }
  }
  return lines;
}
