import type { Batch } from './batch.js';
import { type Block, candidateIn } from './block.js';
import type { Candidate } from './candidate.js';
import { evaluator } from './evaluate.js';
import { candidateOf } from './evolve/written.js';
import { Hope, Promising } from './exact/promise.js';
import { BlockScan } from './exact/scan.js';
import type { Question } from './question.js';
import { type Space, spaceOf } from './space.js';

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
  readonly passed: number;
  readonly promising: readonly { readonly index: number; readonly hope: number }[];
}

/** Returns a function that does the jobs of one question. What jobs share is computed once. */
export function jobRunner(question: Question, space: Space = spaceOf(question)): (job: Job) => JobResult {
  const { evaluate, verdict } = evaluator(question);
  const hopeOf = (block: Block): Hope => {
    const known = verdict(block.family);
    if ('fault' in known) throw new Error(`no candidate of ${block.family.structure} may be shown: ${known.fault}`);
    return new Hope(question, known.floatPart);
  };
  const scans = new Map<number, BlockScan>();
  const scanOf = (number: number): BlockScan => {
    let scan = scans.get(number);
    if (scan === undefined) {
      scan = new BlockScan(question, space.blocks[number]!);
      scans.set(number, scan);
    }
    return scan;
  };
  const scored = (batch: Batch, passed = 0): JobResult => ({ batch, passed, promising: [] });

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
        const block = space.blocks[job.block]!;
        const hope = hopeOf(block);
        const promising = new Promising(job.most);
        scan.scan(
          job.from,
          job.to,
          (symmetry) => hope.needed(promising.least, symmetry),
          (warp, weft, start, tone) => {
            const symmetry = scan.symmetryAtMost(warp, weft, start);
            promising.offer(numberOf(block, warp, weft, start), hope.of(tone, symmetry));
          },
        );
        return { batch: evaluate([]), passed: 0, promising: promising.best() };
      }
      case 'reach': {
        const block = space.blocks[job.block]!;
        const hope = hopeOf(block);
        const reached: (readonly [number, Candidate])[] = [];
        const passed = scanOf(job.block).scan(
          job.from,
          job.to,
          (symmetry) => hope.needed(job.score, symmetry),
          (warp, weft, start) => {
            const index = numberOf(block, warp, weft, start);
            reached.push([index, candidateIn(question, block, index - block.first)]);
          },
        );
        return scored(evaluate(reached), passed);
      }
    }
  };
}

function numberOf(block: Block, warp: number, weft: number, start: number): number {
  return block.first + (warp * block.wefts.length + weft) * block.starts.length + start;
}

/** The candidates with numbers in a range that represent their orbit. */
function listed(space: Space, from: number, to: number): (readonly [number, Candidate])[] {
  const candidates: (readonly [number, Candidate])[] = [];
  for (let index = from; index < to; index++) if (space.stands(index)) candidates.push([index, space.at(index)]);
  return candidates;
}
