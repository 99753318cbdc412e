import type { Worker } from 'node:worker_threads';
import Pool from 'worker-threads-pool';
import { MachineFault } from '../../problem.js';
import type { Question } from '../question/question.js';
import { type JobResult, type Jobs, jobRunner } from './jobs.js';

/** Worker threads load compiled code; beside a TypeScript source it lies in dist. */
const SCRIPT = new URL(
  import.meta.url.endsWith('.ts') ? '../../../dist/search/pool/worker.js' : './worker.js',
  import.meta.url,
);

/** How many finished jobs may wait for a slower one before them. */
const AHEAD = 64;

/** The worker pool of one search. */
export interface WorkerPool {
  /**
   * Does `jobs` and passes their results to `take` in the order of job numbers, whichever ended first. After `enough`
   * is aborted no further job is begun.
   *
   * @returns how many jobs were done: those with the lowest numbers
   */
  run(jobs: Jobs, take: (result: JobResult, job: number) => void, enough?: AbortSignal): Promise<number>;
  /** Ends the workers. */
  close(): void;
}

/** A pool of worker threads; with a single worker, this thread does the jobs itself. */
export function workerPool(question: Question, workers: number, signal?: AbortSignal): WorkerPool {
  return workers > 1 ? inWorkers(question, workers, signal) : inThisThread(question, signal);
}

function inThisThread(question: Question, signal?: AbortSignal): WorkerPool {
  const runJob = jobRunner(question);
  return {
    run: async (jobs, take, enough) => {
      for (let job = 0; job < jobs.count; job++) {
        signal?.throwIfAborted();
        if (enough?.aborted) return job;
        take(runJob(jobs.at(job)), job);
        // Gives an abort signal the chance to arrive between two jobs.
        await new Promise<void>((resume) => setImmediate(resume));
      }
      signal?.throwIfAborted();
      return jobs.count;
    },
    close: () => {},
  };
}

/** One call of `run`: jobs sent to workers, results that wait for a lower number, and the callbacks. */
interface Run {
  readonly jobs: Jobs;
  readonly take: (result: JobResult, job: number) => void;
  readonly waiting: Map<number, JobResult>;
  readonly enough: AbortSignal | undefined;
  readonly finished: (done: number) => void;
  handedOut: number;
  taken: number;
}

/**
 * Long-lived workers that each do one job at a time. If a worker dies, the run fails with the reason; the pool library
 * would ignore it.
 */
function inWorkers(question: Question, workers: number, signal?: AbortSignal): WorkerPool {
  const pool = new Pool({ max: workers });
  const living = new Set<Worker>();
  const idle: Worker[] = [];
  let run: Run | undefined;
  let fail: (fault: unknown) => void = () => {};
  let fault: unknown;
  let left = false;

  const stop = (reason: unknown): void => {
    fault ??= reason;
    for (const worker of living) void worker.terminate();
    living.clear();
    fail(fault);
  };
  const onAbort = (): void => stop(signal!.reason);
  signal?.addEventListener('abort', onAbort);

  const feed = (): void => {
    while (run && idle.length > 0 && run.handedOut < Math.min(run.jobs.count, run.taken + AHEAD)) {
      if (run.enough?.aborted) break;
      const job = run.handedOut++;
      idle.pop()!.postMessage({ number: job, job: run.jobs.at(job) });
    }
  };
  const goOn = (): void => {
    if (!run) return;
    const last = run.enough?.aborted ? run.handedOut : run.jobs.count;
    if (run.taken === last) run.finished(run.taken);
    else feed();
  };
  const received = (number: number, result: JobResult): void => {
    if (!run) return;
    run.waiting.set(number, result);
    for (let next = run.waiting.get(run.taken); next !== undefined; next = run.waiting.get(run.taken)) {
      run.waiting.delete(run.taken);
      run.take(next, run.taken++);
    }
    goOn();
  };

  for (let w = 0; w < workers; w++) {
    // The types ask for a string, the worker takes a URL: the only form that is right on every system.
    pool.acquire(SCRIPT as unknown as string, { workerData: question }, (error, worker) => {
      if (error || worker === undefined) return stop(error ?? new MachineFault('a worker thread could not be started'));
      if (left || fault !== undefined) return void worker.terminate();
      living.add(worker);
      worker.on('error', stop);
      worker.on('messageerror', stop);
      worker.on('exit', (exit) => {
        if (living.delete(worker)) stop(new MachineFault(`a worker thread ended before its work was done (${exit})`));
      });
      worker.on('message', ({ number, result }: { number: number; result: JobResult }) => {
        idle.push(worker);
        try {
          received(number, result);
        } catch (thrown) {
          stop(thrown);
        }
      });
      idle.push(worker);
      feed();
    });
  }

  return {
    run: (jobs, take, enough) =>
      new Promise<number>((resolve, reject) => {
        fail = reject;
        if (signal?.aborted) stop(signal.reason);
        if (fault !== undefined) return reject(fault);
        enough?.addEventListener('abort', goOn);
        run = {
          jobs,
          take,
          enough,
          waiting: new Map(),
          handedOut: 0,
          taken: 0,
          finished: (done) => {
            enough?.removeEventListener('abort', goOn);
            run = undefined;
            resolve(done);
          },
        };
        goOn();
      }),
    close: () => {
      left = true;
      signal?.removeEventListener('abort', onAbort);
      for (const worker of living) worker.postMessage('stop');
      living.clear();
    },
  };
}
