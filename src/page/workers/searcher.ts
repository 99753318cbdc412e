import { Problem } from '../../problem.js';
import type { Question } from '../../search/question/question.js';
import type { Stage } from '../../search/strategy/strategies.js';
import { faultOf } from './browser-pool.js';
import type { Counted } from './counted.js';
import { type Said, scriptAddress, type Wanted } from './search-worker.js';

/** What a search found. */
export type Answer = Extract<Said, { readonly answered: unknown }>['answered'];

/** Starts searches in workers of the browser, which run the script of the page. */
export class Searcher {
  private readonly script: string;
  private readonly address: string;
  private counter: Worker | undefined;
  private readonly workers = navigator.hardwareConcurrency || 2;

  /** @param script the text of the page's own script */
  constructor(script: string) {
    this.script = script;
    this.address = scriptAddress(script);
  }

  /** Counts the candidates of a question. An earlier count that has not ended never ends. */
  count(question: Question): Promise<Counted> {
    this.counter?.terminate();
    this.counter = new Worker(this.address);
    return told(this.counter, { count: question, workers: this.workers }, (said) =>
      'counted' in said ? said.counted : undefined,
    );
  }

  /**
   * Answers a question with a worker for every core.
   *
   * @param enough aborted: the search ends with what it has found
   * @param signal aborted: the search rejects
   */
  search(
    question: Question,
    progress: (stage: Stage) => void,
    enough: AbortSignal,
    signal: AbortSignal,
  ): Promise<Answer> {
    const worker = new Worker(this.address);
    enough.addEventListener('abort', () => worker.postMessage('enough' satisfies Wanted));
    const answered = told(worker, { answer: question, workers: this.workers, script: this.script }, (said) => {
      if ('stage' in said) progress(said.stage);
      return 'answered' in said ? said.answered : undefined;
    });
    const stopped = new Promise<never>((_, reject) => {
      signal.addEventListener('abort', () => {
        worker.terminate();
        reject(signal.reason);
      });
    });
    return Promise.race([answered, stopped]);
  }
}

/** Tells a worker what is wanted, and ends it once `take` has had what it waits for. */
function told<T>(worker: Worker, wanted: Wanted, take: (said: Said) => T | undefined): Promise<T> {
  return new Promise<T>((resolve, reject) => {
    worker.onmessage = ({ data }: MessageEvent<Said>) => {
      const taken = take(data);
      if (taken === undefined && !('fault' in data)) return;
      worker.terminate();
      if (taken !== undefined) resolve(taken);
      else if ('fault' in data) reject(new Problem(data.fault));
    };
    worker.onerror = (event) => reject(faultOf(event));
    worker.postMessage(wanted);
  });
}
