import { drawdown } from '../../cloth/drawdown.js';
import { colourAt, colourFace, type Face, faceFromRows } from '../../cloth/face.js';
import type { Floats } from '../../cloth/floats.js';
import { values } from '../../colour/yarn.js';
import { isSquareSett, spacing } from '../../draft/draft.js';
import { contrastMeter } from '../../score/contrast/contrast.js';
import type { FloatLimit } from '../../score/model/float-limit.js';
import type { Part } from '../../score/parts/parts.js';
import { nearerFloats } from '../../score/rank/rank.js';
import { isTabled } from '../bounded/bounded-scan.js';
import { TopCandidates } from '../bounded/score-bound.js';
import type { Shard } from '../checkpoint/checkpoint.js';
import type { AlreadyWoven } from '../evaluate/already-woven.js';
import type { Batch } from '../evaluate/batch.js';
import { evaluator } from '../evaluate/evaluate.js';
import type { Goals } from '../evaluate/reach.js';
import type { JobResult, Jobs } from '../pool/jobs.js';
import { pause } from '../pool/pause.js';
import type { WorkerPool } from '../pool/pool.js';
import type { Question } from '../question/question.js';
import { draftOf } from '../space/candidate.js';
import { orbitsOf } from '../space/orbit.js';
import { boundOf } from '../space/part-bounds.js';
import type { Space } from '../space/space.js';
import type { Archive } from './archive.js';

/** Candidates of one scoring job: some tens of milliseconds of work. */
export const LISTED = 2048;
/** Pairs of orders of one job that holds them against their bounds: by tables, and pair by pair. */
const TABLED = 8_000_000;
const BOUNDED = 400_000;
/** Candidates of one job that scores those of a list. */
const LISTED_EACH = 500;
/** Most candidates that are scored to learn what score to reach. */
const MOST_SAMPLED = 20_000;
/** How many promising candidates are scored first, for each that is to be shown. */
const PROMISING_EACH = 8;
/** Of each niche so much fewer: about so many niches have any. */
const NICHES_FILLED = 30;

/** The progress of a search. */
export interface Stage {
  readonly name: string;
  readonly done: number;
  readonly of: number;
  /** A short remark for the person who waits. */
  readonly note?: string;
}

/** What a search strategy needs. */
export interface Search {
  readonly question: Question;
  readonly space: Space;
  readonly pool: WorkerPool;
  /**
   * The shard to do. Only an evolved search reads it, to choose its restarts; for the others the worker pool picks the
   * jobs.
   */
  readonly shard?: Shard | undefined;
  /** Cloths done before, which are left out. */
  readonly before?: AlreadyWoven | undefined;
  /** Makes an empty archive; `at` gives the candidate of a number. */
  readonly newArchive: (at: Space['at']) => Archive;
  readonly progress: ((stage: Stage) => void) | undefined;
  /** Aborted: the search stops at once. */
  readonly signal?: AbortSignal | undefined;
  /** Aborted: the search ends early with what it has found. */
  readonly enough?: AbortSignal | undefined;
}

/** How an evolved search went. */
export interface Evolved {
  readonly rounds: number;
  /** Niches filled. */
  readonly niches: number;
  /**
   * Every restart ended because its last rounds gained next to nothing, not because it reached its limit of candidates.
   */
  readonly settled: boolean;
}

/** The result of a search. */
export interface Searched {
  readonly archive: Archive;
  /** The candidate of a number in the archive. */
  readonly at: Space['at'];
  readonly setAside: { float: number; unsound: number; flat: number; limits: number };
  /** Among candidates set aside for their floats: the floats nearest to the limit. */
  readonly nearestFloats?: Floats | undefined;
  /** Candidates that were pruned: they cannot be among those shown, and were not scored. */
  readonly pruned: number;
  /** Whether the search ran to its end. */
  readonly whole: boolean;
  /** How an evolved search went. */
  readonly evolved?: Evolved;
}

