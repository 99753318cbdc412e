import { drawdown } from '../cloth/drawdown.js';
import { faceMaker, woven } from '../cloth/face.js';
import { floatsOf } from '../cloth/floats.js';
import { holdsTogether } from '../cloth/holds-together.js';
import { luminance, values } from '../colour/yarn.js';
import { type Draft, isSquareSett, type Sett, spacing, type Weave } from '../draft/draft.js';
import { contrastMeter } from './contrast/contrast.js';
import { readsOf, viewingLimits } from './contrast/viewing-distance.js';
import { easeOf } from './ease.js';
import { type Classic, classicsOn, featuresOf, noveltyOf } from './likeness/novelty.js';
import { Eye } from './look/look.js';
import type { Ease } from './model/figures.js';
import type { FloatLimit } from './model/float-limit.js';
import { lookOf } from './parts/look-figures.js';
import { type Part, partsOf, type Weights } from './parts/parts.js';
import type { Scores } from './parts/scores.js';
import { rankScore } from './rank/rank.js';
import { analyse, analyser } from './symmetry/analysis.js';
import { codeOf } from './symmetry/cloth-code.js';
import { nearlyOf } from './symmetry/near-symmetry.js';
import { symmetryOf, symmetryShare } from './symmetry/symmetry.js';

/** The weights and limits of a ranking, with the classics that novelty needs. */
interface Ranking {
  readonly weights: Weights;
  readonly floatLimit: FloatLimit;
  /**
   * Classic orders on the same structure; empty if neither novelty nor newness has weight and no text names them
   * of it.
   */
  readonly classics: readonly Classic[];
}

/** A draft with all its figures. */
export interface Scored {
  readonly scores: Scores;
  readonly parts: Readonly<Record<Part, number>>;
  readonly ease: Ease;
  readonly holdsTogether: boolean;
  readonly code: string;
}

/** Every figure of a draft that holds one whole repeat. */
export function scoreDraft(draft: Draft, ranking: Ranking): Scored {
  const { across, along } = spacing(draft.sett);
  const cloth = drawdown(draft);
  const laid = woven(cloth, draft.warp, draft.weft);
  const face = faceMaker()(laid);
  const square = isSquareSett(draft.sett);
  const value = values(draft.yarns);
  const meter = contrastMeter(across / along);
  const contrast = meter.measure(face, value);
  const analysis = analyse(face);
  const symmetry = symmetryOf(face, square, analysis);
  const nearly = nearlyOf(face, square, symmetry);
  const floats = floatsOf(cloth, draft.sett);
  const ease = easeOf(draft);
  const { ends, picks } = face;
  const eye = new Eye(draft.sett, value, () => meter.variance(face, value));
  const look = lookOf(eye.turnTo(laid, face, analysis));
  const nearest =
    ranking.classics.length === 0
      ? undefined
      : noveltyOf(featuresOf(face, contrast, symmetry.symmetry), ranking.classics);
  const novelty = nearest?.novelty ?? 0;
  const { floatLimit } = ranking;
  const figures = { ...contrast, ...look, symmetry: symmetry.symmetry, novelty, floats, ease };
  const parts = partsOf({ ...figures, ends, picks, floatLimit, sett: draft.sett });
  const luminances = draft.yarns.map((yarn) => luminance(yarn.hex));
  return {
    scores: {
      score: rankScore(parts, ranking.weights),
      ...contrast,
      ...look,
      ...symmetry,
      ...(nearly && { nearly }),
      ...nearest,
      floats,
      reads: readsOf(face, luminances, across, along),
      ...viewingLimits(face.ends, across),
    },
    parts,
    ease,
    holdsTogether: holdsTogether(cloth),
    code: codeOf(draft),
  };
}

/** The classic orders on a weave of this sett, measured as candidates are. */
export function measuredClassics(weave: Weave, sett: Sett): Classic[] {
  const { across, along } = spacing(sett);
  const meter = contrastMeter(across / along);
  const values = Float64Array.of(0, 1);
  const square = isSquareSett(sett);
  const analyse = analyser();
  return classicsOn(weave, (face) =>
    featuresOf(face, meter.measure(face, values), symmetryShare(analyse(face), square)),
  );
}
