import { availableParallelism } from 'node:os';
import type { Draft } from '../draft/draft.js';
import { Problem } from '../problem.js';
import { codeOf } from '../score/symmetry/cloth-code.js';
import { type Checkpoint, checkpointed, type Shard, sharded } from './checkpoint/checkpoint.js';
import { alreadyWoven } from './evaluate/already-woven.js';
import { searchEvolved } from './evolve/evolve-search.js';
import { workerPool } from './pool/worker-pool.js';
import type { Question } from './question/question.js';
import { describeAll } from './report/describe.js';
import { draftOf } from './space/candidate.js';
import { memoized } from './space/memoize.js';
import { type Space, spaceOf } from './space/space.js';
import { Archive, type LeftOut } from './strategy/archive.js';
import type { Outcome } from './strategy/outcome.js';
import {
  boundedPieces,
  LISTED,
  type Search,
  type Searched,
  type Stage,
  searchBounded,
  searchListed,
  settle,
} from './strategy/strategies.js';

/** Fewest jobs per worker: with fewer, starting the worker costs more than it saves. */
const JOBS_PER_WORKER = 4;

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

/**
 * Answers a question: tries every candidate (or, in a space too large to list, searches until nothing better comes),
 * and describes the best cloths.
 */
export async function explore(question: Question, options: RunOptions = {}): Promise<Outcome> {
  const space = spaceOf(question);
  const { archive, at, setAside, nearestFloats, pruned, whole, evolved } = await searched(question, space, options);
  await settle(archive, question, { signal: options.signal, progress: options.progress });
  const draftAt = draftsOf(question, at);
  const code = (index: number): string => codeOf(draftAt(index));
  const { show, oneOfEachKind } = question;
  const best = oneOfEachKind ? archive.bestOfEachKind(show, code) : archive.best(show, code);
  const set = setAside.float + setAside.unsound + setAside.flat + setAside.limits;
  const { out } = archive;
  return {
    counts: {
      written: space.written,
      examined: archive.cloths + archive.duplicates + set + pruned,
      cloths: archive.cloths - out.cloths,
      equals: archive.duplicates - (out.candidates - out.cloths),
      setAside: question.done ? { ...setAside, done: out.candidates } : setAside,
      cutOff: pruned,
      exhaustive: whole && space.way !== 'evolved',
      ...(evolved && { evolved }),
      ...(whole ? {} : { stopped: true as const }),
    },
    ...(nearestFloats && { nearestFloats }),
    found: describeAll(question, at, best, (done) =>
      options.progress?.({ name: 'describe the best', done, of: best.length }),
    ),
  };
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
  return (await searched(question, space, options, shard)).whole;
}

/** Searches a space by its strategy. */
async function searched(question: Question, space: Space, options: RunOptions, shard?: Shard): Promise<Searched> {
  const { signal, progress, enough } = options;
  options.onSpace?.(space);
  const checkpoint = options.checkpoint?.(space);
  const before = alreadyWoven(question);
  const newArchive = (at: Space['at']): Archive => {
    const draftAt = draftsOf(question, at);
    const leftOut: LeftOut | undefined = before && {
      isDone: before.isDone,
      isNear: (key, index) => before.isNear(key, () => draftAt(index)),
    };
    return new Archive((a, b) => compareColours(draftAt(a), draftAt(b)), leftOut);
  };
  const pieces = space.way === 'bounded' ? boundedPieces(space).length : Math.ceil(space.numbers / LISTED);
  // Bounded jobs are long; a worker keeps the main thread free to react to an abort.
  const worthIt = space.way === 'bounded' ? pieces : Math.ceil(pieces / JOBS_PER_WORKER);
  const workers = Math.min(worthIt, options.workers ?? availableParallelism());
  const all = workerPool(question, workers, signal);
  const rest = checkpoint ? checkpointed(all, checkpoint) : all;
  const pool = shard ? sharded(rest, shard) : rest;
  try {
    return await WAYS[space.way]({ question, space, pool, shard, before, newArchive, progress, signal, enough });
  } finally {
    pool.close();
  }
}

const WAYS: Readonly<Record<Space['way'], (search: Search) => Promise<Searched>>> = {
  scored: searchListed,
  bounded: searchBounded,
  evolved: searchEvolved,
};

/** A function from a candidate's index to its draft, which caches recent drafts. */
function draftsOf(question: Question, at: Space['at']): (index: number) => Draft {
  return memoized(1000, (index: number) => draftOf(at(index), question));
}

/** Compares two drafts by their warp colours, then by their weft colours, in palette order. */
function compareColours(a: Draft, b: Draft): number {
  return compareWords(a.warp, b.warp) || compareWords(a.weft, b.weft);
}

function compareWords(a: readonly number[], b: readonly number[]): number {
  const n = Math.min(a.length, b.length);
  for (let s = 0; s < n; s++) if (a[s] !== b[s]) return a[s]! - b[s]!;
  return a.length - b.length;
}
