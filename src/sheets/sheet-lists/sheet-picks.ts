import type { GampSection } from '../../plan/gamp/gamp-plan.js';
import { type Fold, folded } from '../../plan/piece/folds.js';
import { type PickLine, pickGroups, pickSections, pickSheet, picksInRepeats } from '../../plan/piece/lists.js';
import type { PiecePlan } from '../../plan/piece/piece-plan.js';
import type { ListSection } from '../../plan/piece/threading-list.js';
import { restingSides } from '../../plan/warp/pick-list.js';
import { counted } from '../../words/counts.js';
import { NUMBERS, type Pdf, SMALL } from '../paper/paper.js';
import { liftCells } from './lift-cells.js';
import { heightOf, LINE, type Row, space, textRows, tickRows } from './rows.js';
import { groupRows, sectionRows } from './sheet-threading.js';

/** How a list stands in columns: millimetres from row to row and from column to column, points of its numbers. */
interface Columns {
  readonly leading: number;
  readonly between: number;
  readonly size: number;
}
const ROOMY: Columns = { leading: 4.6, between: 6, size: NUMBERS };
const CLOSE: Columns = { leading: 3.9, between: 4, size: SMALL };
/** Most rows in a group that is written once and woven several times. */
const BLOCK = 24;
/** Lines of a block of columns where a list goes on to the next page, and the space under the block in millimetres. */
const BLOCK_LINES = 10;
const UNDER_BLOCK = 2;
/** Indent, in millimetres, of steps that take lines of their own. */
const INDENT = 17;
const STEPS = { size: NUMBERS, bold: true } as const;

/** A line of the pick list on paper. */
interface PickRow {
  readonly numbers: string;
  readonly shuttle: string;
  /** The line of the pick list that begins with this row; absent in continuation rows and headings. */
  readonly line?: PickLine;
  readonly steps: string;
}

/**
 * The picks of the whole piece: those of one repeat, in the fullest form that fits `height`, then a box for each repeat
 * with running totals.
 */
export function picksRows(
  pdf: Pdf,
  piece: PiecePlan,
  width: number,
  height: number,
  sections?: readonly GampSection[],
): Row[] {
  const named = sections && pickSections(piece, sections);
  if (named !== undefined) return gampRows(pdf, piece, named, width);
  const lift = piece.tied.manner === 'lift plan';
  const { tabby } = pickSheet(piece);
  const steps = lift ? 'shafts up' : 'treadles';
  const head = [
    ...textRows(pdf, `picks: ${picksInRepeats(piece)}`, width, true),
    ...(tabby === undefined
      ? []
      : textRows(
          pdf,
          `After each pick listed, ${tabby.shuttle} from the ${tabby.start}, ${steps} ${tabby.steps} in turn.`,
          width,
        )),
  ];
  const foot = [...repeatRows(pdf, piece, width), ...textRows(pdf, homeWords(piece), width)];
  const room = height - heightOf(head) - heightOf(foot);
  const all = pickRows(pdf, piece, width);
  const apart = lift ? ', picks with a stroke between them' : '';
  const long = () => [
    ...textRows(pdf, `one repeat: shuttle and direction, picks carried, ${steps}${apart}`, width),
    ...all.map((row) => longRow(pdf, row, width)),
  ];
  const listed = [
    long,
    () => columnRows(pdf, piece, width, ROOMY),
    () => groupedRows(pdf, piece, width),
    () => columnRows(pdf, piece, width, CLOSE),
  ]
    .map((make) => make())
    .filter((rows) => rows !== undefined);
  const fit = listed.find((rows) => heightOf(rows) <= room);
  const rows =
    fit ?? liftCells(pdf, piece, width, room) ?? columnRows(pdf, piece, width, CLOSE, BLOCK_LINES) ?? listed.at(-1)!;
  return [...head, ...rows, space(1), ...foot];
}

