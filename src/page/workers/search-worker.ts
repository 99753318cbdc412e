import { type Manifest, manifestOf } from '../../gallery/manifest/manifest.js';
import { answer } from '../../search/answer.js';
import { inThisThread } from '../../search/pool/pool.js';
import type { Question } from '../../search/question/question.js';
import { spaceOf } from '../../search/space/space.js';
import type { Outcome } from '../../search/strategy/outcome.js';
import type { Stage } from '../../search/strategy/strategies.js';
import { type Scope as JobScope, work } from './at-work.js';
import { browserPool } from './browser-pool.js';
import { type Counted, counted } from './counted.js';

/** What the page asks of its worker. */
export type Wanted =
  | { readonly count: Question; readonly workers: number }
  /** Its own workers run `script` too: it cannot reach that of the page under the address that the page has for it. */
  | { readonly answer: Question; readonly workers: number; readonly script: string }
  /** The search that goes on ends with what it has found. */
  | 'enough';

/** What the worker says to the page; `fault` is a sentence. */
export type Said =
  | { readonly counted: Counted }
  | { readonly stage: Stage }
  | { readonly answered: { readonly outcome: Outcome; readonly manifest: Manifest } }
  | { readonly fault: string };

/** The part of a worker's global scope that is used here. */
type Scope = Omit<JobScope, 'onmessage'> & { onmessage: ((event: { readonly data: never }) => void) | null };

/** An address at which a worker finds a script. */
export function scriptAddress(script: string): string {
  return URL.createObjectURL(new Blob([script], { type: 'text/javascript' }));
}

/**
 * Counts and answers questions in a worker, with further workers that do jobs: the page itself stays free. All of them
 * run the script of the page.
 */
export function serve(scope: Scope): void {
  const enough = new AbortController();
  const say = (said: Said): void => scope.postMessage(said);
  const search = async (question: Question, most: number, script: string): Promise<void> => {
    const address = scriptAddress(script);
    const start = (): Worker => new Worker(address);
    const space = spaceOf(question);
    const pool = (worth: number) => {
      const workers = Math.min(worth, most);
      return workers > 1 ? browserPool(start, question, workers) : inThisThread(question, undefined, space);
    };
    const progress = (stage: Stage): void => say({ stage });
    const outcome = await answer(question, space, { pool, progress, enough: enough.signal });
    say({ answered: { outcome, manifest: manifestOf(question, outcome) } });
  };
  const heard = async (wanted: Wanted): Promise<void> => {
    if (wanted === 'enough') enough.abort();
    else if ('count' in wanted) say({ counted: counted(wanted.count, wanted.workers) });
    else await search(wanted.answer, wanted.workers, wanted.script);
  };
  work(scope as JobScope);
  const doJobs: ((event: { readonly data: never }) => void) | null = scope.onmessage;
  scope.onmessage = (event) => {
    const data: unknown = event.data;
    if (data !== 'enough' && !('count' in (data as object)) && !('answer' in (data as object))) doJobs!(event);
    else heard(data as Wanted).catch((error: unknown) => say({ fault: (error as Error).message }));
  };
}
