import type { Draft } from '../draft/draft.js';
import { spacing } from '../draft/draft.js';
import { formatRuns, smallestPeriod } from '../order/order.js';
import { readsTo } from '../score/distance.js';
import { fixed, INCH } from './measure.js';
import type { PiecePlan } from './piece-plan.js';
import { measured } from './standing.js';
import type { WarpPlan } from './warp-plan.js';

/** What is told of each cloth: the head of its column, and its figure. Lengths in the measure of the sett. */
const COLUMNS: readonly (readonly [string, (row: Row) => string | number])[] = [
  ['number', ({ piece }) => piece.number],
  ['weaver', ({ weaver }) => weaver],
  ['code', ({ piece }) => piece.cloth.code],
  ['recipe', ({ piece }) => piece.cloth.recipe],
  ['structure', ({ piece }) => piece.cloth.structure],
  ['stars', ({ piece }) => piece.cloth.stars],
  ['note', ({ piece }) => piece.cloth.note],
  ['warp number', ({ warp }) => warp.number],
  ['warp order', ({ piece }) => runs(piece.draft, piece.draft.warp)],
  ['weft order', ({ piece }) => runs(piece.draft, piece.draft.weft)],
  ['ends in a repeat', ({ piece }) => piece.draft.warp.length],
  ['picks in a repeat', ({ piece }) => piece.draft.weft.length],
  ['repeat across', ({ piece, unit }) => fixed((piece.draft.warp.length * spacing(piece.draft.sett).across) / unit, 3)],
  ['repeat along', ({ piece, unit }) => fixed((piece.draft.weft.length * spacing(piece.draft.sett).along) / unit, 3)],
  ['measure', ({ warp }) => (warp.per === 'inch' ? 'in' : 'cm')],
  ['dark share', ({ scores }) => fixed(scores.darkShare, 3)],
  ['contrast', ({ scores }) => fixed(scores.contrast, 3)],
  ['figure', ({ scores }) => fixed(scores.figure, 3)],
  ['symmetry', ({ scores }) => fixed(scores.symmetry, 3)],
  ['reads to, m', ({ scores }) => readsTo(scores.reads) ?? 0],
  ['easy to, m', ({ scores }) => fixed(scores.easyTo, 1)],
  ['longest float, threads', ({ scores }) => scores.floats.longest ?? 'without end'],
  [
    'longest float',
    ({ scores, unit }) => (scores.floats.longestMm === null ? 'without end' : fixed(scores.floats.longestMm / unit, 3)),
  ],
  ['shafts', ({ warp }) => warp.heddles.length],
  ['treadles', ({ piece }) => piece.tied.treadles.length],
  ['shuttles', ({ piece }) => piece.shuttles.length],
  ['longest carry', ({ piece, unit }) => fixed(piece.carry.mm / unit, 3)],
  ['ends in the warp', ({ warp }) => warp.ends.length + warp.floating.ends],
  ['width in the reed', ({ warp, unit }) => fixed(warp.widthInReed / unit, 3)],
];

interface Row {
  readonly warp: WarpPlan;
  readonly piece: PiecePlan;
  readonly weaver: string;
  readonly scores: ReturnType<typeof measured>['scores'];
  /** Millimetres of the measure that lengths are told in. */
  readonly unit: number;
}

/**
 * All cloths of a plan with their measures as a plain table (RFC 4180: commas, CRLF), one line a cloth.
 *
 * @param weavers who weaves each warp, where they were dealt
 */
export function tableText(warps: readonly WarpPlan[], weavers?: readonly string[]): string {
  const shown = COLUMNS.filter(([head]) => head !== 'weaver' || weavers !== undefined);
  const rows = warps.flatMap((warp, at) =>
    warp.pieces.map((piece): Row => {
      const { scores } = measured(piece.draft);
      return { warp, piece, weaver: weavers?.[at] ?? '', scores, unit: warp.per === 'inch' ? INCH : 10 };
    }),
  );
  const lines = [shown.map(([head]) => head), ...rows.map((row) => shown.map(([, say]) => String(say(row))))];
  return lines.map((cells) => `${cells.map(quoted).join(',')}\r\n`).join('');
}

/** A field as it stands in the table: in quotes where a comma, a quote or a line's end is in it. */
function quoted(field: string): string {
  return /[",\r\n]/.test(field) ? `"${field.replaceAll('"', '""')}"` : field;
}

function runs({ yarns }: Draft, colours: readonly number[]): string {
  return formatRuns(colours.slice(0, smallestPeriod(colours)), yarns);
}
