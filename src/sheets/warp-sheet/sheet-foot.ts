import { lightness, luminance, type Yarn } from '../../colour/yarn.js';
import { greyOf, MARGIN, type Pdf } from '../paper/paper.js';

/** Draws the two rules for measuring a print, one above the other, the lower at base line `y`. */
export function drawRules(pdf: Pdf, x: number, y: number): void {
  rule(pdf, x, y - 5.5, 100, 10, '100 mm');
  rule(pdf, x, y, 101.6, 12.7, '4 in: measure me');
}

/** Draws the foot of a first page: rules, and a scale of five greys on which the yarns are marked. */
export function drawFoot(pdf: Pdf, yarns: readonly Yarn[]): void {
  const y = pdf.height - MARGIN;
  drawRules(pdf, MARGIN, y);
  const step = 10;
  const left = pdf.width - MARGIN - 5 * step;
  for (let s = 0; s < 5; s++) pdf.box(left + s * step, y - 10, step, 5, greyOf(s / 4), 0.1);
  let last = Number.NEGATIVE_INFINITY;
  let row = 0;
  for (const { letter, place } of placed(yarns, left + step / 2, 4 * step)) {
    row = place - last < 3 ? 1 - row : 0;
    last = place;
    pdf.pointer(place, y - 12.2, 'down', 1.6);
    pdf.text(letter, place, y - 12.6 - row * 3.6, { bold: true, align: 'middle' });
  }
  pdf.text('dark', left - 1.5, y - 6.3, { align: 'right' });
  pdf.text('grey scale, with the yarns of this cloth', pdf.width - MARGIN, y, { align: 'right' });
}

/** The position of each yarn on the scale, by lightness, darkest first. */
function placed(yarns: readonly Yarn[], left: number, width: number): { letter: string; place: number }[] {
  return yarns
    .map(({ letter, hex }) => ({ letter, place: left + (lightness(luminance(hex)) / 100) * width }))
    .sort((a, b) => a.place - b.place || (a.letter < b.letter ? -1 : 1));
}

function rule(pdf: Pdf, x: number, y: number, length: number, step: number, words: string): void {
  pdf.line(x, y, x + length, y, 0.25);
  for (let at = 0; at <= length + 1e-9; at += step) pdf.line(x + at, y, x + at, y - 1.8, 0.25);
  pdf.text(words, x + length + 2, y);
}
