import { drawdown } from '../../cloth/drawdown.js';
import { colourFace } from '../../cloth/face.js';
import { values } from '../../colour/yarn.js';
import { spacing } from '../../draft/draft.js';
import { formatOrder } from '../../order/order.js';
import { type BlurredCloth, blurredCloth, nearTwins } from '../../score/likeness/near-twin.js';
import { nearestInWords, whyInWords } from '../../score/rank/why.js';
import { type Scored, scoreDraft } from '../../score/score.js';
import { classicsOf } from '../evaluate/classics-for.js';
import type { Question } from '../question/question.js';
import { draftOf, recipesOf } from '../space/candidate.js';
import type { Space } from '../space/space.js';
import type { Kept } from '../strategy/archive.js';
import type { Found } from '../strategy/outcome.js';
import { redrawOf } from './redraw.js';

/** Describes the cloths shown, best first: draft, figures, recipe, reasons. */
export function describeAll(
  question: Question,
  at: Space['at'],
  best: readonly Kept[],
  tell: (done: number) => void,
): Found[] {
  const { across, along } = spacing(question.sett);
  const value = values(question.yarns);
  const ways = {
    mirror: question.same.includes('mirror'),
    halfTurn: question.same.includes('half-turn'),
    exchange: question.same.includes('exchange') && question.yarns.length === 2,
  };
  const classicsFor = classicsOf(question);
  const shown: { readonly code: string; readonly cloth: BlurredCloth }[] = [];
  return best.map((kept, place): Found => {
    const candidate = at(kept.index);
    const { family, warp, weft, start } = candidate;
    const draft = draftOf(candidate, question);
    const classics = classicsFor(family);
    const scored = scoreDraft(draft, { weights: question.rank, floatLimit: question.limits.float, classics });
    const cloth = blurredCloth(colourFace(drawdown(draft), draft.warp, draft.weft), value, across / along);
    const twin = shown.find((better) => nearTwins(better.cloth, cloth, ways));
    shown.push({ code: scored.code, cloth });
    tell(place + 1);
    return {
      rank: place + 1,
      code: scored.code,
      ...recipesOf(candidate, question),
      why: whyHere(question, scored),
      structure: family.structure,
      redraw: redrawOf(candidate, question),
      draft,
      order: {
        warp: formatOrder(warp, question.yarns),
        weft: formatOrder(weft, question.yarns),
        by: family.by,
        fill: family.fill,
        times: family.times,
        start,
      },
      scores: scored.scores,
      ease: scored.ease,
      equals: kept.equals,
      nearTwin: twin?.code ?? null,
    };
  });
}

/** The reason for a cloth's place in the ranking, in one sentence without its full stop. */
function whyHere(question: Question, { parts, scores }: Scored): string {
  const nearest = nearestInWords(scores);
  return [whyInWords(parts, question.rank), ...(nearest === undefined ? [] : [nearest])].join('; ');
}
