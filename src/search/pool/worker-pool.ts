import Pool from 'worker-threads-pool';
import { MachineFault } from '../../problem.js';
import type { Question } from '../question/question.js';
import type { Space } from '../space/space.js';
import type { JobResult } from './jobs.js';
import { inThisThread, inWorkers, type PoolWorker, thisThread, type WorkerPool } from './pool.js';

/** Worker threads load compiled code; beside a TypeScript source it lies in dist. */
const SCRIPT = new URL(
  import.meta.url.endsWith('.ts') ? '../../../dist/search/pool/worker.js' : './worker.js',
  import.meta.url,
);

/**
 * Room in which a thread makes what it soon drops: more would make it hold a tenth more memory in a search of orders of 2
 * to 16, in hardly less time.
 */
const YOUNG_MB = 8;

/** A pool of so many threads: this one, which has the space already, and worker threads besides. */
export function workerPool(question: Question, workers: number, signal?: AbortSignal, space?: Space): WorkerPool {
  if (workers <= 1) return inThisThread(question, signal, space);
  const pool = new Pool({ max: workers - 1 });
  return inWorkers((events) => {
    events.started(thisThread(question, space, events));
    for (let w = 1; w < workers; w++) {
      // The types ask for a string, the worker takes a URL: the only form that is right on every system.
      pool.acquire(
        SCRIPT as unknown as string,
        { workerData: question, resourceLimits: { maxYoungGenerationSizeMb: YOUNG_MB } },
        (error, worker) => {
          if (error || worker === undefined) {
            return events.failed(error ?? new MachineFault('a worker thread could not be started'));
          }
          const pooled: PoolWorker = {
            room: 2,
            do: (number, job) => worker.postMessage({ number, job }),
            dismiss: () => worker.postMessage('stop'),
            kill: () => void worker.terminate(),
          };
          // The pool library would ignore a worker that dies.
          worker.on('error', events.failed);
          worker.on('messageerror', events.failed);
          worker.on('exit', (exit) =>
            events.left(pooled, new MachineFault(`a worker thread ended before its work was done (${exit})`)),
          );
          worker.on('message', ({ number, result }: { number: number; result: JobResult }) =>
            events.done(pooled, number, result),
          );
          events.started(pooled);
        },
      );
    }
  }, signal);
}
