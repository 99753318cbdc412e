import type { Draft } from '../../draft/draft.js';
import { PART_WORDS, type Part } from '../../score/parts/parts.js';
import { PRESETS } from '../../score/rank/presets.js';
import { type Scored, scoreDraft } from '../../score/score.js';
import { darkInWords, symmetryInWords } from '../../score/words/figure-words.js';
import { FLOAT_LIMITS } from '../warp/purpose.js';

/** Parts of a ranking in which cloths of one list are compared. Novelty is left out: it is relative to the weave. */
const TOLD: readonly Part[] = ['contrast', 'figure', 'symmetry', 'balance', 'solid', 'sharp', 'lively', 'calm', 'ease'];
const WEIGHTS = { ...PRESETS.clear, solid: 1, calm: 1, lively: 1 };
/** Shortest list in which places are named, and the share of a list that counts as the first places. */
const LEAST = 4;
const NAMED = 1 / 4;

/** What was measured, by draft: several papers of a plan show it. */
const known = new WeakMap<Draft, Scored>();

/** All figures of a cloth, with every part of a ranking that {@link highlights} compares. */
export function measured(draft: Draft): Scored {
  const scored =
    known.get(draft) ?? scoreDraft(draft, { weights: WEIGHTS, floatLimit: { mm: FLOAT_LIMITS.general }, classics: [] });
  known.set(draft, scored);
  return scored;
}

/**
 * The highlights of each cloth of a list, in a few words, the most important first: its best place in any part of a
 * ranking, if that is among the first; how dark it is; its symmetries. Cloths that tie take the lowest place they
 * share.
 *
 * @param cloths drafts with their figures
 */
export function highlights(cloths: readonly { readonly draft: Draft; readonly scored: Scored }[]): string[][] {
  return cloths.map(({ draft, scored }) => {
    const places = TOLD.map((part) => ({ part, place: placeOf(part, scored, cloths) }));
    const best = places.reduce((a, b) => (b.place < a.place ? b : a));
    const foremost =
      cloths.length >= LEAST && best.place <= Math.ceil(cloths.length * NAMED)
        ? [`${ordinal(best.place)} in ${PART_WORDS[best.part]}`]
        : [];
    const { operations, shiftExchange } = scored.scores;
    const carried = operations.length > 0 || shiftExchange ? symmetryInWords(scored.scores, draft) : [];
    return [...foremost, darkInWords(scored.scores), ...carried];
  });
}

function placeOf(part: Part, own: Scored, cloths: readonly { readonly scored: Scored }[]): number {
  return cloths.filter(({ scored }) => scored.parts[part] >= own.parts[part] - 1e-9).length;
}

/** `1st`, `2nd`, `3rd`, `4th`, … */
function ordinal(place: number): string {
  const teen = place % 100 >= 11 && place % 100 <= 13;
  return `${place}${teen ? 'th' : (['th', 'st', 'nd', 'rd'][place % 10] ?? 'th')}`;
}
