import type { KeptCloth } from '../formats/shortlist.js';
import type { Gamp } from '../plan/gamp/gamp-plan.js';
import { CLOTH_COLUMNS, type ClothRow, type Column, csvText, formerly, lengthIn } from '../plan/piece/cloth-columns.js';
import { measured } from '../plan/piece/highlights.js';
import type { PiecePlan } from '../plan/piece/piece-plan.js';
import type { WarpPlan } from '../plan/piece/warp-plan.js';

interface Row extends ClothRow {
  readonly warp: WarpPlan;
  readonly piece: PiecePlan;
  readonly number: number;
  readonly cloth: KeptCloth;
  readonly weaver: string;
}

/** The columns of the table of a plan's cloths. */
const COLUMNS: readonly Column<Row>[] = [
  ['number', ({ number }) => number],
  ['weaver', ({ weaver }) => weaver],
  ['code', ({ cloth }) => cloth.code],
  ['recipe', ({ cloth }) => cloth.recipe],
  ['structure', ({ cloth }) => cloth.structure],
  ['stars', ({ cloth }) => cloth.stars],
  ['note', ({ cloth }) => cloth.note],
  ['warp number', ({ warp }) => warp.number],
  ...CLOTH_COLUMNS,
  ['shafts', ({ warp }) => warp.heddles.length],
  ['treadles', ({ piece }) => piece.tied.treadles.length],
  ['shuttles', ({ piece }) => piece.shuttles.length],
  ['longest carry', ({ piece, draft }) => lengthIn(piece.carry.mm, draft.sett)],
  ['ends in the warp', ({ warp }) => warp.ends.length + warp.floating.ends],
  ['width in the reed', ({ warp, draft }) => lengthIn(warp.widthInReed, draft.sett)],
];

/** Whether a text is such a table, with its columns unchanged. */
export function isTable(text: string): boolean {
  const heads = [COLUMNS, COLUMNS.filter(([head]) => head !== 'weaver')];
  return [...heads, ...heads.map(formerly)].some((columns) => text.startsWith(csvText(columns, [])));
}

/**
 * The cloths of a plan with their measures as CSV, one line per cloth; of a gamp, one line per square.
 *
 * @param weavers the weaver of each warp, if cloths were dealt
 */
export function tableText(warps: readonly WarpPlan[], weavers?: readonly string[], gamp?: Gamp): string {
  const shown = COLUMNS.filter(([head]) => head !== 'weaver' || weavers !== undefined);
  const rows = warps.flatMap((warp, at) =>
    warp.pieces.flatMap((piece): Row[] => {
      const cloths = gamp?.squares.map(({ number, kept: cloth }) => ({ number, cloth, draft: cloth.draft })) ?? [piece];
      return cloths.map(({ number, cloth, draft }) => {
        const { scores } = measured(draft);
        return { warp, piece, number, cloth, draft, weaver: weavers?.[at] ?? '', scores };
      });
    }),
  );
  return csvText(shown, rows);
}
