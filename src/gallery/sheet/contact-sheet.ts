import type { Yarn } from '../../colour/yarn.js';
import { type Seen, seenInWords } from '../../draft/point-of-view.js';
import { type Picture, paintCloth } from '../../render/cloth.js';
import { toPng } from '../../render/png.js';
import { textWidth } from '../../render/text.js';
import { type RecipesApart, recipesApart } from '../../search/report/recipes-apart.js';
import type { Found } from '../../search/strategy/outcome.js';
import { inFlight } from './in-flight.js';
import { caption } from './sheet-caption.js';
import { fitting, GUTTER, LEADING, Pen, POINTS, SMALL, TITLE, wrapped } from './sheet-text.js';

/** Heading and layout of a contact sheet. */
export interface ContactOptions {
  /** The question in one line. */
  readonly title: string;
  /** The ranking, in at most two lines. */
  readonly ranking: string;
  readonly seen: Seen;
  /** Four columns of 44.5 mm pictures, or five of 34.8 mm. Default: 16. */
  readonly perPage?: 16 | 25;
  /** Physical scale of all pictures. Default: half. */
  readonly scale?: 'half' | 'actual';
}

/** A4 upright, in millimetres. */
const PAGE = { width: 210, height: 297, side: 10, top: 8, bottom: 8 };
const HEAD = 20.5;
const FOOT = 9;
const LAYOUTS = { 16: { columns: 4, side: 44.5 }, 25: { columns: 5, side: 34.8 } } as const;
/** Lines under a picture, including the one with its number. */
const LINES = 5;

export const PER_PAGE = 16;
/** Size of every page in picture points. */
export const SHEET_POINTS = { width: Math.round(PAGE.width * POINTS), height: Math.round(PAGE.height * POINTS) };

/** Pages in progress at once: one is encoded while the next is drawn. */
const AT_ONCE = 2;

/**
 * Draws the contact sheet: PNG pages at 200 points per inch, the best cloths first; no pages without cloths. `onPage`
 * is called with the number of pages done, and of all pages.
 */
export async function contactSheetPages(
  found: readonly Found[],
  options: ContactOptions,
  onPage?: (done: number, of: number) => void,
): Promise<Buffer[]> {
  const perPage = options.perPage ?? PER_PAGE;
  const count = sheetCount(found.length, perPage);
  const recipes = recipesApart(found, ({ shortRecipe }) => shortRecipe);
  const pages = new Array<Buffer>(count);
  // Pages are large, so the memory of a finished page is used again.
  const papers = Array.from({ length: Math.min(AT_ONCE, count) }, blankPage);
  let done = 0;
  await inFlight(pages.keys(), AT_ONCE, async (page) => {
    const shown = found.slice(page * perPage, (page + 1) * perPage);
    const paper = papers.pop()!;
    pages[page] = await drawPage(paper, shown, recipes, options, `sheet ${page + 1} of ${count}`);
    papers.push(paper);
    onPage?.(++done, count);
  });
  return pages;
}

/** Number of pages for `cloths` cloths. */
export function sheetCount(cloths: number, perPage = PER_PAGE): number {
  return Math.ceil(cloths / perPage);
}

function blankPage(): Picture {
  const { width, height } = SHEET_POINTS;
  return { ...SHEET_POINTS, rgb: new Uint8Array(width * height * 3) };
}

function drawPage(
  page: Picture,
  found: readonly Found[],
  recipes: RecipesApart,
  options: ContactOptions,
  number: string,
): Promise<Buffer> {
  const layout = LAYOUTS[options.perPage ?? PER_PAGE];
  page.rgb.fill(255);
  const pen = new Pen();
  head(pen, found, recipes.shared, options, number);
  const room = (PAGE.height - PAGE.top - PAGE.bottom - HEAD - FOOT) / layout.columns;
  found.forEach((cloth, at) => {
    const x = PAGE.side + (at % layout.columns) * (layout.side + GUTTER);
    const y = PAGE.top + HEAD + Math.floor(at / layout.columns) * room;
    place(page, picture(cloth, layout.side, options), x, y);
    pen.box(x, y, layout.side, layout.side);
    under(pen, cloth, recipes.apart.get(cloth)!, x, y + layout.side + 3.1, layout.side);
  });
  foot(pen);
  return toPng(page, POINTS, pen.layer(page.width, page.height));
}

