import type { FloatLimit } from '../../score/model/float-limit.js';
import { type Part, partsOf, type Weights } from '../../score/parts/parts.js';
import { comparable, rankScore } from '../../score/rank/rank.js';
import type { Found } from '../../search/strategy/outcome.js';

/** A cloth with the score by which it is ranked. */
export interface Ranked {
  readonly found: Found;
  readonly score: number;
}

/** The parts of a cloth's score, each from 0 to 1; novelty is 0 if it was not measured. */
export function partsOfFound({ scores, ease, draft }: Found, floatLimit: FloatLimit): Readonly<Record<Part, number>> {
  const [ends, picks] = [draft.warp.length, draft.weft.length];
  return partsOf({ ...scores, novelty: scores.novelty ?? 0, ease, ends, picks, floatLimit, sett: draft.sett });
}

/** Ranks cloths again, best first, exactly as the command would: same parts, same score, same order of ties. */
export function ranked(found: readonly Found[], weights: Weights, floatLimit: FloatLimit): Ranked[] {
  return found
    .map((each) => ({ found: each, score: rankScore(partsOfFound(each, floatLimit), weights) }))
    .sort(
      (a, b) =>
        comparable(b.score) - comparable(a.score) || area(a) - area(b) || (a.found.code < b.found.code ? -1 : 1),
    );
}

function area({ found: { draft } }: Ranked): number {
  return draft.warp.length * draft.weft.length;
}
