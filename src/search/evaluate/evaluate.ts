import type { Drawdown } from '../../cloth/drawdown.js';
import { colourFace } from '../../cloth/face.js';
import type { Floats } from '../../cloth/floats.js';
import { values } from '../../colour/yarn.js';
import { isSquareSett, spacing, type Weave } from '../../draft/draft.js';
import { shuttleCount } from '../../draft/shuttles.js';
import {
  colours,
  endStrands,
  type Layout,
  layout,
  pickStrands,
  threadingPeriod,
  treadlingPeriod,
} from '../../order/lay.js';
import { lcm } from '../../order/necklace.js';
import { type Order, smallestPeriod } from '../../order/order.js';
import { Problem } from '../../problem.js';
import { contrastMeter, FLAT } from '../../score/contrast/contrast.js';
import { changes } from '../../score/ease.js';
import { type Classic, featuresOf, noveltyOf } from '../../score/likeness/novelty.js';
import { eye } from '../../score/look/look.js';
import { type StructureAlone, structureAlone } from '../../score/look/structure-likeness.js';
import { figuresFor, lookOf } from '../../score/parts/look-figures.js';
import { partsOf } from '../../score/parts/parts.js';
import { shortness } from '../../score/parts/records/float-part.js';
import { asksNovelty, comparable, nearerFloats, rankScore } from '../../score/rank/rank.js';
import { analyse } from '../../score/symmetry/analysis.js';
import { clothKey } from '../../score/symmetry/canonical-cloth.js';
import { symmetryOf } from '../../score/symmetry/symmetry.js';
import type { Question } from '../question/question.js';
import type { Candidate } from '../space/candidate.js';
import { type Family, layingOf } from '../space/family.js';
import { memoized } from '../space/memoize.js';
import { type Batch, BatchBuilder } from './batch.js';
import { classicsOf } from './classics-for.js';
import { nicheOf } from './niche.js';
import { type Refused, weaveWithin } from './weave-limits.js';

/** Most families whose weaves are cached: candidates come family by family, and a question may have thousands. */
const REMEMBERED = 400;

/** Values that all candidates on one weave share, computed once. */
interface Ground {
  readonly weave: Weave;
  readonly cloth: Drawdown;
  readonly floats: Floats;
  readonly endPeriod: number;
  readonly pickPeriod: number;
  readonly classics: readonly Classic[];
  /** The look of the weave without colours, computed on first use. */
  alone: StructureAlone | undefined;
  readonly layouts: Map<string, Layout>;
}

/** Scores the candidates of one question; keeps what many of them share. */
interface Evaluator {
  /** Scores candidates, each with its number. */
  evaluate(candidates: readonly (readonly [number, Candidate])[]): Batch;
  /** The verdict on all candidates of a family whose weave does not depend on the orders. */
  verdict(family: Family): Refused | { readonly floatPart: number };
}

