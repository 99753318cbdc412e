import type { Draft } from '../../draft/draft.js';
import { spacing } from '../../draft/draft.js';
import { thicknesses } from '../../render/strands.js';
import { fixed } from '../../words/measure.js';
import type { PlanOptions } from '../options/plan-options.js';
import { picksIn, WEFT_EXTRA, type YarnAmount, yarnAmount } from '../yarn/yarn-amounts.js';
import type { YarnSize } from '../yarn/yarn-size.js';
import type { PiecePlan } from './piece-plan.js';
import type { WarpPlan } from './warp-plan.js';

/**
 * Yarn for the warp, the pieces and what is woven between them, of each yarn that is used. A pattern weft is reckoned by
 * its own size, and apart from other threads of its yarn.
 */
export function yarnNeeded(
  draft: Draft,
  pieces: readonly PiecePlan[],
  wound: WarpPlan['wound'],
  length: WarpPlan['length'],
  width: number,
): YarnAmount[] {
  const woven = pieces.reduce(
    (sum, each) => sum + each.picks * each.pieces * (draft.sett.picks / each.draft.sett.picks),
    0,
  );
  const between = picksIn(length.offLoom, 1 / spacing(draft.sett).along) - woven;
  const yarn = draft.yarns.flatMap((own, index): YarnAmount[] => {
    const ofWarp = (wound.find(({ letter }) => letter === own.letter)?.ends ?? 0) * length.wind;
    // Headers, dividers and what rounding leaves are woven with the weft that comes first.
    const ofRest = pieces[0]!.draft.weft[0] === index ? Math.max(0, between) * width * (1 + WEFT_EXTRA) : 0;
    const weft = (pattern: boolean): number =>
      pieces.reduce((sum, piece) => sum + piece.pieces * weftOf(piece, index, pattern), 0);
    const plain = yarnAmount(own.letter, ofWarp, weft(false) + ofRest, own.tex);
    const tex = patternTex(pieces, index);
    return [plain, yarnAmount(own.letter, 0, weft(true), tex, tex === own.tex ? undefined : 'pattern weft')];
  });
  return merged(yarn).filter((amount) => amount.total > 0);
}

/** A draft whose pattern weft has a size of its own. */
export function patternSized(draft: Draft, size: YarnSize | undefined): Draft {
  const tex = draft.warp.map((yarn) => draft.yarns[yarn]!.tex);
  if (size === undefined || !draft.pickKinds.includes('pattern') || tex.includes(undefined)) return draft;
  const diameter = tex.reduce<number>((sum, each) => sum + Math.sqrt(each!), 0) / tex.length;
  const pattern = (draft.widths.warp * Math.sqrt(size.tex)) / diameter;
  const elsewhere = new Set([...draft.warp, ...draft.weft.filter((_, j) => draft.pickKinds[j] !== 'pattern')]);
  const yarns = draft.yarns.map((yarn, at) => (elsewhere.has(at) ? yarn : { ...yarn, tex: size.tex }));
  return { ...draft, yarns, widths: { ...draft.widths, pattern } };
}

/** What is assumed of a pattern weft without a size of its own. */
export function patternCautions(pieces: readonly PiecePlan[], { yarns }: PlanOptions): string[] {
  const [piece] = pieces;
  const { widths, pickKinds, weft, yarns: own } = piece!.draft;
  const at = pickKinds.indexOf('pattern');
  if (at < 0 || yarns.pattern !== undefined || Object.keys(yarns).length === 0) return [];
  const tex = patternTex(pieces, weft[at]!);
  if (tex === undefined || tex === own[weft[at]!]!.tex) return [];
  const times = fixed(widths.pattern / widths.warp, 1);
  return [
    `The pattern weft is taken to be ${times} times as thick as the warp, as it is drawn; give its size as “pattern 4/2 cotton”.`,
  ];
}

/** Grams per 1000 m of a yarn as pattern weft, as thick as it is drawn; its own where it is no pattern weft. */
function patternTex(pieces: readonly PiecePlan[], yarn: number): number | undefined {
  for (const { draft } of pieces) {
    const at = draft.weft.findIndex((own, j) => own === yarn && draft.pickKinds[j] === 'pattern');
    const known = [...draft.warp, ...draft.weft].every((each) => draft.yarns[each]!.tex !== undefined);
    if (at >= 0 && known) return thicknesses(draft).picks[at]! ** 2;
  }
  return pieces[0]!.draft.yarns[yarn]!.tex;
}

/** Amounts of one letter and one use together. */
function merged(amounts: readonly YarnAmount[]): YarnAmount[] {
  const all = new Map<string, YarnAmount>();
  for (const { letter, use, tex, warp, weft } of amounts) {
    const same = all.get(`${letter} ${use}`) ?? { warp: 0, weft: 0 };
    all.set(`${letter} ${use}`, yarnAmount(letter, same.warp + warp, same.weft + weft, tex ?? undefined, use));
  }
  return [...all.values()];
}

/** Millimetres of one yarn in the pattern wefts, or in the other wefts, of one piece. */
function weftOf(piece: PiecePlan, yarn: number, pattern: boolean): number {
  const shuttles = piece.shuttles.filter(
    (shuttle) => shuttle.yarn === yarn && (shuttle.kind === 'pattern') === pattern,
  );
  return shuttles.reduce((sum, shuttle) => sum + shuttle.weft, 0);
}
