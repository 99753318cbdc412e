import { FLOAT_SIDES } from '../cloth/floats.js';
import { spacing } from '../draft/draft.js';
import { CLOTH_COLUMNS, type Column, csvText, lengthIn } from '../plan/cloth-columns.js';
import { fixed } from '../plan/measure.js';
import type { Found } from '../search/found.js';

/** The table of a gallery's cloths. */
export const TABLE = 'cloths.csv';

const FLOAT_WORDS = {
  warpFace: 'warp float on the face, picks',
  warpBack: 'warp float on the back, picks',
  weftFace: 'weft float on the face, ends',
  weftBack: 'weft float on the back, ends',
} as const;

/** What is told of each cloth: how it is made, every figure, and what it costs to weave. */
const COLUMNS: readonly Column<Found>[] = [
  ['rank', ({ rank }) => rank],
  ['code', ({ code }) => code],
  ['recipe', ({ recipe }) => recipe],
  ['structure', ({ structure }) => structure],
  ['near twin of', ({ nearTwin }) => nearTwin ?? ''],
  ['woven by other orders', ({ equals }) => equals],
  ['score', ({ scores }) => fixed(scores.score, 6)],
  ...CLOTH_COLUMNS,
  ...FLOAT_SIDES.map(
    (side): Column<Found> => [FLOAT_WORDS[side], ({ scores }) => scores.floats[side] ?? 'without end'],
  ),
  ['tone', ({ scores }) => fixed(scores.tone, 3)],
  ['line', ({ scores }) => fixed(scores.line, 3)],
  ['solid', ({ scores }) => fixed(scores.solid, 3)],
  ['sharp', ({ scores }) => fixed(scores.sharp, 3)],
  ['patches', ({ scores }) => fixed(scores.bits, 3)],
  ['shapes', ({ scores }) => scores.shapes],
  ['unlike the structure', ({ scores }) => fixed(scores.unlike, 3)],
  ['nearest classic', ({ scores }) => scores.nearest ?? ''],
  ['novelty', ({ scores }) => (scores.novelty === undefined ? '' : fixed(scores.novelty, 3))],
  ['plane group', ({ scores }) => scores.planeGroup],
  ['in two colours', ({ scores }) => scores.colourGroup ?? ''],
  ['shows at 0.6 m', ({ scores }) => fixed(scores.reads['0.6'], 1)],
  ['shows at 2 m', ({ scores }) => fixed(scores.reads['2'], 1)],
  ['shows at 6 m', ({ scores }) => fixed(scores.reads['6'], 1)],
  ['gone by, m', ({ scores }) => fixed(scores.goneBy, 1)],
  ['warp changes', ({ ease }) => ease.warpChanges],
  ['weft changes', ({ ease }) => ease.weftChanges],
  ['shuttles', ({ ease }) => ease.shuttles],
  ['longest carry', ({ ease, draft: { sett } }) => lengthIn(ease.longestCarry * spacing(sett).along, sett)],
  ['shuttles come home', ({ ease }) => (ease.sameSide ? 'yes' : 'no')],
];

/** All cloths of a gallery with their measures as a plain table (RFC 4180, UTF-8), one line a cloth. */
export function clothsTable(found: readonly Found[]): string {
  return csvText(COLUMNS, found);
}

/** Whether a text is such a table, with the columns as they were written. */
export function isClothsTable(text: string): boolean {
  return text.startsWith(csvText(COLUMNS, []));
}
