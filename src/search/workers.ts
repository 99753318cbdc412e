import type { Worker } from 'node:worker_threads';
import Pool from 'worker-threads-pool';
import { MachineFault } from '../problem.js';
import type { Batch } from './batch.js';
import type { Question } from './question.js';

/** Worker threads load compiled code; beside a TypeScript source it lies in dist. */
const SCRIPT = new URL(
  import.meta.url.endsWith('.ts') ? '../../dist/search/worker.js' : './worker.js',
  import.meta.url,
);

/** How many finished chunks may wait for a slower one before it. */
const AHEAD = 64;

/**
 * Scores chunks 0 … `chunks` − 1 on worker threads and hands their batches on in order, whichever came first. Each
 * worker lives as long as there is work. A worker that dies fails the whole run with its reason.
 */
export function scoreOnWorkers(
  question: Question,
  chunks: number,
  workers: number,
  take: (batch: Batch, chunk: number) => void,
  signal?: AbortSignal,
): Promise<void> {
  return new Promise((resolve, reject) => {
    const pool = new Pool({ max: workers });
    const living = new Set<Worker>();
    const waiting = new Map<number, Batch>();
    let handedOut = 0;
    let taken = 0;
    let ended = false;

    const end = (fault?: unknown): void => {
      if (ended) return;
      ended = true;
      signal?.removeEventListener('abort', onAbort);
      for (const worker of living) {
        if (fault === undefined) worker.postMessage('stop');
        else void worker.terminate();
      }
      if (fault === undefined) resolve();
      else reject(fault);
    };
    const onAbort = (): void => end(signal!.reason);
    if (signal?.aborted) return end(signal.reason);
    signal?.addEventListener('abort', onAbort);

    const idle: Worker[] = [];
    const feed = (): void => {
      while (idle.length > 0 && handedOut < chunks && handedOut < taken + AHEAD) {
        idle.pop()!.postMessage(handedOut++);
      }
    };
    const finished = (chunk: number, batch: Batch): void => {
      waiting.set(chunk, batch);
      for (let next = waiting.get(taken); next !== undefined; next = waiting.get(taken)) {
        waiting.delete(taken);
        take(next, taken++);
      }
      if (taken === chunks) end();
      else feed();
    };

    for (let w = 0; w < workers; w++) {
      // The types ask for a string, the worker takes a URL: the only form that is right on every system.
      pool.acquire(SCRIPT as unknown as string, { workerData: question }, (error, worker) => {
        if (error || worker === undefined)
          return end(error ?? new MachineFault('a worker thread could not be started'));
        living.add(worker);
        worker.on('error', (fault) => end(fault));
        worker.on('messageerror', (fault) => end(fault));
        worker.on('exit', (exit) => {
          living.delete(worker);
          if (!ended) end(new MachineFault(`a worker thread ended before its work was done (exit ${exit})`));
        });
        worker.on('message', ({ chunk, batch }: { chunk: number; batch: Batch }) => {
          if (ended) return;
          idle.push(worker);
          try {
            finished(chunk, batch);
          } catch (fault) {
            end(fault);
          }
        });
        idle.push(worker);
        feed();
      });
    }
  });
}
