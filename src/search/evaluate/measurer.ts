import type { Face, Woven } from '../../cloth/face.js';
import type { PairContrast } from '../../score/contrast/pair-contrast.js';
import { featuresOf, noveltyOf } from '../../score/likeness/novelty.js';
import { Eye } from '../../score/look/look.js';
import type { Contrast, Floats } from '../../score/model/figures.js';
import { figuresFor, ofEachLook } from '../../score/parts/look-figures.js';
import { PART, type Part } from '../../score/parts/parts.js';
import type { Measured } from '../../score/parts/records/score-part.js';
import { scorer } from '../../score/rank/rank.js';
import type { FaceAnalysis } from '../../score/symmetry/analysis.js';
import type { Question } from '../question/question.js';
import type { Ground } from './ground.js';
import { lookStages } from './look-stages.js';
import type { Reach } from './reach.js';

/** Parts that compare a cloth with the classic orders. */
export const NEAR_CLASSICS = ['novelty', 'newness'] as const;
/** Parts that are known before those of the look, which take longest. */
const SOON = ['figure', 'figured', ...NEAR_CLASSICS, 'balance'] as const;

/** The cloth to be measured, and what is known of it already. */
interface Known {
  readonly ground: Ground;
  readonly woven: Woven;
  readonly face: Face;
  readonly analysis: FaceAnalysis;
  readonly motif: Omit<Contrast, 'figure'>;
  readonly symmetry: number;
  readonly ease: Measured['ease'];
}

/**
 * Measures cloths that show a motif: the figures that the parts of a question's ranking are computed from. Returns the
 * score, or undefined once it falls short of the reach.
 */
export function measurer(question: Question, meter: PairContrast, values: Float64Array) {
  const { sett, limits, rank } = question;
  const needed = figuresFor(rank);
  const needsNovelty = needed.has('novelty');
  // Novelty compares figures too.
  const needsFigure = needsNovelty || needed.has('figure');
  const see = new Eye(sett, values, (woven) => meter.variance(woven));
  const measureLook = lookStages(needed);
  const soon = SOON.filter((part) => rank[part] > 0);
  const none: Floats = { warpFace: 0, warpBack: 0, weftFace: 0, weftBack: 0, longest: 0, longestMm: 0 };
  // One record for all cloths: making one for each takes as long as the contrast of a small cloth.
  const look = ofEachLook(() => 0);
  const measured = {
    ...{ contrast: 0, tone: 0, line: 0, darkShare: 0, figure: 0, symmetry: 0, novelty: 0, ends: 0, picks: 0 },
    ...{ floats: none, ease: { warpChanges: 0, weftChanges: 0, shuttles: 0 }, floatLimit: limits.float, sett },
    ...look,
  };
  const partOf = (part: Part): number => PART[part].of(measured);
  const scoreOf = scorer(rank);

  return (
    { ground, woven, face, analysis, motif, symmetry, ease }: Known,
    reach: Reach | undefined,
  ): number | undefined => {
    const figure = needsFigure ? meter.figure(woven) : 0;
    measured.contrast = motif.contrast;
    measured.tone = motif.tone;
    measured.line = motif.line;
    measured.darkShare = motif.darkShare;
    measured.figure = figure;
    measured.symmetry = symmetry;
    measured.novelty = needsNovelty ? noveltyOf(featuresOf(face, measured, symmetry), ground.classics).novelty : 0;
    measured.ends = face.ends;
    measured.picks = face.picks;
    measured.floats = ground.floats;
    measured.ease = ease;
    if (reach && soon.some((part) => reach.falls(part, partOf(part)))) return undefined;
    if (!measureLook(see.turnTo(woven, face, analysis), measured, reach)) return undefined;
    return scoreOf(partOf);
  };
}