function picture(cloth: Found, side: number, { scale = 'half', seen }: ContactOptions): Picture {
  const times = scale === 'half' ? 2 : 1;
  const millimetres = { width: side * times, height: side * times };
  return paintCloth(cloth.draft, { seen, millimetres, perMillimetre: POINTS / times });
}

/** Copies a picture into the page, its top left corner at a place in millimetres. */
function place(page: Picture, { width, height, rgb }: Picture, x: number, y: number): void {
  const left = Math.round(x * POINTS);
  const top = Math.round(y * POINTS);
  for (let row = 0; row < height; row++) {
    page.rgb.set(rgb.subarray(row * width * 3, (row + 1) * width * 3), ((top + row) * page.width + left) * 3);
  }
}

function head(
  pen: Pen,
  found: readonly Found[],
  shared: readonly string[],
  options: ContactOptions,
  number: string,
): void {
  const right = PAGE.width - PAGE.side;
  const full = right - PAGE.side;
  const y = PAGE.top + 4;
  pen.text(wrapped(options.title, full - 30, 1, TITLE, true)[0]!, PAGE.side, y, { size: TITLE, bold: true });
  pen.text(number, right, y, { align: 'right', quiet: true });
  const { sett, yarns } = found[0]!.draft;
  const size = options.scale === 'actual' ? 'drawn at actual size' : 'drawn at half size';
  const laid = shared.filter((part) => !options.title.toLowerCase().includes(part.toLowerCase())).join(', ');
  const cloth = `${laid === '' ? '' : `${laid} · `}${size} · ${sett.ends} ends and ${sett.picks} picks per ${sett.per} · ${seenInWords(options.seen)}`;
  const ranking = wrapped(options.ranking, full, 2);
  ranking.forEach((line, at) => {
    pen.text(line, PAGE.side, y + 4.5 + at * LEADING);
  });
  const below = y + 4.5 + ranking.length * LEADING;
  pen.text(fitting([cloth], full), PAGE.side, below, { quiet: true });
  yarnKey(pen, yarns, PAGE.side, below + 4);
}

/** A chip of each yarn with letter and name; without the names if they do not fit the line. */
function yarnKey(pen: Pen, yarns: readonly Yarn[], left: number, y: number): void {
  const names = yarns.map((yarn) => (yarn.name === '' || yarn.name === yarn.letter ? yarn.hex : yarn.name));
  const widths = names.map((name) => textWidth(name, SMALL) + 4);
  const isRoomy = widths.reduce((sum, width) => sum + width + 7.5, 0) <= PAGE.width - 2 * PAGE.side;
  let x = left;
  yarns.forEach((yarn, n) => {
    pen.box(x, y - 2.3, 4, 2.6, yarn.hex);
    pen.text(yarn.letter, x + 5, y, { bold: true });
    if (isRoomy) pen.text(names[n]!, x + 7.5, y);
    x += isRoomy ? widths[n]! + 7.5 : 9;
  });
}

function under(pen: Pen, cloth: Found, recipe: string, x: number, y: number, width: number): void {
  const { reads, lines } = caption(cloth, recipe, width, LINES - 1);
  const rank = String(cloth.rank);
  pen.text(rank, x, y, { bold: true });
  pen.text(cloth.code, x + textWidth(rank, SMALL, true) + 1.6, y, { quiet: true });
  pen.text(reads, x + width - 3.4, y, { align: 'right' });
  // A box to tick by hand.
  pen.box(x + width - 2.2, y - 2, 2.2, 2.2);
  lines.forEach((line, at) => {
    pen.text(line, x, y + (at + 1) * LEADING, { quiet: at + 1 === lines.length });
  });
}

/** A rule for measuring the print, and the meaning of the captions. */
function foot(pen: Pen): void {
  const y = PAGE.height - PAGE.bottom - 1;
  const x = PAGE.side;
  pen.line(x, y, x + 100, y);
  for (let mm = 0; mm <= 100; mm += 10) pen.line(x + mm, y - (mm % 50 === 0 ? 3 : 1.8), x + mm, y);
  pen.text('100 mm when printed at full size', x + 2, y - 3.6, { quiet: true });
  const right = PAGE.width - PAGE.side;
  pen.text('clear at: the farthest of 0.6, 2 and 6 m at which the pattern is still clear', right, y, {
    align: 'right',
    quiet: true,
  });
}
