import { type Draft, type Sett, spacing } from '../../draft/draft.js';
import { formatRuns, smallestPeriod } from '../../order/order.js';
import { readsTo } from '../../score/contrast/viewing-distance.js';
import type { Scores } from '../../score/parts/scores.js';
import { fixed, INCH } from '../../words/measure.js';
import { seen } from '../../words/seen.js';

/** A column of a table: its heading, and a function from a row to its cell. */
export type Column<Row> = readonly [head: string, say: (row: Row) => string | number];

/** The data of one row about a cloth. */
export interface ClothRow {
  readonly draft: Draft;
  readonly scores: Scores;
}

/** Columns for orders, repeat, appearance and floats. Lengths in inches or centimetres, as the sett is counted. */
export const CLOTH_COLUMNS: readonly Column<ClothRow>[] = [
  ['warp order', ({ draft }) => runs(draft, draft.warp)],
  ['weft order', ({ draft }) => runs(draft, draft.weft)],
  ['ends in a repeat', ({ draft }) => draft.warp.length],
  ['picks in a repeat', ({ draft }) => draft.weft.length],
  ['repeat across', ({ draft: { warp, sett } }) => lengthIn(warp.length * spacing(sett).across, sett)],
  ['repeat along', ({ draft: { weft, sett } }) => lengthIn(weft.length * spacing(sett).along, sett)],
  ['lengths in', ({ draft }) => (draft.sett.per === 'inch' ? 'in' : 'cm')],
  ['dark share', ({ scores }) => fixed(scores.darkShare, 3)],
  ['contrast', ({ scores }) => fixed(scores.contrast, 3)],
  ['figure', ({ scores }) => fixed(scores.figure, 3)],
  ['symmetry', ({ scores }) => fixed(scores.symmetry, 3)],
  ['clear to, m', ({ scores }) => readsTo(scores.reads) ?? 0],
  ['repeat easy to see to, m', ({ scores }) => fixed(scores.easyTo, 1)],
  ['longest float, threads', ({ scores }) => scores.floats.longest ?? 'never interlaces'],
  [
    'longest float',
    ({ draft, scores: { floats } }) =>
      floats.longestMm === null ? 'never interlaces' : lengthIn(floats.longestMm, draft.sett),
  ],
];

/** What columns were called in tables of earlier versions, by today's name. */
const FORMER: Readonly<Record<string, string>> = {
  'lengths in': 'measure',
  'clear to, m': 'reads to, m',
  'repeat easy to see to, m': 'easy to, m',
  'contrast left at 0.6 m, L*': 'shows at 0.6 m',
  'contrast left at 2 m, L*': 'shows at 2 m',
  'contrast left at 6 m, L*': 'shows at 6 m',
  'repeat gone by, m': 'gone by, m',
  'shuttles end where they began': 'shuttles come home',
};

/** The columns under the names of earlier versions, by which a table of theirs is known. */
export function formerly<Row>(columns: readonly Column<Row>[]): Column<Row>[] {
  return columns.map(([head, say]) => [FORMER[head] ?? head, say]);
}

/** A length for a table: a number of inches or centimetres to three decimals, without unit. */
export function lengthIn(mm: number, { per }: Pick<Sett, 'per'>): string {
  return fixed(mm / (per === 'inch' ? INCH : 10), 3);
}

/** Writes rows as CSV (RFC 4180: commas, CRLF) with a heading line. */
export function csvText<Row>(columns: readonly Column<Row>[], rows: readonly Row[]): string {
  const lines = [
    columns.map(([head]) => head),
    ...rows.map((row) => columns.map(([, say]) => plain(String(say(row))))),
  ];
  return lines.map((cells) => `${cells.map(guarded).map(quoted).join(',')}\r\n`).join('');
}

/** A field that steers no terminal; a note keeps its lines. */
function plain(field: string): string {
  return field.split(/\r?\n/).map(seen).join('\n');
}

/**
 * Puts an apostrophe before text that a spreadsheet would run as a formula: titles and notes may come from strangers
 * (OWASP, CSV injection; full-width signs count too).
 */
function guarded(field: string): string {
  const isNumber = /^-?\d+(\.\d+)?$/.test(field);
  return !isNumber && /^\s*[=+\-@＝＋－＠]/.test(field) ? `'${field}` : field;
}

/** A CSV field, in quotes if it holds a comma, a quote or a line end. */
function quoted(text: string): string {
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

function runs({ yarns }: Draft, colours: readonly number[]): string {
  return formatRuns(colours.slice(0, smallestPeriod(colours)), yarns);
}