/** The picks of a gamp, section by section, between its hems. */
function gampRows(pdf: Pdf, piece: PiecePlan, sections: readonly ListSection[], width: number): Row[] {
  const { draft, picks } = piece;
  const hems = picks - draft.weft.length;
  const said = `picks: ${draft.weft.length} in ${counted(sections.length, 'part')}, and ${hems} for two hems`;
  return [
    ...textRows(pdf, said, width, true),
    ...textRows(pdf, startWords(piece), width),
    ...sectionRows(pdf, sections, width),
  ];
}

/** All lines of the pick list of one repeat, for a column `width` millimetres wide. */
function pickRows(pdf: Pdf, piece: PiecePlan, width: number): PickRow[] {
  const key = (line: PickLine): string =>
    [line.to - line.from, line.shuttle, line.start, line.rests, line.steps, line.carry].join();
  return folded(pickSheet(piece).lines, key, BLOCK).flatMap((fold) => foldedPicks(pdf, fold, width));
}

function longRow(pdf: Pdf, row: PickRow, width: number): Row {
  return {
    height: LINE,
    heads: row.steps === '',
    draw: (x, y) => {
      pdf.text(row.numbers, x, y);
      pdf.text(row.shuttle, x + 15, y, { bold: true });
      const side = x + 17 + pdf.textWidth(row.shuttle, undefined, true);
      if (row.line !== undefined) pdf.text(sideWords(row.line), side, y);
      if (row.line === undefined) pdf.text(row.steps, x + INDENT, y, STEPS);
      else pdf.text(row.steps, x + width, y, { ...STEPS, align: 'right' });
    },
  };
}

/**
 * The list in as many columns as fit; a pointer shows the direction of the first pick of each line.
 *
 * @param high lines after which columns begin anew underneath: a block is never divided between pages, so that every
 *   page is read down its columns from left to right
 */
function columnRows(
  pdf: Pdf,
  piece: PiecePlan,
  width: number,
  { leading, between, size }: Columns,
  high = Number.POSITIVE_INFINITY,
): Row[] | undefined {
  const rows = pickRows(pdf, piece, width);
  const after = Math.max(...rows.map(({ numbers }) => pdf.textWidth(numbers))) + 2;
  const wide = Math.max(
    ...rows.map(({ shuttle, steps, line }) => {
      const words = pdf.textWidth(shuttle, undefined, true) + pdf.textWidth(steps, size, true);
      return after + words + (line === undefined ? 0 : 6);
    }),
  );
  const columns = Math.floor((width + between) / (wide + between));
  if (columns < 2) return undefined;
  const step = (width + between) / columns;
  const key: Row = {
    height: leading,
    draw: (x, y) => {
      pdf.pointer(x, y - 1.1, 'right');
      pdf.text('first pick from left to right', x + 3.5, y);
    },
  };
  const block = (from: number): Row[] => {
    const own = rows.slice(from, from + columns * high);
    const each = Math.ceil(own.length / columns);
    return Array.from({ length: each }, (_, at) => ({
      height: leading,
      heads: high < rows.length && at < each - 1,
      draw: (x, y) => {
        for (let c = 0; c < columns && c * each + at < own.length; c++) {
          const row = own[c * each + at]!;
          const left = x + c * step;
          pdf.text(row.numbers, left, y);
          pdf.text(row.shuttle, left + after, y, { bold: true });
          const way = left + after + 1.5 + pdf.textWidth(row.shuttle, undefined, true);
          if (row.line !== undefined) pdf.pointer(way, y - 1.1, row.line.start === 'left' ? 'right' : 'left');
          pdf.text(row.steps, left + step - between, y, { size, bold: true, align: 'right' });
          if (c > 0) pdf.line(left - between / 2, y - leading + 1.2, left - between / 2, y + 1.2, 0.2);
        }
      },
    }));
  };
  const blocks: Row[] = [];
  for (let from = 0; from < rows.length; from += columns * high) {
    blocks.push(...(from > 0 ? [space(UNDER_BLOCK)] : []), ...block(from));
  }
  return [key, ...blocks];
}

