import { MachineFault } from '../../problem.js';
import { inWorkers, type PoolWorker, type WorkerPool } from '../../search/pool/pool.js';
import type { Question } from '../../search/question/question.js';
import type { Did, ToWorker } from './at-work.js';

/** A pool of workers of this browser, each started by `start`. */
export function browserPool(
  start: () => Worker,
  question: Question,
  workers: number,
  signal?: AbortSignal,
): WorkerPool {
  return inWorkers((events) => {
    for (let w = 0; w < workers; w++) {
      const worker = start();
      worker.postMessage({ question } satisfies ToWorker);
      const pooled: PoolWorker = {
        room: 2,
        do: (number, job) => worker.postMessage({ number, job } satisfies ToWorker),
        dismiss: () => worker.terminate(),
        kill: () => worker.terminate(),
      };
      worker.onerror = (event) => events.failed(faultOf(event));
      worker.onmessage = ({ data }: MessageEvent<Did>) => events.done(pooled, data.number, data.result);
      events.started(pooled);
    }
  }, signal);
}

/** What is said of a worker that failed. */
export function faultOf({ message }: Pick<ErrorEvent, 'message'>): MachineFault {
  return new MachineFault(`a worker of this browser failed${message ? ` (${message})` : ''}`);
}
