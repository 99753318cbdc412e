import { availableParallelism } from 'node:os';
import { drawdown } from '../cloth/drawdown.js';
import { colourFace } from '../cloth/face.js';
import { values } from '../colour/yarn.js';
import { type Draft, spacing } from '../draft/draft.js';
import { formatOrder } from '../order/order.js';
import { codeOf } from '../score/code.js';
import { measuredClassics, scoreDraft } from '../score/score.js';
import { type Gathered, gathered, nearTwins } from '../score/twin.js';
import { Archive, type Kept } from './archive.js';
import { draftOf, recipeOf } from './candidate.js';
import { CHUNK, chunkScorer } from './chunk.js';
import type { Found, Outcome } from './found.js';
import type { Question } from './question.js';
import { type Space, spaceOf } from './space.js';
import { scoreOnWorkers } from './workers.js';

/** Below this many chunks starting a thread costs more than it brings. */
const WORTH_A_WORKER = 4;

/** Where a search stands. */
export interface Stage {
  readonly name: string;
  readonly done: number;
  readonly of: number;
}

export interface RunOptions {
  /** Threads; absent: as many as the machine runs at once. */
  readonly workers?: number;
  readonly progress?: (stage: Stage) => void;
  readonly signal?: AbortSignal;
  /** Told what there is to try, before the search begins. */
  readonly onSpace?: (space: Space) => void;
}

/** The main job: every candidate of a question tried (or a sample, where there are too many), the best described. */
export async function explore(question: Question, options: RunOptions = {}): Promise<Outcome> {
  const { signal, progress } = options;
  const space = spaceOf(question);
  options.onSpace?.(space);
  const drafts = new Map<number, Draft>();
  const draftAt = (index: number): Draft => {
    let draft = drafts.get(index);
    if (draft === undefined) {
      draft = draftOf(space.at(index), question);
      if (drafts.size > 1000) drafts.clear();
      drafts.set(index, draft);
    }
    return draft;
  };
  const archive = new Archive((a, b) => compareColours(draftAt(a), draftAt(b)));
  const setAside = { float: 0, unsound: 0, flat: 0, limits: 0 };
  const chunks = Math.ceil(space.tried / CHUNK);
  const workers = Math.min(chunks, options.workers ?? availableParallelism());

  const take = (batch: Parameters<Archive['absorb']>[0], chunk: number): void => {
    archive.absorb(batch);
    setAside.float += batch.setAside.float;
    setAside.unsound += batch.setAside.unsound;
    setAside.flat += batch.setAside.flat;
    setAside.limits += batch.setAside.limits;
    progress?.({ name: 'search', done: Math.min(space.tried, (chunk + 1) * CHUNK), of: space.tried });
  };
  if (workers > 1 && chunks >= WORTH_A_WORKER) {
    await scoreOnWorkers(question, chunks, workers, take, signal);
  } else {
    const score = chunkScorer(question, space);
    for (let chunk = 0; chunk < chunks; chunk++) {
      take(score(chunk), chunk);
      // Lets a signal in between two chunks.
      await new Promise<void>((resume) => setImmediate(resume));
      signal?.throwIfAborted();
    }
  }
  const best = archive.best(question.show, (index) => codeOf(draftAt(index)));
  const found = describe(question, space, best, draftAt, progress);
  return {
    counts: {
      written: space.written,
      examined: space.tried,
      cloths: archive.cloths,
      equals: archive.duplicates,
      setAside,
      exhaustive: space.exhaustive,
    },
    found,
  };
}

/** Everything that is said of the cloths shown. */
function describe(
  question: Question,
  space: Space,
  best: readonly Kept[],
  draftAt: (index: number) => Draft,
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
  return best.map(({ index, equals }, place): Found => {
    const candidate = space.at(index);
    const { family, warp, weft, start } = candidate;
    const draft = draftAt(index);
    const novel = question.rank.novelty > 0;
    const classics = novel ? measuredClassics(family.weave(warp, weft), question.sett) : [];
    const scored = scoreDraft(draft, { weights: question.rank, floatLimit: question.limits.float, classics });
    const cloth = gathered(colourFace(drawdown(draft), draft.warp, draft.weft), value, across / along);
    const twin = shown.find((better) => nearTwins(better.cloth, cloth, ways));
    shown.push({ code: scored.code, cloth });
    progress?.({ name: 'describe', done: place + 1, of: best.length });
    return {
      rank: place + 1,
      code: scored.code,
      recipe: recipeOf(candidate, question),
      structure: family.structure,
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

/** Which of two drafts has the warp, or else the weft, that sorts first in palette order. */
function compareColours(a: Draft, b: Draft): number {
  return compareWords(a.warp, b.warp) || compareWords(a.weft, b.weft);
}

function compareWords(a: readonly number[], b: readonly number[]): number {
  const n = Math.min(a.length, b.length);
  for (let s = 0; s < n; s++) if (a[s] !== b[s]) return a[s]! - b[s]!;
  return a.length - b.length;
}
