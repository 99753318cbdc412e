import { endStrands, pickStrands, type Strands, threadsLaid } from '../../order/lay.js';
import type { Part } from '../../score/parts/parts.js';
import type { Question } from '../question/question.js';
import { weftOf } from './candidate.js';
import { elementsLaid, type Family, layingOf } from './family.js';
import { boundOf, MANY_PAIRS } from './part-bounds.js';
import type { Stratum } from './stratum.js';

/**
 * Seconds of one thread, about: measured on some hundred questions, of every structure, ranking and way of laying
 * (`npm run bench -- ways` measures some). The same numbers choose the way on every machine: a slower one takes longer by
 * either.
 */
const SECONDS = {
  /** Whatever is asked: the cloths shown are described. */
  shown: 0.4,
  /** To score a candidate: contrast, face, symmetry, canonical cloth. */
  scored: 8e-6,
  /** More for each thread along the side of its repeat, where each order is laid for few candidates. */
  laid: 0.5e-6,
  /** More where it is compared with the classics or with its structure. */
  compared: 6e-6,
  /** More for each thread along the side of its repeat, where its areas or its shapes are measured. */
  areas: 0.5e-6,
  shapes: 0.9e-6,
  /** To begin with bounds: their code is compiled besides that of scoring. */
  bounds: 0.15,
  /** To make the bounds of a ground, and where they bound the distance to the classics too. */
  ground: 0.35e-3,
  groundBesideClassics: 3e-3,
  /** What bounds spare of scoring a candidate, besides most of its shapes; and where they foretell little. */
  spared: 3e-6,
  sparedUnforeseen: 1e-6,
  /** Tables hold whole classes of candidates at once: their time grows as the square root of the number. */
  rootOfTabled: 1 / 350,
  /** To mutate a candidate and measure it to the end. */
  mutated: 100e-6,
} as const;

/** Share of the time for shapes that bounds spare. */
const SHAPES_SPARED = 3 / 4;
/** Threads of an element that stands for a block, about. */
const THREADS_OF_BLOCK = 4;
/** A search that mutates usually settles after this share of the most that it may score. */
const SETTLED = 1 / 16;

/** About how many seconds of one thread a search takes that mutates at most so many candidates. */
export function evolvedSeconds(most: number): number {
  return SETTLED * most * SECONDS.mutated;
}

/** About how many seconds of one thread it takes to search so many candidates: to score each, and by bounds. */
export function secondsByWay(
  question: Question,
  strata: readonly Stratum[],
  count: number,
): Readonly<Record<'scored' | 'bounded', number>> {
  const weighs = (...parts: readonly Part[]): boolean => parts.some((part) => question.rank[part] > 0);
  const bound = foretold(question, strata);
  const classics = weighs('novelty', 'newness');
  const side = sideOf(question, strata);
  const shapes = weighs('calm', 'lively') ? SECONDS.shapes * side : 0;
  const areas = weighs('solid', 'sharp') ? SECONDS.areas * side : 0;
  const laidOften = question.weft.rule === 'own' && question.warp === undefined && strata.every(hasFixedWeave);
  const laid = laidOften ? 0 : SECONDS.laid * side;
  const each = SECONDS.scored + laid + areas + shapes + (classics || weighs('unlike') ? SECONDS.compared : 0);
  const foresees = bound !== 'nothing' || classics || shapes > 0;
  const spared = SHAPES_SPARED * shapes + (foresees ? SECONDS.spared : SECONDS.sparedUnforeseen);
  const grounds = strata.reduce((sum, { starts }) => sum + starts.length, 0);
  const made = SECONDS.bounds + grounds * (classics ? SECONDS.groundBesideClassics : SECONDS.ground);
  const tabled = bound === 'tables' ? count * shareOfLarge(strata) : 0;
  const pairs = (candidates: number): number => candidates * (each - spared);
  const held = pairs(count - tabled) + Math.min(pairs(tabled), Math.sqrt(tabled) * SECONDS.rootOfTabled);
  return { scored: SECONDS.shown + count * each, bounded: SECONDS.shown + made + held };
}

/** What foretells the scores of most candidates: tables need two yarns, and weft orders of their own. */
function foretold({ rank, yarns, weft, warp }: Question, strata: readonly Stratum[]): ReturnType<typeof boundOf> {
  const bound = boundOf(rank);
  const pairs = yarns.length === 2 && weft.rule === 'own' && warp === undefined;
  return bound === 'tables' && !(pairs && strata.every(({ family }) => family.fill !== 'nest')) ? 'forms' : bound;
}

/** Share of the candidates that are in blocks of many pairs. */
function shareOfLarge(strata: readonly Stratum[]): number {
  const sum = (some: readonly Stratum[]): number => some.reduce((all, { count }) => all + count, 0);
  return sum(strata.filter(({ warps, wefts }) => warps.length * wefts.length >= MANY_PAIRS)) / sum(strata);
}

/** The side of the square that has as many cells as a repeat, as a mean over all candidates. */
function sideOf(question: Question, strata: readonly Stratum[]): number {
  let [sum, all] = [0, 0];
  for (const { family, warps, wefts, count } of strata) {
    all += count;
    const picks = wefts[0] ?? weftOf(question, warps[0]!);
    if (!family.fixedWeave) {
      sum += count * THREADS_OF_BLOCK * family.times * Math.sqrt(warps[0]!.length * picks.length);
      continue;
    }
    const weave = family.weave([0], [0]);
    const cells =
      threads(endStrands(weave), family, warps[0]!.length) * threads(pickStrands(weave), family, picks.length);
    sum += count * Math.sqrt(cells);
  }
  return sum / Math.max(1, all);
}

const hasFixedWeave = ({ family }: Stratum): boolean => family.fixedWeave;

const threads = (strands: Strands, family: Family, elements: number): number =>
  threadsLaid(strands, elementsLaid(family, elements), layingOf(family, 0));
