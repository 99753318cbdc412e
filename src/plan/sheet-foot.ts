import { lightness, luminance, type Yarn } from '../colour/yarn.js';
import { greyOf, MARGIN, type Sheets } from './paper.js';

/** The two rules by which a print is measured, one above the other, the lower at base line `y`. */
export function drawRules(sheets: Sheets, x: number, y: number): void {
  rule(sheets, x, y - 5.5, 100, 10, '100 mm');
  rule(sheets, x, y, 101.6, 12.7, '4 in: measure me');
}

/** The foot of a first page: rules, and a scale of five greys on which the yarns are marked. */
export function drawFoot(sheets: Sheets, yarns: readonly Yarn[]): void {
  const y = sheets.height - MARGIN;
  drawRules(sheets, MARGIN, y);
  const step = 10;
  const left = sheets.width - MARGIN - 5 * step;
  for (let s = 0; s < 5; s++) sheets.box(left + s * step, y - 10, step, 5, greyOf(s / 4), 0.1);
  let last = Number.NEGATIVE_INFINITY;
  let row = 0;
  for (const { letter, place } of placed(yarns, left + step / 2, 4 * step)) {
    row = place - last < 3 ? 1 - row : 0;
    last = place;
    sheets.pointer(place, y - 12.2, 'down', 1.6);
    sheets.text(letter, place, y - 12.6 - row * 3.6, { bold: true, align: 'middle' });
  }
  sheets.text('dark', left - 1.5, y - 6.3, { align: 'right' });
  sheets.text('grey scale, with the yarns of this cloth', sheets.width - MARGIN, y, { align: 'right' });
}

/** Each yarn on the scale by its lightness, darkest first. */
function placed(yarns: readonly Yarn[], left: number, width: number): { letter: string; place: number }[] {
  return yarns
    .map(({ letter, hex }) => ({ letter, place: left + (lightness(luminance(hex)) / 100) * width }))
    .sort((a, b) => a.place - b.place || (a.letter < b.letter ? -1 : 1));
}

function rule(sheets: Sheets, x: number, y: number, length: number, step: number, words: string): void {
  sheets.line(x, y, x + length, y, 0.25);
  for (let at = 0; at <= length + 1e-9; at += step) sheets.line(x + at, y, x + at, y - 1.8, 0.25);
  sheets.text(words, x + length + 2, y);
}
