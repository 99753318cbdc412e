import { type Draft, type Sett, spacing } from '../../draft/draft.js';
import { formatRuns, smallestPeriod } from '../../order/order.js';
import { readsTo } from '../../score/contrast/viewing-distance.js';
import type { Scores } from '../../score/model/figures.js';
import { fixed, INCH } from '../../words/measure.js';

/** A column of a table: its head, and what stands in it for a row. */
export type Column<Row> = readonly [head: string, say: (row: Row) => string | number];

/** What is told of any cloth. */
export interface ClothRow {
  readonly draft: Draft;
  readonly scores: Scores;
}

/** Orders, repeat, what is seen, and floats. Lengths in inches or centimetres, as the sett is counted. */
export const CLOTH_COLUMNS: readonly Column<ClothRow>[] = [
  ['warp order', ({ draft }) => runs(draft, draft.warp)],
  ['weft order', ({ draft }) => runs(draft, draft.weft)],
  ['ends in a repeat', ({ draft }) => draft.warp.length],
  ['picks in a repeat', ({ draft }) => draft.weft.length],
  ['repeat across', ({ draft: { warp, sett } }) => lengthIn(warp.length * spacing(sett).across, sett)],
  ['repeat along', ({ draft: { weft, sett } }) => lengthIn(weft.length * spacing(sett).along, sett)],
  ['measure', ({ draft }) => (draft.sett.per === 'inch' ? 'in' : 'cm')],
  ['dark share', ({ scores }) => fixed(scores.darkShare, 3)],
  ['contrast', ({ scores }) => fixed(scores.contrast, 3)],
  ['figure', ({ scores }) => fixed(scores.figure, 3)],
  ['symmetry', ({ scores }) => fixed(scores.symmetry, 3)],
  ['reads to, m', ({ scores }) => readsTo(scores.reads) ?? 0],
  ['easy to, m', ({ scores }) => fixed(scores.easyTo, 1)],
  ['longest float, threads', ({ scores }) => scores.floats.longest ?? 'never interlaces'],
  [
    'longest float',
    ({ draft, scores: { floats } }) =>
      floats.longestMm === null ? 'never interlaces' : lengthIn(floats.longestMm, draft.sett),
  ],
];

/** A length as it stands in a table: inches or centimetres without their name, to three places. */
export function lengthIn(mm: number, { per }: Pick<Sett, 'per'>): string {
  return fixed(mm / (per === 'inch' ? INCH : 10), 3);
}

/** Rows as a plain table (RFC 4180: commas, CRLF), the heads first. */
export function csvText<Row>(columns: readonly Column<Row>[], rows: readonly Row[]): string {
  const lines = [columns.map(([head]) => head), ...rows.map((row) => columns.map(([, say]) => String(say(row))))];
  return lines.map((cells) => `${cells.map(guarded).map(quoted).join(',')}\r\n`).join('');
}

/**
 * A field that a spreadsheet does not take for a formula: text that begins like one gets an apostrophe in front. Titles
 * and notes are written by strangers (OWASP, CSV injection; the signs in full width too).
 */
function guarded(field: string): string {
  const isNumber = /^-?\d+(\.\d+)?$/.test(field);
  return !isNumber && /^[=+\-@\t\r＝＋－＠]/.test(field) ? `'${field}` : field;
}

/** A field as it stands in the table: in quotes where a comma, a quote or a line's end is in it. */
function quoted(text: string): string {
  // A spreadsheet would reckon such a text as a formula; the sign before it says that it is none.
  const field = /^(?:[=+@\t\r]|-(?!\d))/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(field) ? `"${field.replaceAll('"', '""')}"` : field;
}

function runs({ yarns }: Draft, colours: readonly number[]): string {
  return formatRuns(colours.slice(0, smallestPeriod(colours)), yarns);
}