/** Scores every number of the space. */
export async function searchListed({ question, space, pool, newArchive, progress, enough }: Search): Promise<Searched> {
  const searched = { ...gathering(newArchive(space.at), question), at: space.at, pruned: 0 };
  const jobs: Jobs = {
    divisible: true,
    count: Math.ceil(space.numbers / LISTED),
    at: (job: number) =>
      ({ kind: 'list', from: job * LISTED, to: Math.min(space.numbers, (job + 1) * LISTED) }) as const,
  };
  const take = ({ batch }: JobResult, job: number): void => {
    absorb(searched, batch);
    progress?.({ name: 'search', done: Math.min(space.numbers, (job + 1) * LISTED), of: space.numbers });
  };
  const done = await pool.run(jobs, take, enough);
  return { ...searched, whole: done === jobs.count };
}

/**
 * Finds exactly the best candidates without scoring all. First it scores the candidates with the best tone and symmetry
 * bound; the last of these that would be shown sets the score to reach. Then it holds every candidate against its
 * bounds and scores those that are not pruned. The result does not depend on the number of workers or the order in
 * which jobs end. A search that is ended early adds the promising candidates of the jobs that were not done. See
 * exact/BOUNDS.md.
 */
export async function searchBounded(given: Search): Promise<Searched> {
  const { question, space, pool, newArchive, progress, enough } = given;
  const searched = { ...gathering(newArchive(space.at), question), at: space.at, pruned: 0 };
  const { verdict } = evaluator(question);
  const pieces = boundedPieces(question, space).filter(({ block, from }) => {
    const known = verdict(space.strata[block]!.family);
    if (!('fault' in known)) return true;
    if (from === 0) {
      searched.setAside[known.fault] += orbitsOf(question, space.strata[block]!).count();
      if (known.fault === 'float') {
        searched.nearestFloats = nearerFloats(searched.nearestFloats, known.floats, question.limits.float);
      }
    }
    return false;
  });
  const work = pieces.reduce((sum, piece) => sum + piece.pairs, 0);
  const report = (name: string): ((job: number) => void) => {
    let done = 0;
    return (job) => {
      done += pieces[job]!.pairs;
      progress?.({ name, done, of: work });
    };
  };

  const unforeseen = boundOf(question.rank) === 'nothing';
  const all = Math.max(200, question.show * PROMISING_EACH, unforeseen ? 2 * sampled(question, space) : 0);
  let most = question.oneOfEachKind ? Math.ceil(all / NICHES_FILLED) : all;
  let { goals, indices } = await reachable(given, pieces, most, report('find the promising'));
  // Cloths that are left out set no score to reach, so more candidates are scored until enough others remain.
  while (given.before && goals.score === Number.NEGATIVE_INFINITY && indices.length >= most && !enough?.aborted) {
    most *= PROMISING_EACH;
    ({ goals, indices } = await reachable(given, pieces, most, report('find the promising')));
  }

  const reached = report('search');
  const reach: Jobs = {
    count: pieces.length,
    at: (job) => ({ kind: 'reach', ...span(pieces[job]!), goals }),
    divisible: true,
  };
  const take = ({ batch, pruned, limits }: JobResult, job: number): void => {
    absorb(searched, batch);
    searched.pruned += pruned;
    searched.setAside.limits += limits;
    reached(job);
  };
  const done = await pool.run(reach, take, enough);
  const whole = done === pieces.length;
  if (!whole) {
    const left = indices.filter((index) => index >= pieces[done]!.first);
    await pool.run(scoring(left), ({ batch }) => absorb(searched, batch));
  } else if (equalsMayDiffer(question, space)) {
    await settle(searched.archive, question, given);
    searched.pruned -= await countEquals(given, pieces, searched.archive, report('count the equals'));
  }
  return { ...searched, whole };
}

