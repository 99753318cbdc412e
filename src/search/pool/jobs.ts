import { BoundedScan, isTabled } from '../bounded/bounded-scan.js';
import { PairScan } from '../bounded/pair-scan.js';
import type { Scan } from '../bounded/scan.js';
import { type Promising, TopCandidates } from '../bounded/score-bound.js';
import { LaidSides } from '../bounded/side-orders.js';
import type { Batch } from '../evaluate/batch.js';
import { evaluator, type Shared } from '../evaluate/evaluate.js';
import { Aims, type Goals } from '../evaluate/reach.js';
import type { Question } from '../question/question.js';
import type { Candidate } from '../space/candidate.js';
import type { Family } from '../space/family.js';
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
  /** Find the most promising candidates of some warp orders of a block: so many of each place. */
  | {
      readonly kind: 'promise';
      readonly block: number;
      readonly from: number;
      readonly to: number;
      readonly most: number;
    }
  /**
   * Score the candidates of some warp orders of a block, except those that are pruned because they cannot reach their
   * score.
   */
  | {
      readonly kind: 'reach';
      readonly block: number;
      readonly from: number;
      readonly to: number;
      readonly goals: Goals;
    }
  /** Score the candidates of some warp orders of a block whose T² is one of these. */
  | {
      readonly kind: 'alike';
      readonly block: number;
      readonly from: number;
      readonly to: number;
      readonly tones: readonly number[];
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
  /** Candidates that a scan found to be over a limit. */
  readonly limits: number;
  readonly promising: readonly Promising[];
}

/** Squared tones nearer to each other than this are the same. */
const SAME_TONE = 1e-10;

/** Returns a function that does the jobs of one question. What jobs share is computed once. */
export function jobRunner(question: Question, space: Space = spaceOf(question)): (job: Job) => JobResult {
  const { scoring, evaluate } = evaluator(question);
  const scanOf = scansOf(question, space);
  const result = ({ cutOff, ...batch }: ReturnType<typeof evaluate>): JobResult => ({
    batch,
    pruned: cutOff,
    limits: 0,
    promising: [],
  });
  const candidateAt = (stratum: Stratum, index: number): Candidate =>
    candidateIn(question, stratum, index - stratum.first);

  return (job) => {
    switch (job.kind) {
      case 'list':
        return result(evaluate(listed(space, job.from, job.to)));
      case 'score':
        return result(evaluate(job.indices.map((index) => [index, space.at(index)] as const)));
      case 'lines':
        return result(evaluate(job.lines.map((line, k) => [job.from + k, candidateOf(line, space.families)] as const)));
      case 'promise': {
        const stratum = space.strata[job.block]!;
        const promising = new TopCandidates(job.most);
        scanOf(job.block).guess(job.from, job.to, promising.least, (warp, weft, start, place, hope) =>
          promising.offer({ index: numberOf(stratum, warp, weft, start), hope, place }),
        );
        return { ...result(evaluate([])), promising: promising.best() };
      }
      case 'reach': {
        const stratum = space.strata[job.block]!;
        const aims = new Aims(job.goals, question);
        const scored = scoring(aims);
        const passed = scanOf(job.block).scan(job.from, job.to, aims.foreseen, {
          reached(warp, weft, start, foresee) {
            const index = numberOf(stratum, warp, weft, start);
            scored.take([index, candidateAt(stratum, index), foresee()]);
          },
        });
        const reached = result(scored.done());
        return { ...reached, pruned: reached.pruned + passed.pruned, limits: passed.limits };
      }
      case 'alike': {
        const stratum = space.strata[job.block]!;
        const scored = scoring();
        scanOf(job.block).scan(job.from, job.to, () => Number.POSITIVE_INFINITY, {
          reached: () => {},
          leastTone: job.tones[0]! - SAME_TONE,
          pruned(warp, weft, start, toneSquared) {
            if (!isAmong(job.tones, toneSquared)) return;
            const index = numberOf(stratum, warp, weft, start);
            scored.take([index, candidateAt(stratum, index)]);
          },
        });
        return result(scored.done());
      }
    }
  };
}

/** A function from the number of a block to its scan, which is made once. */
function scansOf(question: Question, space: Space): (block: number) => Scan {
  const { verdict } = evaluator(question);
  const scans = new Map<number, Scan>();
  const laid = new LaidSides(question);
  // Of a family that is refused nothing is scanned.
  const sharedOf = (family: Family): Shared => {
    const known = verdict(family);
    return 'fault' in known ? { floatPart: 0, classics: [] } : known;
  };
  let floatPart: number | undefined;
  return (block) => {
    let scan = scans.get(block);
    if (scan === undefined) {
      // Cloths that are equal may be woven with other floats, so that the best float part stands for all.
      floatPart ??= Math.max(...space.families.map((family) => sharedOf(family).floatPart));
      const stratum = space.strata[block]!;
      scan = isTabled(question, stratum)
        ? new BoundedScan(question, stratum, floatPart, laid)
        : new PairScan(question, stratum, { ...sharedOf(stratum.family), floatPart }, laid);
      scans.set(block, scan);
    }
    return scan;
  };
}

/** Whether one of these numbers, which ascend, is the same but for rounding. */
function isAmong(numbers: readonly number[], wanted: number): boolean {
  let [low, high] = [0, numbers.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (numbers[middle]! < wanted - SAME_TONE) low = middle + 1;
    else high = middle;
  }
  return low < numbers.length && numbers[low]! <= wanted + SAME_TONE;
}

function numberOf(stratum: Stratum, warp: number, weft: number, start: number): number {
  return stratum.first + (warp * Math.max(1, stratum.wefts.length) + weft) * stratum.starts.length + start;
}

/** The candidates with numbers in a range that represent their orbit. */
function* listed(space: Space, from: number, to: number): Generator<readonly [number, Candidate]> {
  for (let index = from; index < to; index++) if (space.isRepresentative(index)) yield [index, space.at(index)];
}

/** The buffers of a result, which a worker hands over with it. */
export function buffersOf({ batch }: JobResult): ArrayBuffer[] {
  const { index, score, area, preference, niche, key } = batch;
  return [index, score, area, preference, niche, key].map(({ buffer }) => buffer as ArrayBuffer);
}
