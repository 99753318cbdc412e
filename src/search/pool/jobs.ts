import { BoundedScan } from '../bounded/bounded-scan.js';
import { ScoreBound, TopCandidates } from '../bounded/score-bound.js';
import type { Batch } from '../evaluate/batch.js';
import { evaluator } from '../evaluate/evaluate.js';
import type { Question } from '../question/question.js';
import type { Candidate } from '../space/candidate.js';
import { candidateOf } from '../space/genome.js';
import { type Space, spaceOf } from '../space/space.js';
import { candidateIn, type Stratum } from '../space/stratum.js';

/** A piece of a search, as plain data that can be sent to a worker. */
export type Job =
  /** Score all candidates with these numbers. */
  | { readonly kind: 'list'; readonly from: number; readonly to: number }
  /** Score these candidates. */
  | { readonly kind: 'score'; readonly indices: readonly number[] }
  /** Score the candidates that these lines describe; they have consecutive numbers from `from` on. */
  | { readonly kind: 'lines'; readonly from: number; readonly lines: readonly string[] }
  /** Find the most promising candidates of some warp orders of a block. */
  | {
      readonly kind: 'promise';
      readonly block: number;
      readonly from: number;
      readonly to: number;
      readonly most: number;
    }
  /**
   * Score the candidates of some warp orders of a block, except those that are pruned because they cannot reach a
   * score.
   */
  | {
      readonly kind: 'reach';
      readonly block: number;
      readonly from: number;
      readonly to: number;
      readonly score: number;
    };

/** Jobs by their number. */
export interface Jobs {
  readonly count: number;
  at(job: number): Job;
  /** The results are only added up, so that shards may each do some of the jobs and be merged. */
  readonly divisible?: true;
}

/**
 * The result of a job: scored candidates, how many were pruned, and the promising candidates if it was asked for them.
 */
export interface JobResult {
  readonly batch: Batch;
  readonly pruned: number;
  readonly promising: readonly { readonly index: number; readonly hope: number }[];
}

/** Returns a function that does the jobs of one question. What jobs share is computed once. */
export function jobRunner(question: Question, space: Space = spaceOf(question)): (job: Job) => JobResult {
  const { evaluate, verdict } = evaluator(question);
  const hopeOf = (stratum: Stratum): ScoreBound => {
    const known = verdict(stratum.family);
    if ('fault' in known) throw new Error(`no candidate of ${stratum.family.structure} may be shown: ${known.fault}`);
    return new ScoreBound(question, known.floatPart);
  };
  const scans = new Map<number, BoundedScan>();
  const scanOf = (number: number): BoundedScan => {
    let scan = scans.get(number);
    if (scan === undefined) {
      scan = new BoundedScan(question, space.strata[number]!);
      scans.set(number, scan);
    }
    return scan;
  };
  const scored = (batch: Batch, pruned = 0): JobResult => ({ batch, pruned, promising: [] });

  return (job) => {
    switch (job.kind) {
      case 'list':
        return scored(evaluate(listed(space, job.from, job.to)));
      case 'score':
        return scored(evaluate(job.indices.map((index) => [index, space.at(index)] as const)));
      case 'lines':
        return scored(evaluate(job.lines.map((line, k) => [job.from + k, candidateOf(line, space.families)] as const)));
      case 'promise': {
        const scan = scanOf(job.block);
        const stratum = space.strata[job.block]!;
        const bound = hopeOf(stratum);
        const promising = new TopCandidates(job.most);
        scan.scan(
          job.from,
          job.to,
          (symmetry) => bound.needed(promising.least, symmetry),
          (warp, weft, start, tone) => {
            const symmetry = scan.symmetryAtMost(warp, weft, start);
            promising.offer(numberOf(stratum, warp, weft, start), bound.of(tone, symmetry));
          },
        );
        return { batch: evaluate([]), pruned: 0, promising: promising.best() };
      }
      case 'reach': {
        const stratum = space.strata[job.block]!;
        const bound = hopeOf(stratum);
        const reached: (readonly [number, Candidate])[] = [];
        const pruned = scanOf(job.block).scan(
          job.from,
          job.to,
          (symmetry) => bound.needed(job.score, symmetry),
          (warp, weft, start) => {
            const index = numberOf(stratum, warp, weft, start);
            reached.push([index, candidateIn(question, stratum, index - stratum.first)]);
          },
        );
        return scored(evaluate(reached), pruned);
      }
    }
  };
}

function numberOf(stratum: Stratum, warp: number, weft: number, start: number): number {
  return stratum.first + (warp * stratum.wefts.length + weft) * stratum.starts.length + start;
}

/** The candidates with numbers in a range that represent their orbit. */
function listed(space: Space, from: number, to: number): (readonly [number, Candidate])[] {
  const candidates: (readonly [number, Candidate])[] = [];
  for (let index = from; index < to; index++)
    if (space.isRepresentative(index)) candidates.push([index, space.at(index)]);
  return candidates;
}

/** The buffers of a result, which a worker hands over with it. */
export function buffersOf({ batch }: JobResult): ArrayBuffer[] {
  const { index, score, area, preference, niche, key } = batch;
  return [index, score, area, preference, niche, key].map(({ buffer }) => buffer as ArrayBuffer);
}
