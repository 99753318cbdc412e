import type { PiecePlan } from '../plan/piece/piece-plan.js';
import { MARGIN, type Pdf } from './paper/paper.js';

const COLUMNS = 2;
const ROWS = 2;
const BETWEEN = 6;
const LEADING = 4.2;
/** Height of the words under a swatch, in millimetres. */
const WORDS = 38;

/**
 * Adds album pages for finished swatches, four a page: a place to fix each swatch, its description, and blanks for
 * results.
 *
 * @param weavers the weaver of each piece, if cloths were dealt
 */
export function addAlbum(pdf: Pdf, pieces: readonly PiecePlan[], weavers?: readonly string[]): void {
  const width = (pdf.width - 2 * MARGIN - BETWEEN) / COLUMNS;
  const room = (pdf.height - 2 * MARGIN) / ROWS;
  const side = Math.min(width, room - WORDS);
  pieces.forEach(({ number, cloth }, at) => {
    const place = at % (COLUMNS * ROWS);
    if (place === 0) pdf.page();
    const x = MARGIN + (place % COLUMNS) * (width + BETWEEN);
    const y = MARGIN + Math.floor(place / COLUMNS) * room;
    pdf.box(x, y, width, side, undefined, 0.1);
    let line = y + side + 5;
    const who = weavers?.[at] === undefined ? '' : `, woven by ${weavers[at]}`;
    pdf.text(pdf.fitted([`${number}${who}`], width - 24, { bold: true }), x, line, { bold: true });
    pdf.text(cloth.code, x + width, line, { bold: true, align: 'right' });
    line += LEADING;
    for (const words of pdf.wrapped(cloth.recipe, width).slice(0, 2)) {
      pdf.text(words, x, line);
      line += LEADING;
    }
    line = y + side + 5 + 3 * LEADING + 2.5;
    const half = width / 2;
    blank(pdf, 'yarns', x, line, width);
    blank(pdf, 'finished', x, line + 6, half - 2);
    blank(pdf, 'shrunk', x + half, line + 6, half);
    blank(pdf, 'washed', x, line + 12, half - 2);
    blank(pdf, 'date', x + half, line + 12, half);
  });
}

/** A word and a line to write on. */
function blank(pdf: Pdf, word: string, x: number, y: number, width: number): void {
  pdf.text(word, x, y);
  pdf.line(x + pdf.textWidth(word) + 1.5, y + 0.6, x + width, y + 0.6, 0.1);
}
