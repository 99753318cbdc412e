import { type Drawdown, drawdown } from '../cloth/drawdown.js';
import { colourFace } from '../cloth/face.js';
import { type Floats, floatsOf } from '../cloth/floats.js';
import { hangsTogether } from '../cloth/sound.js';
import { values } from '../colour/yarn.js';
import { isSquareSett, spacing, type Weave } from '../draft/draft.js';
import {
  colours,
  endStrands,
  type Layout,
  layout,
  pickStrands,
  threadingPeriod,
  treadlingPeriod,
} from '../order/lay.js';
import { lcm } from '../order/necklace.js';
import { type Order, smallestPeriod } from '../order/order.js';
import { clothKey } from '../score/clothkey.js';
import { contrastMeter } from '../score/contrast.js';
import { changes } from '../score/ease.js';
import type { Classic } from '../score/novelty.js';
import { comparable, exceedsFloat } from '../score/rank.js';
import { measuredClassics, scoreOf } from '../score/score.js';
import { symmetryOf } from '../score/symmetry.js';
import type { Batch } from './batch.js';
import { BatchBuilder } from './batch.js';
import type { Candidate } from './candidate.js';
import { type Family, layingOf } from './family.js';
import type { Question } from './question.js';

/** A face with less contrast than this is flat. */
const FLAT = 0.05;

/** What is the same for all candidates on one weave, computed once. */
interface Ground {
  readonly weave: Weave;
  readonly cloth: Drawdown;
  readonly floats: Floats;
  /** Why no candidate on this weave may be shown. */
  readonly fault?: 'float' | 'unsound' | 'limits';
  readonly endPeriod: number;
  readonly pickPeriod: number;
  readonly classics: readonly Classic[];
  readonly layouts: Map<string, Layout>;
}

/** Scores candidates of one question; keeps what many of them share. */
export function evaluator(
  question: Question,
): (candidates: Iterable<readonly [number, Candidate]>, room: number) => Batch {
  const { across, along } = spacing(question.sett);
  const square = isSquareSett(question.sett);
  const meter = contrastMeter(across / along);
  const value = values(question.yarns);
  const needsFigure = question.rank.figure > 0 || question.rank.novelty > 0;
  const grounds = new Map<Family, Ground>();
  const { limits, rank, same, yarns, tabby } = question;

  const groundOf = ({ family, warp, weft }: Candidate): Ground => {
    let ground = grounds.get(family);
    if (ground === undefined || !family.fixedWeave) {
      ground = groundFor(question, family.weave(warp, weft));
      grounds.set(family, ground);
    }
    return ground;
  };

  const laid = (ground: Ground, family: Family, order: Order, start: number, picks: boolean): Uint8Array => {
    const sign = `${picks ? 'f' : 'w'}${order.length}/${start}`;
    let plan = ground.layouts.get(sign);
    if (plan === undefined) {
      const strands = picks ? pickStrands(ground.weave) : endStrands(ground.weave);
      plan = layout(strands, order.length, layingOf(family, start));
      ground.layouts.set(sign, plan);
    }
    return colours(plan, order, yarns.length, tabby);
  };

  return (candidates, room) => {
    const batch = new BatchBuilder(room);
    for (const [index, candidate] of candidates) {
      const ground = groundOf(candidate);
      if (ground.fault) {
        batch.setAside[ground.fault]++;
        continue;
      }
      const warp = repeated(
        laid(ground, candidate.family, candidate.warp, candidate.start[0], false),
        ground.endPeriod,
      );
      const weft = repeated(
        laid(ground, candidate.family, candidate.weft, candidate.start[1], true),
        ground.pickPeriod,
      );
      const ease = {
        warpChanges: changes(warp),
        weftChanges: changes(weft),
        shuttles: shuttlesOf(ground.weave, weft),
      };
      if (
        Math.max(warp.length, weft.length) > limits.repeat ||
        ease.warpChanges > (limits.warpChanges ?? Infinity) ||
        ease.weftChanges > (limits.weftChanges ?? Infinity) ||
        ease.shuttles > (limits.shuttles ?? Infinity)
      ) {
        batch.setAside.limits++;
        continue;
      }
      const face = colourFace(ground.cloth, warp, weft);
      const motif = meter.motif(face, value);
      if (motif.contrast < FLAT) {
        batch.setAside.flat++;
        continue;
      }
      const contrast = { ...motif, figure: needsFigure ? meter.figure(face, value) : 0 };
      const symmetry = symmetryOf(face, square);
      const ranking = { weights: rank, floatLimit: limits.float, classics: ground.classics };
      const score = scoreOf(face, contrast, symmetry, ground.floats, ease, ranking, Math.max(across, along));
      const preference = [ground.floats.longest!, ease.warpChanges, ease.shuttles, ease.weftChanges];
      batch.add(index, comparable(score), warp.length * weft.length, preference, clothKey(face, same, yarns.length));
    }
    return batch.done();
  };
}

function groundFor(question: Question, weave: Weave): Ground {
  const { limits, sett } = question;
  const cloth = drawdown(weave);
  const floats = floatsOf(cloth, sett);
  const treadles = new Set(weave.treadling.flat()).size;
  const shafts = new Set(weave.threading.flat()).size;
  const fault = !hangsTogether(cloth)
    ? 'unsound'
    : exceedsFloat(floats, limits.float)
      ? 'float'
      : treadles > (limits.treadles ?? Infinity) || shafts > (limits.shafts ?? Infinity)
        ? 'limits'
        : undefined;
  return {
    weave,
    cloth,
    floats,
    ...(fault && { fault }),
    endPeriod: threadingPeriod(weave),
    pickPeriod: treadlingPeriod(weave),
    classics: question.rank.novelty > 0 && fault === undefined ? measuredClassics(weave, sett) : [],
    layouts: new Map(),
  };
}

/** The colours brought to the length after which weave and colours both begin again. */
function repeated(colours: Uint8Array, weavePeriod: number): Uint8Array {
  const length = lcm(weavePeriod, smallestPeriod(colours));
  const whole = new Uint8Array(length);
  for (let s = 0, from = 0; s < length; s++) {
    whole[s] = colours[from]!;
    if (++from === colours.length) from = 0;
  }
  return whole;
}

/** Distinct pairs of kind of pick and yarn. */
function shuttlesOf(weave: Weave, weft: Uint8Array): number {
  const kinds = weave.pickKinds;
  const seen = new Set<number>();
  for (let j = 0; j < weft.length; j++) {
    const kind = kinds[j % kinds.length]!;
    seen.add(weft[j]! * 3 + (kind === 'ground' ? 0 : kind === 'pattern' ? 1 : 2));
  }
  return seen.size;
}
