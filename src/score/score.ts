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
import { patchVariety } from './patches.js';
import { type FloatLimit, floatPart, type Part, rankScore, type Weights } from './rank.js';
import { solidShare } from './solid.js';
import { symmetryOf } from './symmetry.js';

/** How cloths are ranked. */
export interface Ranking {
  readonly weights: Weights;
  readonly floatLimit: FloatLimit;
  /** Classic orders on the same structure; none where novelty has no weight and nothing is to be said of it. */
  readonly classics: readonly Classic[];
}

/** A draft with all that is said of it. */
export interface Scored {
  readonly scores: Scores;
  /** What was weighed; 0 for what has no weight. */
  readonly parts: Readonly<Record<Part, number>>;
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
  const value = values(draft.yarns);
  const contrast = contrastMeter(across / along).measure(face, value);
  const symmetry = symmetryOf(face, square);
  const nearly = nearlyOf(face, square, symmetry);
  const floats = floatsOf(cloth, draft.sett);
  const ease = easeOf(draft);
  const parts = partsOf({ face, contrast, symmetry, floats, ease }, { ...ranking, values: value, sett: draft.sett });
  const luminances = draft.yarns.map((yarn) => luminance(yarn.hex));
  return {
    scores: {
      score: rankScore(parts, ranking.weights),
      ...contrast,
      ...symmetry,
      ...(nearly && { nearly }),
      ...(ranking.classics.length > 0 && noveltyOf(traitsOf(face, contrast, symmetry.symmetry), ranking.classics)),
      floats,
      reads: readsOf(face, luminances, across, along),
      ...viewingLimits(face.ends, across),
    },
    parts,
    ease,
    hangsTogether: hangsTogether(cloth),
    code: codeOf(draft),
  };
}

/** What the parts of a ranking are found from. */
export interface Measured {
  readonly face: Face;
  readonly contrast: Contrast;
  readonly symmetry: Pick<Symmetry, 'symmetry'>;
  readonly floats: Pick<Floats, 'longest' | 'longestMm'>;
  readonly ease: Pick<Ease, 'warpChanges' | 'weftChanges' | 'shuttles'>;
}

/** What is the same for all cloths of one ranking. */
export interface Scale extends Ranking {
  /** 0 (dark) to 1 (light) of each palette index. */
  readonly values: ArrayLike<number>;
  readonly sett: Sett;
}

/** The parts that have weight in a ranking, each from 0 to 1; 0 for those that have none, which are not measured. */
export function partsOf({ face, contrast, symmetry, floats, ease }: Measured, scale: Scale): Record<Part, number> {
  const { weights, classics, values } = scale;
  const { across, along } = spacing(scale.sett);
  const weighed = (part: Part, say: () => number): number => (weights[part] > 0 ? say() : 0);
  const variety = weights.calm > 0 || weights.lively > 0 ? patchVariety(face, values) : 0;
  return {
    contrast: contrast.contrast,
    symmetry: symmetry.symmetry,
    float: floatPart(floats, scale.floatLimit, Math.max(across, along)),
    figure: contrast.figure,
    ease: easePart(ease, face.ends, face.picks),
    novelty: weighed('novelty', () => noveltyOf(traitsOf(face, contrast, symmetry.symmetry), classics).novelty),
    balance: 1 - Math.abs(2 * contrast.darkShare - 1),
    solid: weighed('solid', () => solidShare(face, values, across / along)),
    calm: weighed('calm', () => 1 - variety),
    lively: variety,
  };
}

/** The classic orders on a weave of this sett, measured as candidates are. */
export function measuredClassics(weave: Weave, sett: Sett): Classic[] {
  const { across, along } = spacing(sett);
  const meter = contrastMeter(across / along);
  const values = Float64Array.of(0, 1);
  const square = isSquareSett(sett);
  return classicsOn(weave, (face) => traitsOf(face, meter.measure(face, values), symmetryOf(face, square).symmetry));
}