/** Makes the evaluator of a question. */
export function evaluator(question: Question): Evaluator {
  const { across, along } = spacing(question.sett);
  const square = isSquareSett(question.sett);
  const meter = contrastMeter(across / along);
  const value = values(question.yarns);
  const needed = figuresFor(question.rank);
  const needsNovelty = needed.has('novelty');
  // Novelty compares figures too.
  const needsFigure = needsNovelty || needed.has('figure');
  const classicsFor = classicsOf(question);
  const { limits, rank, same, yarns, tabby } = question;
  const see = eye(question.sett);

  const groundIn = (family: Family, warp: Order, weft: Order): Ground | Refused =>
    groundFor(question, family, warp, weft, classicsFor);
  const fixedGround = memoized(REMEMBERED, groundIn);
  const groundOf: typeof groundIn = (family, ...orders) =>
    family.fixedWeave ? fixedGround(family, ...orders) : groundIn(family, ...orders);

  const laid = (ground: Ground, family: Family, asked: Order, start: number, system: 'ends' | 'picks'): Uint8Array => {
    const order = family.laid(asked, system, ground.weave);
    const sign = `${system}${order.length}/${start}`;
    let plan = ground.layouts.get(sign);
    if (plan === undefined) {
      const strands = system === 'picks' ? pickStrands(ground.weave) : endStrands(ground.weave);
      plan = layout(strands, order.length, layingOf(family, start));
      ground.layouts.set(sign, plan);
    }
    return colours(plan, order, yarns.length, tabby);
  };

  /** Scores one candidate into the batch, or counts why it is set aside. */
  const judge = (batch: BatchBuilder, index: number, candidate: Candidate): void => {
    const ground = groundOf(candidate.family, candidate.warp, candidate.weft);
    if ('fault' in ground) {
      batch.setAside[ground.fault]++;
      if (ground.fault === 'float') {
        batch.nearestFloats = nearerFloats(batch.nearestFloats, ground.floats, limits.float);
      }
      return;
    }
    const warp = repeated(laid(ground, candidate.family, candidate.warp, candidate.start[0], 'ends'), ground.endPeriod);
    const weft = repeated(
      laid(ground, candidate.family, candidate.weft, candidate.start[1], 'picks'),
      ground.pickPeriod,
    );
    const ease = {
      warpChanges: changes(warp),
      weftChanges: changes(weft),
      shuttles: shuttleCount(ground.weave.pickKinds, weft),
    };
    if (
      Math.max(warp.length, weft.length) > limits.repeat ||
      ease.warpChanges > (limits.warpChanges ?? Infinity) ||
      ease.weftChanges > (limits.weftChanges ?? Infinity) ||
      ease.shuttles > Math.min(limits.shuttles ?? Infinity, question.loom?.shuttles ?? Infinity)
    ) {
      batch.setAside.limits++;
      return;
    }
    const face = colourFace(ground.cloth, warp, weft);
    const motif = meter.motif(face, value);
    if (motif.contrast < FLAT) {
      batch.setAside.flat++;
      return;
    }
    const contrast = { ...motif, figure: needsFigure ? meter.figure(face, value) : 0 };
    const analysis = analyse(face);
    const symmetry = symmetryOf(face, square, analysis);
    const { floats, classics } = ground;
    const alone = (): StructureAlone => {
      ground.alone ??= structureAlone(ground.cloth, across / along);
      return ground.alone;
    };
    const novelty = needsNovelty ? noveltyOf(featuresOf(face, contrast, symmetry.symmetry), classics).novelty : 0;
    const parts = partsOf({
      ...contrast,
      ...lookOf(see(face, value, alone), needed),
      symmetry: symmetry.symmetry,
      novelty,
      floats,
      ease,
      ends: face.ends,
      picks: face.picks,
      floatLimit: limits.float,
      sett: question.sett,
    });
    const smallest = { ends: analysis.columns.length, picks: analysis.rows.length };
    const exchange = same.includes('exchange') && analysis.shown === 2;
    const darkShare = exchange
      ? darkerOfTwo(motif.darkShare, value[analysis.low]!, value[analysis.high]!)
      : motif.darkShare;
    const niche = nicheOf({ ...smallest, darkShare, symmetry: symmetry.symmetry }, exchange);
    batch.add({
      index,
      score: comparable(rankScore(parts, rank)),
      area: warp.length * weft.length,
      preference: [ground.floats.longest!, ease.warpChanges, ease.shuttles, ease.weftChanges],
      niche,
      key: clothKey(face, same, yarns.length, analysis),
    });
  };

  const evaluate: Evaluator['evaluate'] = (candidates) => {
    const batch = new BatchBuilder(candidates.length);
    for (const [index, candidate] of candidates) judge(batch, index, candidate);
    return batch.done();
  };

  const verdict: Evaluator['verdict'] = (family) => {
    const ground = groundOf(family, [0], [0]);
    if ('fault' in ground) return ground;
    return { floatPart: shortness(ground.floats, limits.float, Math.max(across, along)) };
  };

  return { evaluate, verdict };
}

function groundFor(
  question: Question,
  family: Family,
  warp: Order,
  weft: Order,
  classicsFor: ReturnType<typeof classicsOf>,
): Ground | Refused {
  let weave: Weave;
  try {
    weave = family.weave(warp, weft);
  } catch (problem) {
    // Orders may choose blocks that cannot be neighbours (huck); the question is not at fault.
    if (problem instanceof Problem && !family.fixedWeave) return { fault: 'limits' };
    throw problem;
  }
  const within = weaveWithin(question, weave);
  if ('fault' in within) return within;
  return {
    weave,
    ...within,
    endPeriod: threadingPeriod(weave),
    pickPeriod: treadlingPeriod(weave),
    classics: asksNovelty(question.rank) ? classicsFor(family) : [],
    alone: undefined,
    layouts: new Map(),
  };
}

/** Extends the colours to the length after which weave and colours both begin again. */
function repeated(colours: Uint8Array, weavePeriod: number): Uint8Array {
  const length = lcm(weavePeriod, smallestPeriod(colours));
  const whole = new Uint8Array(length);
  for (let s = 0, from = 0; s < length; s++) {
    whole[s] = colours[from]!;
    if (++from === colours.length) from = 0;
  }
  return whole;
}

/**
 * The share of the darker colour in a face of two colours, computed from the dark share and the values of the colours.
 */
function darkerOfTwo(darkShare: number, a: number, b: number): number {
  const light = Math.max(a, b);
  return (darkShare - (1 - light)) / (light - Math.min(a, b));
}
