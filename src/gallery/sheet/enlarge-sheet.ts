import { type Seen, seenInWords } from '../../draft/point-of-view.js';
import { paintCloth } from '../../render/cloth.js';
import type { FloatLimit } from '../../score/model/float-limit.js';
import { type Enlarged, type MotifSize, WAYS, type Way } from '../../search/report/enlarge.js';
import { endsInWords, floatOf, lengthOf, passesOf, refusalInWords, timesInWords, WAY_WORDS } from './enlarge-words.js';
import { PAGE, type Placed, pngOf, svgOf } from './picture-sheet.js';
import { GUTTER, LEADING, Pen, POINTS, TITLE, wrapped } from './sheet-text.js';

/** What the sheet says at its head. */
interface SheetHead {
  readonly title: string;
  readonly limit: FloatLimit;
  readonly seen: Seen;
  /** Share of the width that is lost in finishing. */
  readonly shrinkage: number;
}

const COLUMNS = 4;
const PICTURE = { width: 44.5, height: 30 };
/** The widest motif is drawn whole, with so much of its neighbour. */
const SHOWN = 1.15;

/** A way of enlarging with its sizes, and its position on the sheet. */
interface Row {
  readonly way: Way;
  readonly sizes: readonly MotifSize[];
  readonly refused: readonly string[];
  readonly height: number;
}

/** Draws one sheet with every size at one physical scale, as PNG at 200 points per inch or as SVG. */
export async function enlargedSheet(
  enlarged: Enlarged,
  head: SheetHead,
  kind: 'png' | 'svg',
): Promise<Buffer | string> {
  const widest = Math.max(...enlarged.sizes.map(({ width }) => width));
  const reduction = Math.max(1, (SHOWN * widest) / PICTURE.width);
  const rows = rowsOf(enlarged);
  const height = PAGE.top + 16 + rows.reduce((sum, row) => sum + row.height, 0) + 8;
  const pen = new Pen();
  drawHead(pen, enlarged, head, reduction);
  const pictures: Placed[] = [];
  let y = PAGE.top + 16;
  for (const row of rows) {
    pen.text(WAY_WORDS[row.way], PAGE.side, y, { bold: true });
    row.sizes.forEach((size, at) => {
      const x = PAGE.side + (at % COLUMNS) * (PICTURE.width + GUTTER);
      const top = y + 2 + Math.floor(at / COLUMNS) * BOX;
      const perMillimetre = POINTS / reduction;
      const millimetres = { width: PICTURE.width * reduction, height: PICTURE.height * reduction };
      pictures.push({ picture: paintCloth(size.draft, { seen: head.seen, millimetres, perMillimetre }), x, y: top });
      pen.box(x, top, PICTURE.width, PICTURE.height);
      under(pen, size, x, top + PICTURE.height, reduction, head.limit);
    });
    const below = y + 2 + Math.ceil(row.sizes.length / COLUMNS) * BOX;
    row.refused.forEach((line, at) => {
      pen.text(line, PAGE.side, below + (at + 0.4) * LEADING, { quiet: true });
    });
    y += row.height;
  }
  drawRule(pen, height - 3);
  return kind === 'png' ? pngOf(pictures, pen, height) : svgOf(pictures, pen, height);
}

/** Height of a picture with the bar of its motif and four lines of words, in millimetres. */
const BOX = PICTURE.height + 4 + 4 * LEADING + 1.5;

function rowsOf({ sizes, refused }: Enlarged): Row[] {
  return WAYS.flatMap((way) => {
    const own = sizes.filter((size) => size.way === way);
    const width = PAGE.width - 2 * PAGE.side;
    const lines = refused.filter((one) => one.way === way).flatMap((one) => wrapped(refusalInWords(one), width, 2));
    if (own.length + lines.length === 0) return [];
    const height = 3 + Math.ceil(own.length / COLUMNS) * BOX + lines.length * LEADING + 3;
    return [{ way, sizes: own, refused: lines, height }];
  });
}

function drawHead(pen: Pen, { sizes }: Enlarged, { title, shrinkage, seen }: SheetHead, reduction: number): void {
  const { sett, yarns } = sizes[0]!.draft;
  const right = PAGE.width - PAGE.side;
  pen.text(wrapped(title, right - PAGE.side, 1, TITLE, true)[0]!, PAGE.side, PAGE.top + 4, { size: TITLE, bold: true });
  const scale = reduction === 1 ? 'at actual size' : `at 1 : ${reduction.toFixed(2)}`;
  const said = [
    `all ${scale}`,
    `${sett.ends} ends and ${sett.picks} picks per ${sett.per}`,
    seenInWords(seen),
    `finished: less ${Math.round(1000 * shrinkage) / 10} % for shrinkage`,
    ...yarns.map(({ letter, name }) => (name === letter ? letter : `${letter} ${name}`)),
  ];
  pen.text(wrapped(said.join(' · '), right - PAGE.side, 1)[0]!, PAGE.side, PAGE.top + 9.5);
}

/** Draws the bar of the motif's width, and the words about the size. */
function under(pen: Pen, size: MotifSize, x: number, y: number, reduction: number, limit: FloatLimit): void {
  const bar = Math.min(PICTURE.width, size.width / reduction);
  for (const end of [x, x + bar]) pen.line(end, y + 0.8, end, y + 2.6);
  pen.line(x, y + 1.7, x + bar, y + 1.7);
  const { per } = size.draft.sett;
  const pattern = size.pattern === undefined ? '' : `, pattern weft ${size.pattern.ends ?? 'never interlaces'}`;
  const lines = [
    `${lengthOf(size.finished, per)} finished`,
    `longest float ${floatOf(size)}${pattern}`,
    passesOf(size, limit),
  ];
  pen.text(endsInWords(size), x, y + 3 + LEADING, { bold: true });
  pen.text(timesInWords(size), x + PICTURE.width, y + 3 + LEADING, { align: 'right', quiet: true });
  lines.forEach((line, at) => {
    pen.text(wrapped(line, PICTURE.width, 1)[0]!, x, y + 3 + (at + 2) * LEADING);
  });
}

/** Draws a rule for measuring the print. */
function drawRule(pen: Pen, y: number): void {
  pen.line(PAGE.side, y, PAGE.side + 100, y);
  for (let mm = 0; mm <= 100; mm += 10) pen.line(PAGE.side + mm, y - (mm % 50 === 0 ? 3 : 1.8), PAGE.side + mm, y);
  pen.text('100 mm when printed at full size; the bar under a picture is its motif, once', PAGE.side + 102, y, {
    quiet: true,
  });
}
