import type { Question } from '../question/question.js';
import type { Space } from '../space/space.js';
import { type Job, type JobResult, type Jobs, jobRunner } from './jobs.js';
import { pause } from './pause.js';

/** How many finished jobs may wait for a slower one before them; of jobs of blocks, whose results are small, more. */
const AHEAD = 64;
const BLOCKS_AHEAD = 256;

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

/** A pool without workers: this thread does the jobs itself. */
export function inThisThread(question: Question, signal?: AbortSignal, space?: Space): WorkerPool {
  return inWorkers((events) => events.started(thisThread(question, space, events)), signal);
}

/** This thread as a worker: between two jobs it hears what has happened meanwhile. */
export function thisThread(question: Question, space: Space | undefined, events: WorkerEvents): PoolWorker {
  const run = jobRunner(question, space);
  let ended = false;
  const end = (): void => {
    ended = true;
  };
  const worker: PoolWorker = {
    room: 1,
    do: (number, job) => {
      pause()
        .then(() => {
          if (!ended) events.done(worker, number, run(job));
        })
        .catch(events.failed);
    },
    dismiss: end,
    kill: end,
  };
  return worker;
}

/** A worker, a thread of Node or of a browser, that does one job at a time. */
export interface PoolWorker {
  /** Jobs that it is given at once: that which it does, and those that wait for it, so that it need not wait. */
  readonly room: number;
  do(number: number, job: Job): void;
  /** Tells it to end; it has nothing left to do. */
  dismiss(): void;
  /** Ends it at once. */
  kill(): void;
}

/** What a pool is told of its workers. */
export interface WorkerEvents {
  /** A worker has started. */
  started(worker: PoolWorker): void;
  /** A worker has done a job. */
  done(worker: PoolWorker, number: number, result: JobResult): void;
  /** A worker has ended; the reason counts only if it was not told to. */
  left(worker: PoolWorker, reason: unknown): void;
  /** The search cannot go on. */
  failed(reason: unknown): void;
}

/** The jobs of one call of `run`: begun nearly in order, done in any order, their results taken in order. */
class Run {
  private readonly jobs: Jobs;
  private readonly take: (result: JobResult, job: number) => void;
  private readonly enough: AbortSignal | undefined;
  private readonly owners: Map<number, PoolWorker>;
  private readonly waiting = new Map<number, JobResult>();
  /** Jobs that may be begun, in order. */
  private open: { readonly number: number; readonly job: Job }[] = [];
  private offered = 0;
  /** All jobs that were begun come before this one. */
  private end = 0;
  private taken = 0;

  constructor(owners: Map<number, PoolWorker>, ...[jobs, take, enough]: Parameters<WorkerPool['run']>) {
    this.owners = owners;
    this.jobs = jobs;
    this.take = take;
    this.enough = enough;
  }

  /** Gives workers that have room the next jobs, as far as there are any to begin now. */
  begin(given: Map<PoolWorker, number>): void {
    while (this.offered < this.jobs.count) {
      const job = this.jobs.at(this.offered);
      if (this.offered >= this.taken + ('block' in job ? BLOCKS_AHEAD : AHEAD)) break;
      this.open.push({ number: this.offered++, job });
    }
    // Those before one that was begun are done too, so that those with the lowest numbers are.
    if (this.enough?.aborted) this.open = this.open.filter(({ number }) => number < this.end);
    for (let worker = freest(given); worker !== undefined && this.open.length > 0; worker = freest(given)) {
      const [{ number, job }] = this.open.splice(this.nextFor(worker), 1) as [(typeof this.open)[number]];
      if ('block' in job && !this.owners.has(job.block)) this.owners.set(job.block, worker);
      this.end = Math.max(this.end, number + 1);
      given.set(worker, given.get(worker)! + 1);
      worker.do(number, job);
    }
  }

  /**
   * The place of the job that a worker does next: one of a block that it knows, since what is computed for a block is
   * much; else one that no other knows; else any.
   */
  private nextFor(worker: PoolWorker): number {
    const owners = this.open.map(({ job }) => ('block' in job ? this.owners.get(job.block) : undefined));
    const own = owners.indexOf(worker);
    return own >= 0 ? own : Math.max(0, owners.indexOf(undefined));
  }

  /** Takes a result, and those that waited for it. */
  received(number: number, result: JobResult): void {
    this.waiting.set(number, result);
    for (let next = this.waiting.get(this.taken); next !== undefined; next = this.waiting.get(this.taken)) {
      this.waiting.delete(this.taken);
      this.take(next, this.taken++);
    }
  }

  /** How many jobs were done, once no other will be. */
  done(): number | undefined {
    return this.taken === (this.enough?.aborted ? this.end : this.jobs.count) ? this.taken : undefined;
  }
}

/** The worker with the fewest jobs, of those that have room for another. */
function freest(given: ReadonlyMap<PoolWorker, number>): PoolWorker | undefined {
  let found: PoolWorker | undefined;
  for (const [worker, jobs] of given) {
    if (jobs < worker.room && (found === undefined || jobs < given.get(found)!)) found = worker;
  }
  return found;
}

/**
 * A pool of long-lived workers that each do one job at a time. If a worker dies, the run fails with the reason.
 *
 * @param start starts the workers, now or later, and reports what becomes of them
 */
export function inWorkers(start: (events: WorkerEvents) => void, signal?: AbortSignal): WorkerPool {
  /** The living, and how many jobs each has been given that it has not done. */
  const living = new Map<PoolWorker, number>();
  /** The worker that first did a job of each block. */
  const owners = new Map<number, PoolWorker>();
  let run: Run | undefined;
  let finish: (done: number) => void = () => {};
  let fail: (fault: unknown) => void = () => {};
  let fault: unknown;
  let closed = false;

  const stop = (reason: unknown): void => {
    fault ??= reason;
    for (const worker of living.keys()) worker.kill();
    living.clear();
    fail(fault);
  };
  const onAbort = (): void => stop(signal!.reason);
  signal?.addEventListener('abort', onAbort);

  const goOn = (): void => {
    if (run === undefined) return;
    const done = run.done();
    if (done === undefined) run.begin(living);
    else finish(done);
  };

  start({
    started(worker) {
      if (closed || fault !== undefined) return worker.kill();
      living.set(worker, 0);
      goOn();
    },
    done(worker, number, result) {
      const jobs = living.get(worker);
      // One that was told to end may still have been at its last job.
      if (jobs === undefined) return;
      living.set(worker, jobs - 1);
      try {
        run?.received(number, result);
        goOn();
      } catch (thrown) {
        stop(thrown);
      }
    },
    left(worker, reason) {
      if (living.delete(worker)) stop(reason);
    },
    failed: stop,
  });

  return {
    run: (jobs, take, enough) =>
      new Promise<number>((resolve, reject) => {
        fail = reject;
        if (signal?.aborted) stop(signal.reason);
        if (fault !== undefined) return reject(fault);
        enough?.addEventListener('abort', goOn);
        run = new Run(owners, jobs, take, enough);
        finish = (done) => {
          enough?.removeEventListener('abort', goOn);
          run = undefined;
          resolve(done);
        };
        goOn();
      }),
    close: () => {
      closed = true;
      signal?.removeEventListener('abort', onAbort);
      for (const worker of living.keys()) worker.dismiss();
      living.clear();
    },
  };
}
