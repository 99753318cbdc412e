import { availableParallelism } from 'node:os';
import { drawdown } from '../cloth/drawdown.js';
import { colourFace } from '../cloth/face.js';
import { values } from '../colour/yarn.js';
import { type Draft, spacing, type Weave } from '../draft/draft.js';
import { formatOrder } from '../order/order.js';
import { Problem } from '../problem.js';
import { codeOf } from '../score/code.js';
import type { Classic } from '../score/novelty.js';
import { measuredClassics, scoreDraft } from '../score/score.js';
import { type Gathered, gathered, nearTwins } from '../score/twin.js';
import { Archive, type Kept } from './archive.js';
import { draftOf, recipeOf } from './candidate.js';
import { crewOf } from './crew.js';
import { searchEvolved } from './evolve/search.js';
import type { Found, Outcome } from './found.js';
import { type Journal, remembering, type Shard, sharing } from './journal.js';
import {
  boundedPieces,
  LISTED,
  type Search,
  type Searched,
  type Stage,
  searchBounded,
  searchListed,
} from './methods.js';
import type { Question } from './question.js';
import { redrawOf } from './redraw.js';
import { type Space, spaceOf } from './space.js';

/** A thread for fewer pieces of work than this costs more to start than it brings. */
const WORTH_A_THREAD = 4;
/** Cells of a weave on which the classic orders are measured in a fraction of a second. */
const FEW_CELLS = 1024;

export type { Stage } from './methods.js';

export interface RunOptions {
  /** Threads; absent: as many as the machine runs at once. */
  readonly workers?: number;
  readonly progress?: (stage: Stage) => void;
  /** Stops at once; the search fails with the signal's reason. */
  readonly signal?: AbortSignal;
  /** The search finishes with what it has found. */
  readonly enough?: AbortSignal;
  /** Told what there is to try, before the search begins. */
  readonly onSpace?: (space: Space) => void;
  /** What is done already, and takes note of what is done now; asked for when the space is known. */
  readonly journal?: (space: Space) => Journal;
}

/** The main job: every candidate of a question tried (or a sample, where there are too many), the best described. */
export async function explore(question: Question, options: RunOptions = {}): Promise<Outcome> {
  const space = spaceOf(question);
  const { archive, at, setAside, passed, whole, evolved } = await searched(question, space, options);
  const draftAt = draftsOf(question, at);
  const best = archive.best(question.show, (index) => codeOf(draftAt(index)));
  const set = setAside.float + setAside.unsound + setAside.flat + setAside.limits;
  return {
    counts: {
      written: space.written,
      examined: archive.cloths + archive.duplicates + set + passed,
      cloths: archive.cloths,
      equals: archive.duplicates,
      setAside,
      cutOff: passed,
      exhaustive: whole && space.way !== 'evolved',
      ...(evolved && { evolved }),
      ...(whole ? {} : { stopped: true as const }),
    },
    found: describe(question, at, best, options.progress),
  };
}

/**
 * Does one part of a search's jobs; the journal has them afterwards. A search whose journals have all parts together
 * has nothing left to do.
 *
 * @returns whether the part was done to its end
 * @throws Problem where the search cannot be divided
 */
export async function exploreShard(question: Question, shard: Shard, options: RunOptions): Promise<boolean> {
  const space = spaceOf(question);
  if (space.way === 'evolved') {
    throw new Problem(
      'found more to try than can be listed: each step hangs on the last; expected fewer or shorter orders',
    );
  }
  return (await searched(question, space, options, shard)).whole;
}

