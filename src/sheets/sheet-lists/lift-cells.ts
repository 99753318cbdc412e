import { shaftCount } from '../../draft/draft.js';
import type { PiecePlan } from '../../plan/piece/piece-plan.js';
import type { Pdf } from '../paper/paper.js';
import { Grid } from './grid.js';
import { heightOf, type Row, textRows } from './rows.js';

/** Sides of cells in millimetres, the largest first; the smallest has just room for a 9 pt figure or letter. */
const CELLS = [4.1, 3.6, 3.2, 2.8] as const;
/** Space round the letter of the shuttle and its pointer, and between columns. */
const POINTER = 3.6;
const BETWEEN = 2;

/**
 * The picks of one repeat of a lift plan in cells, a row for each pick, in as many columns as fit a width; the cells are
 * as large as they can be. Undefined if none fit.
 */
export function liftCells(pdf: Pdf, piece: PiecePlan, width: number, height: number): Row[] | undefined {
  if (piece.tied.manner !== 'lift plan') return undefined;
  return CELLS.map((cell) => cellRows(pdf, piece, width, cell)).find(
    (rows) => rows !== undefined && heightOf(rows) <= height,
  );
}

function cellRows(pdf: Pdf, { draft, tied, list }: PiecePlan, width: number, cell: number): Row[] | undefined {
  const shafts = shaftCount(draft);
  const grid = new Grid(pdf, cell);
  const numbers = pdf.textWidth(String(list.length)) + 1;
  const wide = numbers + (shafts + 1) * cell + POINTER;
  const columns = Math.floor((width + BETWEEN) / (wide + BETWEEN));
  if (columns === 0) return undefined;
  const step = (width + BETWEEN) / columns;
  const each = Math.ceil(list.length / columns);
  const lefts = Array.from({ length: Math.ceil(list.length / each) }, (_, c) => numbers + c * step);
  const head: Row = {
    height: 4,
    heads: true,
    draw: (x, y) => {
      for (const left of lefts) {
        for (let s = 1; s <= shafts; s++)
          if (String(s).length * pdf.textWidth('0') <= cell || s === shafts)
            pdf.text(String(s), x + left + (s - 0.5) * cell, y + 0.4, { align: 'middle' });
      }
    },
  };
  const cells = Array.from({ length: each }, (_, at): Row => {
    return {
      height: cell,
      heads: at < each - 1,
      draw: (x, y) => {
        const top = y + 1.2 - cell;
        lefts.forEach((left, c) => {
          const thrown = list[c * each + at];
          if (thrown === undefined) return;
          const yarn = draft.yarns[draft.weft[thrown.pick - 1]!]!;
          if (at === 0 || (thrown.pick % 5 === 0 && at > 1))
            pdf.text(String(thrown.pick), x + left - 1, y + 2.3 - cell / 2, { align: 'right' });
          grid.lines(x + left, top, shafts, 1);
          for (const shaft of tied.lifts[thrown.pick - 1]!)
            grid.mark(x + left + (shaft - 1) * cell, top, String(shaft));
          const beside = x + left + shafts * cell + 0.6;
          grid.letter(beside, top, yarn);
          pdf.pointer(beside + cell + 0.6, top + cell / 2, thrown.from === 'left' ? 'right' : 'left');
        });
      },
    };
  });
  const said = 'one repeat, from pick 1 downward: shafts up, shuttle; a pointer shows the way of the shuttle';
  return [...textRows(pdf, said, width), head, ...cells];
}
