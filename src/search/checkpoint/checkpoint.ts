import { createHash } from 'node:crypto';
import type { Job, JobResult, Jobs } from '../pool/jobs.js';
import type { WorkerPool } from '../pool/pool.js';

/**
 * A checkpoint: the finished jobs of a search with their results. A result depends on the question and the job alone,
 * so a search that reads it here continues exactly as if it had done the job itself. See CHECKPOINTS.md.
 */
export interface Checkpoint {
  has(key: string): boolean;
  /** The result of a job that it has. */
  result(key: string): JobResult;
  record(key: string, result: JobResult): void;
}

/** One of the equal parts that a search is divided into; the first is 1. */
export interface Shard {
  readonly part: number;
  readonly of: number;
}

/** The key of a job in a checkpoint: equal jobs of one question have equal keys. */
function jobKey(job: Job): string {
  return createHash('sha256').update(JSON.stringify(job)).digest('hex').slice(0, 32);
}

/** A worker pool that takes finished jobs from the checkpoint, does the others, and records these. */
export function checkpointed(pool: WorkerPool, checkpoint: Checkpoint): WorkerPool {
  return {
    run: async (jobs, take, enough) => {
      const left = numbers(jobs.count).filter((job) => !checkpoint.has(jobKey(jobs.at(job))));
      let next = 0;
      const takeKnown = (before: number): void => {
        for (; next < before; next++) take(checkpoint.result(jobKey(jobs.at(next))), next);
      };
      const done = await pool.run(
        some(jobs, left),
        (result, k) => {
          const job = left[k]!;
          takeKnown(job);
          checkpoint.record(jobKey(jobs.at(job)), result);
          take(result, job);
          next = job + 1;
        },
        enough,
      );
      takeKnown(left[done] ?? jobs.count);
      return next;
    },
    close: () => pool.close(),
  };
}

/**
 * A worker pool that does one shard. Of divisible jobs it does every `of`-th. All other jobs it does in full, since
 * later jobs depend on their results: every shard finds the same score to reach, and so prunes exactly what a single
 * run would.
 */
export function sharded(pool: WorkerPool, { part, of }: Shard): WorkerPool {
  return {
    run: async (jobs, take, enough) => {
      if (!jobs.divisible) return pool.run(jobs, take, enough);
      const mine = numbers(jobs.count).filter((job) => job % of === part - 1);
      const done = await pool.run(some(jobs, mine), (result, k) => take(result, mine[k]!), enough);
      return done === mine.length ? jobs.count : mine[done]!;
    },
    close: () => pool.close(),
  };
}

function numbers(count: number): number[] {
  return Array.from({ length: count }, (_, job) => job);
}

function some(jobs: Jobs, which: readonly number[]): Jobs {
  return { count: which.length, at: (k) => jobs.at(which[k]!) };
}
