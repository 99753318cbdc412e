/** The library for browsers: the same names as in Node, and the same results. */
import { browserPool } from '../../page/workers/browser-pool.js';
import { answer } from '../../search/answer.js';
import { inThisThread } from '../../search/pool/pool.js';
import { spaceOf } from '../../search/space/space.js';
import { answered, type ExploreOptions, type Gallery, noFile, type Values } from '../engine.js';

export { draft, draftIn, draftText, Problem, score, structures } from '../engine.js';

/** As in Node; its workers run `browser-worker.js`, which lies beside this file. */
export async function explore(question: string | Values, options: ExploreOptions = {}): Promise<Gallery> {
  const { readDraft = noFile, onStage: progress, signal, workers = navigator.hardwareConcurrency || 2 } = options;
  return answered(question, readDraft, (asked) => {
    const start = (): Worker => new Worker(new URL('./browser-worker.js', import.meta.url), { type: 'module' });
    const space = spaceOf(asked);
    const pool = (worth: number) => {
      const count = Math.min(worth, workers);
      return count > 1 ? browserPool(start, asked, count, signal) : inThisThread(asked, signal, space);
    };
    return answer(asked, space, { pool, progress, signal });
  });
}
