import { MARGIN, type Sheets } from './paper.js';
import type { PiecePlan } from './piece-plan.js';

const COLUMNS = 2;
const ROWS = 2;
const BETWEEN = 6;
const LEADING = 4.2;
/** Room under a swatch for what is said of it. */
const WORDS = 38;

/**
 * Adds album pages for finished swatches, four a page: a place to fix each one, what it is, and blanks for what became
 * of it.
 *
 * @param weavers who wove each piece, where they were dealt
 */
export function addAlbum(sheets: Sheets, pieces: readonly PiecePlan[], weavers?: readonly string[]): void {
  const width = (sheets.width - 2 * MARGIN - BETWEEN) / COLUMNS;
  const room = (sheets.height - 2 * MARGIN) / ROWS;
  const side = Math.min(width, room - WORDS);
  pieces.forEach(({ number, cloth }, at) => {
    const place = at % (COLUMNS * ROWS);
    if (place === 0) sheets.page();
    const x = MARGIN + (place % COLUMNS) * (width + BETWEEN);
    const y = MARGIN + Math.floor(place / COLUMNS) * room;
    sheets.box(x, y, width, side, undefined, 0.1);
    let line = y + side + 5;
    const who = weavers?.[at] === undefined ? '' : `, woven by ${weavers[at]}`;
    sheets.text(sheets.fitted([`${number}${who}`], width - 24, { bold: true }), x, line, { bold: true });
    sheets.text(cloth.code, x + width, line, { bold: true, align: 'right' });
    line += LEADING;
    for (const words of sheets.wrapped(cloth.recipe, width).slice(0, 2)) {
      sheets.text(words, x, line);
      line += LEADING;
    }
    line = y + side + 5 + 3 * LEADING + 2.5;
    const half = width / 2;
    blank(sheets, 'yarns', x, line, width);
    blank(sheets, 'finished', x, line + 6, half - 2);
    blank(sheets, 'shrunk', x + half, line + 6, half);
    blank(sheets, 'washed', x, line + 12, half - 2);
    blank(sheets, 'date', x + half, line + 12, half);
  });
}

/** A word and a line to write on. */
function blank(sheets: Sheets, word: string, x: number, y: number, width: number): void {
  sheets.text(word, x, y);
  sheets.line(x + sheets.textWidth(word) + 1.5, y + 0.6, x + width, y + 0.6, 0.1);
}
