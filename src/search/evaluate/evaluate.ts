import { type Face, faceMaker } from '../../cloth/face.js';
import { values } from '../../colour/yarn.js';
import { isSquareSett, spacing } from '../../draft/draft.js';
import { PairContrast } from '../../score/contrast/pair-contrast.js';
import { type Classic, featuresOf } from '../../score/likeness/novelty.js';
import { PART } from '../../score/parts/parts.js';
import { shortness } from '../../score/parts/records/float-part.js';
import { comparable, nearerFloats } from '../../score/rank/rank.js';
import { analyser, type FaceAnalysis } from '../../score/symmetry/analysis.js';
import { clothKeys } from '../../score/symmetry/canonical-cloth.js';
import { symmetryShare } from '../../score/symmetry/symmetry.js';
import { leastContrast, type Question } from '../question/question.js';
import type { Candidate } from '../space/candidate.js';
import type { Family } from '../space/family.js';
import { type Batch, BatchBuilder } from './batch.js';
import { groundsOf } from './ground.js';
import { measurer, NEAR_CLASSICS } from './measurer.js';
import { darkerOfTwo, nicheOf } from './niche.js';
import { NoveltyMost } from './novelty-most.js';
import { type Aims, type Foreseen, type Given, Reach } from './reach.js';
import { isBeyond, type Refused } from './weave-limits.js';

/** Takes candidates one by one, so that no list of them is held. */
interface Scoring {
  take(given: Given<Candidate>): void;
  /** What was scored; `cutOff` counts those that proved not to reach the score. */
  done(): Batch & { readonly cutOff: number };
}

/** Scores the candidates of one question; keeps what many of them share. */
interface Evaluator {
  /** Scores candidates. With scores to reach, those that prove not to reach theirs are not measured to the end. */
  scoring(aims?: Aims): Scoring;
  /** Scores all of some candidates to the end. */
  evaluate(candidates: Iterable<Given<Candidate>>): ReturnType<Scoring['done']>;
  /** The verdict on all candidates of a family whose weave does not depend on the orders. */
  verdict(family: Family): Refused | Shared;
}

/** What all candidates of a family share. */
export interface Shared {
  readonly floatPart: number;
  readonly classics: readonly Classic[];
}

/** Makes the evaluator of a question. */
export function evaluator(question: Question): Evaluator {
  const { across, along } = spacing(question.sett);
  const { limits, rank, same, yarns } = question;
  const value = values(yarns);
  const meter = new PairContrast(across / along, value);
  const square = isSquareSett(question.sett);
  const measure = measurer(question, meter, value);
  const least = leastContrast(question);
  const groundOf = groundsOf(question);
  const faceOf = faceMaker();
  const analyse = analyser();
  const keyOf = clothKeys(same, yarns.length);

  /** Scores one candidate into the batch, or counts why it is set aside; false if it falls short of the reach. */
  const judge = (
    batch: BatchBuilder,
    given: Given<Candidate>,
    { aims, reach }: { readonly aims?: Aims; readonly reach?: Reach },
  ): boolean => {
    const [index, candidate, foreseen] = given;
    const ground = groundOf(candidate.family, candidate.warp, candidate.weft);
    if ('fault' in ground) {
      batch.setAside[ground.fault]++;
      if (ground.fault === 'float') {
        batch.nearestFloats = nearerFloats(batch.nearestFloats, ground.floats, limits.float);
      }
      return true;
    }
    const ends = ground.ends(candidate.warp, candidate.start[0]);
    const picks = ground.picks(candidate.weft, candidate.start[1]);
    const ease = { warpChanges: ends.changes, weftChanges: picks.changes, shuttles: picks.shuttles };
    if (isBeyond(question, Math.max(ends.kind.length, picks.kind.length), ease)) {
      batch.setAside.limits++;
      return true;
    }
    const woven = { cloth: ground.cloth, ends, picks };
    const motif = meter.motif(woven);
    reach?.begin(foreseen);
    // What is flat is counted as such unless it falls for its symmetry first.
    if (reach && motif.contrast >= least && motif.contrast > 0 && reach.falls('contrast', motif.contrast)) return false;
    const face = faceOf(woven);
    const analysis = analyse(face);
    const symmetry = symmetryShare(analysis, square);
    const niche = nicheIn(question, motif.darkShare, symmetry, analysis, value);
    if (reach?.falls('symmetry', symmetry, aims!.of(niche))) return false;
    if (reach && isTooKnown(reach, foreseen, face, symmetry, ground.classics)) return false;
    if (motif.contrast < least || isOneColour(face)) {
      batch.setAside.flat++;
      return true;
    }
    const score = measure({ ground, woven, face, analysis, motif, symmetry, ease }, reach);
    if (score === undefined) return false;
    aims?.found(niche, score);
    batch.add({
      index,
      score: comparable(score),
      area: face.ends * face.picks,
      preference: [ground.floats.longest!, ease.warpChanges, ease.shuttles, ease.weftChanges],
      niche,
      key: keyOf(analysis),
    });
    return true;
  };

  const scoring: Evaluator['scoring'] = (aims) => {
    const batch = new BatchBuilder();
    const held = aims ? { aims, reach: new Reach(rank) } : {};
    let cutOff = 0;
    return {
      take(given) {
        if (!judge(batch, given, held)) cutOff++;
      },
      done: () => ({ ...batch.done(), cutOff }),
    };
  };

  return {
    scoring,
    evaluate(candidates) {
      const scored = scoring();
      for (const given of candidates) scored.take(given);
      return scored.done();
    },
    verdict(family) {
      const ground = groundOf(family, [0], [0]);
      if ('fault' in ground) return ground;
      return {
        floatPart: shortness(ground.floats, limits.float, Math.max(across, along)),
        classics: ground.classics,
      };
    },
  };
}

/** Place of line contrast among the features. */
const LINE = 1;

/** Whether a face shows one yarn alone: that is no texture, however fine. */
function isOneColour({ colour, rowKinds, columnKinds }: Face): boolean {
  for (let at = 1; at < rowKinds * columnKinds; at++) if (colour[at] !== colour[0]) return false;
  return true;
}

/** Whether a face is so near to a classic order, whatever its lines are, that it falls short of the reach. */
function isTooKnown(
  reach: Reach,
  foreseen: Foreseen | undefined,
  face: Face,
  symmetry: number,
  classics: readonly Classic[],
): boolean {
  const figures = foreseen?.figures;
  if (figures === undefined || classics.length === 0) return false;
  const least = featuresOf(face, { ...figures, line: figures.line[0] }, symmetry);
  const traits = least.with(LINE, figures.line[1]);
  const noveltyMost = NoveltyMost.beside(classics);
  noveltyMost.take(least, traits);
  const most = { novelty: noveltyMost.with(symmetry) };
  return NEAR_CLASSICS.some((part) => reach.falls(part, PART[part].of(most as never)));
}

/** The niche of a cloth. Where dark and light may change places, that is of the share of the rarer of the two. */
function nicheIn(
  { same }: Question,
  darkShare: number,
  symmetry: number,
  { columns, rows, shown, low, high }: FaceAnalysis,
  value: Float64Array,
): number {
  const exchange = same.includes('exchange') && shown === 2;
  const dark = exchange ? darkerOfTwo(darkShare, value[low]!, value[high]!) : darkShare;
  return nicheOf({ ends: columns.length, picks: rows.length, darkShare: dark, symmetry }, exchange);
}