/**
 * Whether candidates that weave one cloth may score differently, so that one of them can be pruned though the cloth is
 * shown: where draft, structure or the lightness of three colours count, which equal cloths need not share, or where one
 * lies on its side and the other does not.
 */
function equalsMayDiffer(question: Question, { families }: Space): boolean {
  const { rank, same, yarns } = question;
  const weighs = (...parts: readonly Part[]): boolean => parts.some((part) => rank[part] > 0);
  const several = new Set(families.map((family) => family.weave([0], [0]))).size > 1;
  return (
    differOnSide(question) ||
    weighs('ease') ||
    ((several || same.includes('quarter-turn')) && weighs('novelty', 'newness', 'unlike')) ||
    (yarns.length > 2 &&
      same.includes('exchange') &&
      weighs('balance', 'solid', 'calm', 'lively', 'novelty', 'newness'))
  );
}

/** The face with ends for picks and picks for ends. */
function onItsSide(face: Face): Face {
  const columns = Array.from(face.column, (_, i) => Array.from(face.row, (__, j) => colourAt(face, j, i)));
  return faceFromRows(columns);
}

/** Whether a cloth on its side is the same, but has other figures: ends and picks do not lie equally close. */
function differOnSide({ same, sett }: Question): boolean {
  return same.includes('quarter-turn') && !isSquareSett(sett);
}

/**
 * Counts anew how many candidates weave each cloth that will be shown: all that have its T² are scored.
 *
 * @returns how many of these had been pruned
 */
async function countEquals(
  { question, space, pool, newArchive, enough }: Search,
  pieces: readonly Piece[],
  archive: Archive,
  told: (job: number) => void,
): Promise<number> {
  const { across, along } = spacing(question.sett);
  const meter = contrastMeter(across / along);
  const palette = values(question.yarns);
  const eachKind = question.oneOfEachKind === true;
  const tones = archive.shown(question.show, eachKind).flatMap((index) => {
    const draft = draftOf(space.at(index), question);
    const face = colourFace(drawdown(draft), draft.warp, draft.weft);
    const postures = differOnSide(question) ? [face, onItsSide(face)] : [face];
    return postures.map((posture) => meter.motif(posture, palette).tone ** 2);
  });
  tones.sort((a, b) => a - b);
  const all = newArchive(space.at);
  const jobs: Jobs = {
    count: pieces.length,
    at: (job) => ({ kind: 'alike', ...span(pieces[job]!), tones }),
    divisible: true,
  };
  await pool.run(
    jobs,
    ({ batch }, job) => {
      all.absorb(batch);
      told(job);
    },
    enough,
  );
  return archive.countAs(all, question.show, eachKind);
}

/**
 * The most promising candidates, and the scores to reach: that of the last one of them that would be shown (−∞ if there
 * are too few), and where each kind is asked for, that of the best of each niche.
 */
async function reachable(
  search: Search,
  pieces: readonly Piece[],
  most: number,
  told: (job: number) => void,
): Promise<{ goals: Goals; indices: number[] }> {
  const { question, space, pool, newArchive, enough } = search;
  const promising = new TopCandidates(most);
  const jobs: Jobs = { count: pieces.length, at: (job) => ({ kind: 'promise', ...span(pieces[job]!), most }) };
  const offer = (result: JobResult, job: number): void => {
    for (const candidate of result.promising) promising.offer(candidate);
    told(job);
  };
  await pool.run(jobs, offer, enough);
  const first = newArchive(space.at);
  const indices = [...new Set([...promising.best().map(({ index }) => index), ...sampleFor(question, space)])];
  await pool.run(scoring(indices), ({ batch }) => first.absorb(batch), enough);
  if (!enough?.aborted) await settle(first, question, search);
  const score = first.scoreOfPlace(question.show);
  const niches = question.oneOfEachKind && first.scoresOfNiches().map((best) => Math.min(best, score));
  return { goals: { score, ...(niches && { niches }) }, indices };
}

