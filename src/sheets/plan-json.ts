import { PLAN_FORMAT, type PlanWritten } from '../formats/plan-schema.js';
import type { KeptCloth } from '../formats/shortlist.js';
import { storedDraft } from '../formats/stored-draft.js';
import type { Gamp } from '../plan/gamp/gamp-plan.js';
import { pickSheet } from '../plan/piece/lists.js';
import { threadingLines, threadingParts } from '../plan/piece/threading-list.js';
import type { WarpPlan } from '../plan/piece/warp-plan.js';
import { figures } from './warp-sheet/sheet-figures.js';
import type { OrderedYarn } from './yarn-order.js';

/** The text of plan.json: every figure of the sheets, lengths in millimetres, weights in grams. */
export function planText(warps: readonly WarpPlan[], yarn: readonly OrderedYarn[], gamp?: Gamp): string {
  const plan: PlanWritten = {
    format: PLAN_FORMAT,
    version: 1,
    yarn,
    ...(gamp && { gamp: gampData(gamp) }),
    warps: warps.map(warpData),
  };
  return `${JSON.stringify(plan, null, 1)}\n`;
}

function gampData({ cloth: _, squares, ...sections }: Gamp): NonNullable<PlanWritten['gamp']> {
  return {
    ...sections,
    squares: squares.map(({ kept: { code, recipe }, ...square }) => ({ ...square, code, recipe })),
  };
}

function warpData(warp: WarpPlan): PlanWritten['warps'][number] {
  const { pieces, ends, yarns, ...rest } = warp;
  const ofRun = <R extends { readonly yarn: number }>(runs: readonly R[]) =>
    runs.map((run) => ({ ...run, yarn: yarns[run.yarn]!.letter }));
  return {
    ...rest,
    // The width of the widest piece; each piece has its own.
    widthOnLoom: Math.max(...pieces.map(({ widthOnLoom }) => widthOnLoom)),
    yarns,
    winding: {
      ...warp.winding,
      chains: ofRun(warp.winding.chains),
      parts: warp.winding.parts.map((part) => ({ ...part, runs: ofRun(part.runs) })),
    },
    // Shafts and yarn of every end, from left to right, as on the sheets.
    threading: ends.map(({ shafts, yarn }) => `${shafts.join('+')}${yarns[yarn]!.letter}`).join(' '),
    threadingList: threadingLines(warp),
    threadingParts: threadingParts(warp),
    pieces: pieces.map((piece) => {
      const { cloth, draft, list, ...figuresOf } = piece;
      return {
        ...clothData(cloth),
        draft: storedDraft(draft),
        ...figuresOf,
        said: Object.fromEntries(figures(warp, piece)),
        pickList: pickSheet(piece),
        throws: list.map((thrown) => ({ ...thrown, shuttle: piece.shuttles[thrown.shuttle]!.name })),
      };
    }),
  };
}

function clothData({ draft: _, ...cloth }: KeptCloth): Omit<KeptCloth, 'draft'> {
  return cloth;
}
