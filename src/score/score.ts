import { drawdown } from '../cloth/drawdown.js';
import { colourFace, type Face } from '../cloth/face.js';
import { floatsOf } from '../cloth/floats.js';
import { hangsTogether } from '../cloth/sound.js';
import { luminance, values } from '../colour/yarn.js';
import { type Draft, isSquareSett, type Sett, spacing, type Weave } from '../draft/draft.js';
import { codeOf } from './code.js';
import { contrastMeter } from './contrast.js';
import { readsOf, viewingLimits } from './distance.js';
import { easeOf, easePart } from './ease.js';
import type { Contrast, Ease, Floats, Scores, Symmetry } from './figures.js';
import { nearlyOf } from './nearly.js';
import { type Classic, classicsOn, noveltyOf, traitsOf } from './novelty.js';
import { type FloatLimit, floatPart, rankScore, type Weights } from './rank.js';
import { symmetryOf } from './symmetry.js';

/** How cloths are ranked. */
export interface Ranking {
  readonly weights: Weights;
  readonly floatLimit: FloatLimit;
  /** Classic orders on the same structure; needed only where novelty has weight. */
  readonly classics: readonly Classic[];
}

/** A draft with all that is said of it. */
export interface Scored {
  readonly scores: Scores;
  readonly ease: Ease;
  readonly hangsTogether: boolean;
  readonly code: string;
}

/** Every figure of a draft that holds one whole repeat. */
export function scoreDraft(draft: Draft, ranking: Ranking): Scored {
  const { across, along } = spacing(draft.sett);
  const cloth = drawdown(draft);
  const face = colourFace(cloth, draft.warp, draft.weft);
  const square = isSquareSett(draft.sett);
  const contrast = contrastMeter(across / along).measure(face, values(draft.yarns));
  const symmetry = symmetryOf(face, square);
  const nearly = nearlyOf(face, square, symmetry);
  const floats = floatsOf(cloth, draft.sett);
  const ease = easeOf(draft);
  const rank = scoreOf(face, contrast, symmetry, floats, ease, ranking, Math.max(across, along));
  const luminances = draft.yarns.map((yarn) => luminance(yarn.hex));
  return {
    scores: {
      score: rank,
      ...contrast,
      ...symmetry,
      ...(nearly && { nearly }),
      floats,
      reads: readsOf(face, luminances, across, along),
      ...viewingLimits(face.ends, across),
    },
    ease,
    hangsTogether: hangsTogether(cloth),
    code: codeOf(draft),
  };
}

/** The score by which a cloth is ranked, from its figures. */
export function scoreOf(
  face: Face,
  contrast: Contrast,
  symmetry: Pick<Symmetry, 'symmetry'>,
  floats: Pick<Floats, 'longest' | 'longestMm'>,
  ease: Pick<Ease, 'warpChanges' | 'weftChanges' | 'shuttles'>,
  ranking: Ranking,
  largerSpacing: number,
): number {
  const novel = ranking.weights.novelty > 0;
  return rankScore(
    {
      contrast: contrast.contrast,
      symmetry: symmetry.symmetry,
      float: floatPart(floats, ranking.floatLimit, largerSpacing),
      figure: contrast.figure,
      ease: easePart(ease, face.ends, face.picks),
      novelty: novel ? noveltyOf(traitsOf(face, contrast, symmetry.symmetry), ranking.classics).novelty : 0,
    },
    ranking.weights,
  );
}

/** The classic orders on a weave of this sett, measured as candidates are. */
export function measuredClassics(weave: Weave, sett: Sett): Classic[] {
  const { across, along } = spacing(sett);
  const meter = contrastMeter(across / along);
  const values = Float64Array.of(0, 1);
  const square = isSquareSett(sett);
  return classicsOn(weave, (face) => traitsOf(face, meter.measure(face, values), symmetryOf(face, square).symmetry));
}