/** With √(places · candidates) scored to learn what score to reach, about as many others come so far. */
function sampled({ show }: Question, { count }: Space): number {
  return Math.floor(Math.min(MOST_SAMPLED / 2, Math.sqrt(show * count)));
}

/**
 * Candidates from all over the space, where the ranking weighs parts that are not foreseen: the best of them tell what
 * score to reach.
 */
function sampleFor(question: Question, space: Space): number[] {
  if (boundOf(question.rank) !== 'nothing') return [];
  const { count, numbers, isRepresentative } = space;
  const step = Math.max(1, count / sampled(question, space));
  const sample: number[] = [];
  for (let k = 0; k * step < numbers; k++) {
    // A place within each step, spread evenly by the golden section.
    const index = Math.floor((k + ((k * 0.618033988749895) % 1)) * step);
    if (index < numbers && isRepresentative(index)) sample.push(index);
  }
  return sample;
}

/** Cloths compared with those done before, between two checks for an abort: about a second’s work at the most. */
const HELD = 64;

/** Decides which cloths are left out of the ranking, as far down as it is shown. */
export async function settle(
  archive: Archive,
  { show, oneOfEachKind }: Question,
  { signal, progress }: Pick<Search, 'signal' | 'progress'>,
): Promise<void> {
  while (!archive.settle(show, oneOfEachKind === true, HELD)) {
    signal?.throwIfAborted();
    progress?.({ name: 'hold against what was done', done: archive.out.cloths, of: archive.cloths });
    await pause();
  }
}

/** One job of a bounded search: a range of warp orders of one block. */
interface Piece {
  readonly block: number;
  readonly from: number;
  readonly to: number;
  readonly pairs: number;
  /** Number of its first candidate; those of later pieces are higher. */
  readonly first: number;
}

function span({ block, from, to }: Piece): { block: number; from: number; to: number } {
  return { block, from, to };
}

/** Jobs that score these candidates. */
function scoring(indices: readonly number[]): Jobs {
  return {
    count: Math.ceil(indices.length / LISTED_EACH),
    at: (job) => ({ kind: 'score', indices: indices.slice(job * LISTED_EACH, (job + 1) * LISTED_EACH) }),
  };
}

/** Cuts the space into pieces. */
export function boundedPieces(question: Question, space: Space): Piece[] {
  return space.strata.flatMap((stratum, block) => {
    const { warps, wefts, starts, first } = stratum;
    const each = Math.max(1, wefts.length) * starts.length;
    const step = Math.max(1, Math.floor((isTabled(question, stratum) ? TABLED : BOUNDED) / each));
    return Array.from({ length: Math.ceil(warps.length / step) }, (_, k) => {
      const from = k * step;
      const to = Math.min(warps.length, from + step);
      return { block, from, to, pairs: (to - from) * each, first: first + from * each };
    });
  });
}

/** The sums of all batches so far. */
interface Gathered {
  readonly archive: Archive;
  readonly setAside: Searched['setAside'];
  nearestFloats: Floats | undefined;
  readonly floatLimit: FloatLimit;
}

/** Sums of no batch. */
export function gathering(archive: Archive, { limits }: Question): Gathered {
  const setAside = { float: 0, unsound: 0, flat: 0, limits: 0 };
  return { archive, setAside, nearestFloats: undefined, floatLimit: limits.float };
}

/** Adds a batch: its cloths to the archive, its counts to the sums. */
export function absorb(gathered: Gathered, batch: Batch): void {
  const { archive, setAside, nearestFloats, floatLimit } = gathered;
  archive.absorb(batch);
  gathered.nearestFloats = nearerFloats(nearestFloats, batch.nearestFloats, floatLimit);
  setAside.float += batch.setAside.float;
  setAside.unsound += batch.setAside.unsound;
  setAside.flat += batch.setAside.flat;
  setAside.limits += batch.setAside.limits;
}