/** The list in groups of picks, treadle and shuttle of each; undefined where those do not say enough. */
function groupedRows(pdf: Pdf, piece: PiecePlan, width: number): Row[] | undefined {
  const groups = pickGroups(piece);
  if (groups === undefined) return undefined;
  return [...textRows(pdf, `one repeat: ${startWords(piece)}`, width), ...groupRows(pdf, groups, width)];
}

/** What a group of picks says, and from which sides the shuttles start. */
function startWords({ shuttles }: PiecePlan): string {
  const sides = shuttles.map(({ name, side }) => `${name} from the ${side}`).join(', ');
  return `treadle and shuttle of each pick; first ${sides}, then to and fro`;
}

/** A box for each repeat, and for what is woven of another, with the picks so far; none where one is all. */
function repeatRows(pdf: Pdf, { picks, draft }: PiecePlan, width: number): Row[] {
  const repeat = draft.weft.length;
  if (picks <= repeat) return [];
  const totals = Array.from({ length: Math.ceil(picks / repeat) }, (_, r) => Math.min(picks, (r + 1) * repeat));
  return tickRows(pdf, totals, 'the picks so far', width);
}

/** Words for where the shuttles lie after one repeat. */
function homeWords({ shuttles, draft }: PiecePlan): string {
  const sides = shuttles.map(({ side }) => side);
  const rests = restingSides(draft, draft.weft.length, sides);
  const home = shuttles.map(({ name, side }, s) => {
    return rests[s] === side
      ? `${name} is back on the ${side}`
      : `${name} ends on the ${rests[s]}: next repeat mirrored`;
  });
  return `After one repeat ${home.join('; ')}.`;
}

function foldedPicks(pdf: Pdf, { lines, times }: Fold<PickLine>, width: number): PickRow[] {
  const first = lines[0]!.from;
  const last = lines.at(-1)!.to;
  const length = last - first + 1;
  const range = (from: number, to: number): string => (from === to ? `${from}` : `${from}–${to}`);
  const head: PickRow[] =
    times === 1
      ? []
      : [
          {
            numbers: range(first, first + length * times - 1),
            shuttle: `${times} times ${range(first, last)}:`,
            steps: '',
          },
        ];
  const rows = lines.flatMap((line): PickRow[] => {
    const row = { numbers: range(line.from, line.to), shuttle: line.shuttle, line, steps: '' };
    const words = pdf.textWidth(line.shuttle, undefined, true) + pdf.textWidth(sideWords(line)) + INDENT + 4;
    if (words + pdf.textWidth(line.steps, NUMBERS, true) <= width) return [{ ...row, steps: line.steps }];
    // A repeated group begins on a line of its own, and so do the steps after it.
    const parts = line.steps.split(/(?<=×\d+)(?: \/)? | (?=\([^)]*\)×|[\d+]+×)/);
    const own = parts.flatMap((part) => inLines(part, pdf.wrapped(part, width - INDENT, STEPS).length));
    return [row, ...own.map((steps) => ({ numbers: '', shuttle: '', steps }))];
  });
  return [...head, ...rows];
}

/** Divides steps into `lines` lines of equal numbers of steps. */
function inLines(steps: string, lines: number): string[] {
  const between = steps.includes(' / ') ? ' / ' : ' ';
  const each = steps.split(between);
  const count = Math.ceil(each.length / lines);
  return Array.from({ length: Math.ceil(each.length / count) }, (_, line) =>
    each.slice(line * count, (line + 1) * count).join(between),
  );
}

/** `left to right, carry 4`. */
function sideWords({ start, rests, carry }: PickLine): string {
  return `${start} to ${rests}${carry > 0 ? `, carry ${carry}` : ''}`;
}
