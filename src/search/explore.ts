import { availableParallelism } from 'node:os';
import { Problem } from '../problem.js';
import { answer, type SearchOptions, searched } from './answer.js';
import { type Checkpoint, checkpointed, type Shard, sharded } from './checkpoint/checkpoint.js';
import { workerPool } from './pool/worker-pool.js';
import type { Question } from './question/question.js';
import { type Space, spaceOf } from './space/space.js';
import type { Outcome } from './strategy/outcome.js';
import type { Stage } from './strategy/strategies.js';

export type { Stage } from './strategy/strategies.js';

interface RunOptions {
  /** Threads; absent: as many as the machine runs at once. */
  readonly workers?: number;
  readonly progress?: (stage: Stage) => void;
  /** Aborts the search at once; it rejects with the signal's reason. */
  readonly signal?: AbortSignal;
  /** Ends the search early; it returns the cloths found so far. */
  readonly enough?: AbortSignal;
  /** Called with the space before the search begins. */
  readonly onSpace?: (space: Space) => void;
  /** Makes the checkpoint, which holds the results of finished jobs, once the space is known. */
  readonly checkpoint?: (space: Space) => Checkpoint;
}

/** Answers a question with the threads of this machine. */
export async function explore(question: Question, options: RunOptions = {}): Promise<Outcome> {
  const space = spaceOf(question);
  return answer(question, space, onThisMachine(question, space, options));
}

/**
 * Runs the jobs of one shard and records them in the checkpoint. A search whose checkpoint holds the jobs of all shards
 * has nothing left to compute.
 *
 * @returns whether the shard was finished
 * @throws Problem if the search cannot be divided
 */
export async function exploreShard(question: Question, shard: Shard, options: RunOptions): Promise<boolean> {
  const space = spaceOf(question);
  if (space.way === 'evolved' && question.tries < shard.of) {
    throw new Problem(
      `found more to try than can be listed, and tries ${question.tries}: each step of a try needs the one before; ` +
        `expected tries ${shard.of} or more, so that each part has its own`,
    );
  }
  return (await searched(question, space, onThisMachine(question, space, options, shard))).whole;
}

/** The options of a search in worker threads, with its checkpoint and its shard. */
function onThisMachine(question: Question, space: Space, options: RunOptions, shard?: Shard): SearchOptions {
  const { signal, progress, enough } = options;
  options.onSpace?.(space);
  const checkpoint = options.checkpoint?.(space);
  return {
    signal,
    progress,
    enough,
    shard,
    pool: (most) => {
      const all = workerPool(question, Math.min(most, options.workers ?? availableParallelism()), signal, space);
      const rest = checkpoint ? checkpointed(all, checkpoint) : all;
      return shard ? sharded(rest, shard) : rest;
    },
  };
}
