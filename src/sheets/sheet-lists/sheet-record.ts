import type { PiecePlan } from '../../plan/piece/piece-plan.js';
import { settWords } from '../../plan/piece/sett-advice.js';
import type { WarpPlan } from '../../plan/piece/warp-plan.js';
import { yarnName } from '../../plan/yarn/yarn-amounts.js';
import { sayLength, sayLong, sayShort, sayWeight } from '../../words/measure.js';
import { USUAL_CAUTIONS } from '../paper/cautions.js';
import { MARGIN, type Pdf } from '../paper/paper.js';
import { drawRows, heightOf, inColumns, type Row, space, textRows } from './rows.js';

/** Side of the box for a swatch, width of the blanks beside it, and the distance from blank to blank, in millimetres. */
const BOX = 75;
const BLANKS_WIDE = 46;
const BLANK_STEP = 7.2;
const BETWEEN = 3;
/** Blanks side by side across a page, and from row to row. */
const BLANKS_ACROSS = 3;
const CLOSE_STEP = 6.8;

/** The part of a sheet that is filled in by hand, with the arithmetic of length and yarn, and cautions. */
export interface Record {
  readonly height: number;
  /** Draws it, by its upper edge. */
  readonly draw: (y: number) => void;
}

/** Arithmetic of length and yarn, blanks for results, room for the swatch, cautions. */
export function recordOf(pdf: Pdf, warp: WarpPlan, piece: PiecePlan): Record {
  const all = pdf.width - 2 * MARGIN;
  const reckoned = reckoningRows(pdf, warp, piece, all - BOX - BLANKS_WIDE - 2 * BETWEEN);
  const cautions = cautionRows(pdf, all);
  const high = Math.max(heightOf(reckoned), BOX + BETWEEN) + 2;
  const height = high + heightOf(cautions);
  return {
    height,
    draw: (y) => {
      const right = MARGIN + all;
      pdf.line(MARGIN, y, right, y, 0.4);
      drawRows(pdf, reckoned, { x: MARGIN, y: y + 1, width: all, height });
      const x = right - BOX - BETWEEN - BLANKS_WIDE;
      pdf.text('your results', x, y + 4.5, { bold: true });
      blanksOf(warp).forEach((blank, row) => {
        const line = y + 11.2 + row * BLANK_STEP;
        pdf.text(blank, x, line);
        pdf.line(x + pdf.textWidth(blank) + 1, line + 0.5, x + BLANKS_WIDE, line + 0.5);
      });
      pdf.box(right - BOX, y + BETWEEN, BOX, BOX);
      pdf.text('swatch', right - BOX + 2, y + BETWEEN + 4);
      pdf.text(`mark cloth no. ${piece.number} in the weaving`, right - BOX + 2, y + BETWEEN + BOX - 2);
      drawRows(pdf, cautions, { x: MARGIN, y: y + high, width: all, height });
    },
  };
}

/** The cautions of every sheet. */
export function cautionRows(pdf: Pdf, width: number): Row[] {
  return USUAL_CAUTIONS.flatMap((caution) => textRows(pdf, caution, width));
}

/** The record across a page that has no room for the swatch. */
export function closeRecordRows(pdf: Pdf, warp: WarpPlan, piece: PiecePlan, width: number): Row[] {
  const step = (width + BETWEEN) / BLANKS_ACROSS;
  const half = (width - 2 * BETWEEN) / 2;
  const blanks = blanksOf(warp);
  const lines = Array.from({ length: Math.ceil(blanks.length / BLANKS_ACROSS) }, (_, at): Row => {
    return {
      height: CLOSE_STEP,
      draw: (x, y) =>
        blanks.slice(at * BLANKS_ACROSS, (at + 1) * BLANKS_ACROSS).forEach((blank, c) => {
          pdf.text(blank, x + c * step, y);
          const line = x + c * step + pdf.textWidth(blank) + 1;
          pdf.line(line, y + 0.5, x + (c + 1) * step - BETWEEN, y + 0.5);
        }),
    };
  });
  const rule: Row = { height: 2.5, draw: (x, y) => pdf.line(x, y, x + width, y, 0.4) };
  const said = `your results; mark cloth no. ${piece.number} in the weaving; the album has a place for the swatch`;
  return [
    rule,
    inColumns(pdf, reckoningRows(pdf, warp, piece, half), 2, width, 2 * BETWEEN),
    ...textRows(pdf, said, width, true),
    ...lines,
  ];
}

function reckoningRows(pdf: Pdf, warp: WarpPlan, piece: PiecePlan, width: number): Row[] {
  const { per, length } = warp;
  const part = (title: string, lines: readonly string[]): Row[] => [
    ...textRows(pdf, title, width, true),
    ...lines.flatMap((line) =>
      textRows(pdf, line, width).map((row, at, all) => ({ ...row, heads: at < all.length - 1 })),
    ),
    space(1),
  ];
  return [
    ...part(
      warp.onTheLoom ? `what must be left of warp ${warp.number}` : `length of warp ${warp.number}`,
      length.lines.map(({ what, how, mm }) => {
        return `${what}: ${how} = ${what === 'wind' ? sayLong(mm, per) : sayLength(mm, per)}`;
      }),
    ),
    ...(piece.settAdvice === undefined ? [] : part('closest sett', [settWords(piece.settAdvice, piece.draft)])),
    ...part(
      'yarn for this warp; in all with 10 % reserve',
      warp.yarn.map((amount) => {
        const weight = amount.gramsWithReserve === null ? '' : `, ${sayWeight(amount.gramsWithReserve, per)}`;
        const [ofWarp, ofWeft] = [amount.warp, amount.weft].map((mm) => sayShort(mm, per));
        return `${yarnName(amount)}: ${amount.warp > 0 ? `warp ${ofWarp}, ` : ''}weft ${ofWeft}; in all ${sayLong(amount.withReserve, per)}${weight}`;
      }),
    ),
  ];
}

/** Labels of the blanks that are filled in by hand, then typed into the form for results. */
const blanksOf = ({ per }: WarpPlan): string[] => [
  `picks per ${per}`,
  'width on the loom',
  'warp used',
  'off the loom',
  'finished',
  'how finished',
  'what I changed',
  'stars, 0 to 5',
];
