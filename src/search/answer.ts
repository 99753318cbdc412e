import type { Draft } from '../draft/draft.js';
import { type Descriptor, descriptorOf } from '../score/likeness/descriptor.js';
import { SAME_KIND, unlikeOnes } from '../score/likeness/unlike-ones.js';
import { codeOf } from '../score/symmetry/cloth-code.js';
import type { Shard } from './checkpoint/checkpoint.js';
import { alreadyWoven } from './evaluate/already-woven.js';
import { searchEvolved } from './evolve/evolve-search.js';
import type { WorkerPool } from './pool/pool.js';
import type { Question } from './question/question.js';
import { describeAll } from './report/describe.js';
import { colourOrder, draftOf } from './space/candidate.js';
import { memoized } from './space/memoize.js';
import type { Space } from './space/space.js';
import { Archive, type Kept, type LeftOut } from './strategy/archive.js';
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

/**
 * Seconds of one thread for which one more worker is worth its cost: it starts, and all code that it runs is compiled for
 * it anew, which takes one to three seconds of its own.
 */
const WORTH_A_WORKER = 8;
/** Most kinds of cloth shown: four contact sheets. */
const MOST_KINDS = 64;

/** How a search is done, and who is told of it. */
export interface SearchOptions {
  /** Makes the pool that does the jobs; `most` workers are worth starting. */
  readonly pool: (most: number) => WorkerPool;
  readonly progress?: ((stage: Stage) => void) | undefined;
  /** Aborts the search at once; it rejects with the signal's reason. */
  readonly signal?: AbortSignal | undefined;
  /** Ends the search early; it returns the cloths found so far. */
  readonly enough?: AbortSignal | undefined;
  readonly shard?: Shard | undefined;
}

/**
 * Answers a question: tries every candidate of its space (or, in a space too large to list, searches until nothing
 * better comes), and describes the best cloths. Runs in Node and in a browser alike.
 */
export async function answer(question: Question, space: Space, options: SearchOptions): Promise<Outcome> {
  const { archive, at, setAside, nearestFloats, pruned, whole, evolved } = await searched(question, space, options);
  await settle(archive, question, { signal: options.signal, progress: options.progress });
  const draftAt = draftsOf(question, at);
  const code = (index: number): string => codeOf(draftAt(index));
  const { show, oneOfEachKind } = question;
  const best = oneOfEachKind
    ? unlikeOnesOf(archive.bestAndOfNiches(show, code), ({ index }) => descriptorOf(draftAt(index), question.same))
    : archive.best(show, code);
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

/** Searches a space by its strategy. */
export async function searched(question: Question, space: Space, options: SearchOptions): Promise<Searched> {
  const { signal, progress, enough, shard } = options;
  const before = alreadyWoven(question);
  const sortsFirst = colourOrder(question);
  const newArchive = (at: Space['at']): Archive => {
    const draftAt = draftsOf(question, at);
    const leftOut: LeftOut | undefined = before && {
      isDone: before.isDone,
      isNear: (key, index) => before.isNear(key, () => draftAt(index)),
    };
    return new Archive((a, b) => sortsFirst(at(a), at(b)), leftOut);
  };
  const pieces = space.way === 'bounded' ? boundedPieces(question, space).length : Math.ceil(space.numbers / LISTED);
  const pool = options.pool(Math.min(pieces, 1 + Math.floor(space.seconds / WORTH_A_WORKER)));
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

/** Of cloths in the order of the ranking, the best of each kind: each looks unlike all that are kept before it. */
function unlikeOnesOf(ranked: readonly Kept[], descriptor: (kept: Kept) => Descriptor): Kept[] {
  return unlikeOnes(ranked.map(descriptor), SAME_KIND, MOST_KINDS).map((at) => ranked[at]!);
}

/** A function from a candidate's index to its draft, which caches recent drafts. */
function draftsOf(question: Question, at: Space['at']): (index: number) => Draft {
  return memoized(1000, (index: number) => draftOf(at(index), question));
}
