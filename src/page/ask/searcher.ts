import { MachineFault } from '../../problem.js';
import { answer } from '../../search/answer.js';
import type { JobResult } from '../../search/pool/jobs.js';
import { inWorkers, type PoolWorker, type WorkerPool } from '../../search/pool/pool.js';
import type { Question } from '../../search/question/question.js';
import { spaceOf } from '../../search/space/space.js';
import type { Outcome } from '../../search/strategy/outcome.js';
import type { Stage } from '../../search/strategy/strategies.js';
import type { Counted, ToWorker } from './at-work.js';

/** Starts searches in workers of the browser, which run the script of the page. */
export class Searcher {
  private readonly address: string;
  private counter: Worker | undefined;

  /** @param script the text of the page's own script */
  constructor(script: string) {
    this.address = URL.createObjectURL(new Blob([script], { type: 'text/javascript' }));
  }

  /** Counts the candidates of a question. An earlier count that has not ended never ends. */
  count(question: Question): Promise<Counted> {
    this.counter?.terminate();
    const worker = toldOf(question, new Worker(this.address));
    this.counter = worker;
    return new Promise((resolve, reject) => {
      worker.onmessage = ({ data }: MessageEvent<Counted>) => {
        worker.terminate();
        resolve(data);
      };
      worker.onerror = (event) => reject(faultOf(event));
      worker.postMessage('count' satisfies ToWorker);
    });
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
  ): Promise<Outcome> {
    const most = navigator.hardwareConcurrency || 2;
    const start = () => new Worker(this.address);
    const pool = (worth: number) => workersOf(start, question, Math.max(1, Math.min(worth, most)), signal);
    return answer(question, spaceOf(question), { pool, progress, enough, signal });
  }
}

/** A pool of workers of this browser, each started by `start`. */
export function workersOf(start: () => Worker, question: Question, workers: number, signal?: AbortSignal): WorkerPool {
  return inWorkers((events) => {
    for (let w = 0; w < workers; w++) {
      const worker = toldOf(question, start());
      const pooled: PoolWorker = {
        do: (number, job) => worker.postMessage({ number, job } satisfies ToWorker),
        dismiss: () => worker.terminate(),
        kill: () => worker.terminate(),
      };
      worker.onerror = (event) => events.failed(faultOf(event));
      worker.onmessage = ({ data }: MessageEvent<{ number: number; result: JobResult }>) =>
        events.done(pooled, data.number, data.result);
      events.started(pooled);
    }
  }, signal);
}

function toldOf(question: Question, worker: Worker): Worker {
  worker.postMessage({ question } satisfies ToWorker);
  return worker;
}

function faultOf({ message }: ErrorEvent): MachineFault {
  return new MachineFault(`a worker of this browser failed${message ? ` (${message})` : ''}`);
}