/** Searches a space in its way. */
async function searched(question: Question, space: Space, options: RunOptions, shard?: Shard): Promise<Searched> {
  const { signal, progress, enough } = options;
  options.onSpace?.(space);
  const journal = options.journal?.(space);
  const newArchive = (at: Space['at']): Archive => {
    const draftAt = draftsOf(question, at);
    return new Archive((a, b) => compareColours(draftAt(a), draftAt(b)));
  };
  const pieces = space.way === 'bounded' ? boundedPieces(space).length : Math.ceil(space.numbers / LISTED);
  // Bounded pieces are long: a thread leaves this one free to hear that it is to stop.
  const worthIt = space.way === 'bounded' ? pieces : Math.ceil(pieces / WORTH_A_THREAD);
  const threads = Math.min(worthIt, options.workers ?? availableParallelism());
  const all = crewOf(question, threads, signal);
  const rest = journal ? remembering(all, journal) : all;
  const crew = shard ? sharing(rest, shard) : rest;
  try {
    return await WAYS[space.way]({ question, space, crew, newArchive, progress, enough });
  } finally {
    crew.leave();
  }
}

const WAYS: Readonly<Record<Space['way'], (search: Search) => Promise<Searched>>> = {
  scored: searchListed,
  bounded: searchBounded,
  evolved: searchEvolved,
};

/** The drafts of numbered candidates; the last ones are remembered. */
function draftsOf(question: Question, at: Space['at']): (index: number) => Draft {
  return remembered(1000, (index) => draftOf(at(index), question));
}

/** Everything that is said of the cloths shown. */
function describe(
  question: Question,
  at: Space['at'],
  best: readonly Kept[],
  progress: RunOptions['progress'],
): Found[] {
  const { across, along } = spacing(question.sett);
  const value = values(question.yarns);
  const ways = {
    mirror: question.same.includes('mirror'),
    halfTurn: question.same.includes('half-turn'),
    exchange: question.same.includes('exchange') && question.yarns.length === 2,
  };
  const shown: { readonly code: string; readonly cloth: Gathered }[] = [];
  const classicsOn = new Map<string, Classic[]>();
  const classicsFor = (weave: Weave): Classic[] => {
    const known = JSON.stringify(weave);
    const classics = classicsOn.get(known) ?? measuredClassics(weave, question.sett);
    classicsOn.set(known, classics);
    return classics;
  };
  return best.map(({ index, equals }, place): Found => {
    const candidate = at(index);
    const { family, warp, weft, start } = candidate;
    const draft = draftOf(candidate, question);
    const weave = family.weave(warp, weft);
    // Where the classics cost little they are told of every cloth, whatever it is ranked by.
    const cheap = family.fixedWeave && weave.threading.length * weave.treadling.length <= FEW_CELLS;
    const classics = cheap || question.rank.novelty > 0 ? classicsFor(weave) : [];
    const scored = scoreDraft(draft, { weights: question.rank, floatLimit: question.limits.float, classics });
    const cloth = gathered(colourFace(drawdown(draft), draft.warp, draft.weft), value, across / along);
    const twin = shown.find((better) => nearTwins(better.cloth, cloth, ways));
    shown.push({ code: scored.code, cloth });
    progress?.({ name: 'describe the best', done: place + 1, of: best.length });
    return {
      rank: place + 1,
      code: scored.code,
      recipe: recipeOf(candidate, question),
      structure: family.structure,
      redraw: redrawOf(candidate, question),
      draft,
      order: {
        warp: formatOrder(warp, question.yarns),
        weft: formatOrder(weft, question.yarns),
        by: family.by,
        fill: family.fill,
        times: family.times,
        start,
      },
      scores: scored.scores,
      ease: scored.ease,
      equals,
      nearTwin: twin?.code ?? null,
    };
  });
}

/** A function of a number that remembers its last results. */
function remembered<T>(most: number, make: (index: number) => T): (index: number) => T {
  const known = new Map<number, T>();
  return (index) => {
    let value = known.get(index);
    if (value === undefined) {
      value = make(index);
      if (known.size >= most) known.clear();
      known.set(index, value);
    }
    return value;
  };
}

/** Which of two drafts has the warp, or else the weft, that sorts first in palette order. */
function compareColours(a: Draft, b: Draft): number {
  return compareWords(a.warp, b.warp) || compareWords(a.weft, b.weft);
}

function compareWords(a: readonly number[], b: readonly number[]): number {
  const n = Math.min(a.length, b.length);
  for (let s = 0; s < n; s++) if (a[s] !== b[s]) return a[s]! - b[s]!;
  return a.length - b.length;
}
