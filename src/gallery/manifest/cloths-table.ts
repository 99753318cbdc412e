import { FLOAT_SIDES } from '../../cloth/floats.js';
import { spacing } from '../../draft/draft.js';
import { CLOTH_COLUMNS, type Column, csvText, formerly, lengthIn } from '../../plan/piece/cloth-columns.js';
import { LOOK_FIGURES } from '../../score/parts/look-figures.js';
import type { Found } from '../../search/strategy/outcome.js';
import { fixed } from '../../words/measure.js';
import { type Manifest, manifestDraft } from './manifest.js';

/** File name of the table of a gallery's cloths. */
export const TABLE = 'cloths.csv';

const FLOAT_WORDS = {
  warpFace: 'warp float on the face, picks',
  warpBack: 'warp float on the back, picks',
  weftFace: 'weft float on the face, ends',
  weftBack: 'weft float on the back, ends',
} as const;

type Row = Pick<Found, 'rank' | 'code' | 'recipe' | 'structure' | 'nearTwin' | 'equals' | 'scores' | 'ease' | 'draft'>;

/** The columns of the table: how a cloth is made, its figures, the work of weaving it. */
const COLUMNS: readonly Column<Row>[] = [
  ['rank', ({ rank }) => rank],
  ['code', ({ code }) => code],
  ['recipe', ({ recipe }) => recipe],
  ['structure', ({ structure }) => structure],
  ['near twin of', ({ nearTwin }) => nearTwin ?? ''],
  ['woven by other orders', ({ equals }) => equals],
  ['score', ({ scores }) => fixed(scores.score, 6)],
  ...CLOTH_COLUMNS,
  ...FLOAT_SIDES.map(
    (side): Column<Row> => [FLOAT_WORDS[side], ({ scores }) => scores.floats[side] ?? 'never interlaces'],
  ),
  ['tone', ({ scores }) => fixed(scores.tone, 3)],
  ['line', ({ scores }) => fixed(scores.line, 3)],
  ...LOOK_FIGURES.map(({ key, heading }): Column<Row> => [heading, ({ scores }) => fixed(scores[key], 3)]),
  ['nearest classic', ({ scores }) => scores.nearest ?? ''],
  ['novelty', ({ scores }) => (scores.novelty === undefined ? '' : fixed(scores.novelty, 3))],
  ['plane group', ({ scores }) => scores.planeGroup],
  ['in two colours', ({ scores }) => scores.colourGroup ?? ''],
  ['contrast left at 0.6 m, L*', ({ scores }) => fixed(scores.reads['0.6'], 1)],
  ['contrast left at 2 m, L*', ({ scores }) => fixed(scores.reads['2'], 1)],
  ['contrast left at 6 m, L*', ({ scores }) => fixed(scores.reads['6'], 1)],
  ['repeat gone by, m', ({ scores }) => fixed(scores.goneBy, 1)],
  ['warp changes', ({ ease }) => ease.warpChanges],
  ['weft changes', ({ ease }) => ease.weftChanges],
  ['shuttles', ({ ease }) => ease.shuttles],
  ['longest carry', ({ ease, draft: { sett } }) => lengthIn(ease.longestCarry * spacing(sett).along, sett)],
  ['shuttles end where they began', ({ ease }) => (ease.sameSide ? 'yes' : 'no')],
];

/** The columns before pieces were counted. */
const EARLIER = COLUMNS.filter(([head]) => head !== 'piece');

/** All cloths of a gallery with their figures as CSV (RFC 4180, UTF-8), one line per cloth. */
export function clothsTable(found: readonly Row[]): string {
  return csvText(COLUMNS, found);
}

/** Whether a text is the unchanged table of a gallery, of this version or an earlier one. */
export function isTableOf(manifest: Manifest, text: string): boolean {
  const rows = manifest.candidates.map((candidate): Row => {
    const scores = candidate.scores as Row['scores'];
    return { ...candidate, scores, draft: manifestDraft(candidate, manifest) };
  });
  return [COLUMNS, EARLIER, formerly(EARLIER)].some((columns) => text === csvText(columns, rows));
}
