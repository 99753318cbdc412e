import { expect, test } from 'vitest';
import type { Job, JobResult } from '../../../src/search/pool/jobs.js';
import { inWorkers, type PoolWorker, type WorkerEvents } from '../../../src/search/pool/pool.js';

const RESULT = {} as JobResult;

/** Workers that keep their jobs until they are told to have done them. */
function slowWorkers(count: number) {
  let events: WorkerEvents | undefined;
  const out = new Map<number, { readonly worker: number; readonly job: Job }>();
  const workers = Array.from(
    { length: count },
    (_, worker): PoolWorker => ({
      room: 1,
      do: (number, job) => out.set(number, { worker, job }),
      dismiss: () => {},
      kill: () => {},
    }),
  );
  const pool = inWorkers((told) => {
    events = told;
    for (const worker of workers) told.started(worker);
  });
  const done = (number: number): void => {
    const { worker } = out.get(number)!;
    out.delete(number);
    events!.done(workers[worker]!, number, RESULT);
  };
  return { pool, out, done };
}

const jobs = (blocks: readonly number[]) => ({
  count: blocks.length,
  at: (job: number): Job => ({ kind: 'promise', block: blocks[job]!, from: 0, to: 1, most: 1 }),
});

test('a worker goes on with the blocks that it knows, and results are taken in order', async () => {
  const { pool, out, done } = slowWorkers(2);
  const blocks = [0, 0, 0, 1, 1, 1];
  const by: number[] = [];
  const taken: number[] = [];
  const finished = pool.run(jobs(blocks), (_, job) => taken.push(job));
  while (out.size > 0) {
    const [number, { worker }] = [...out][0]!;
    by[number] = worker;
    done(number);
  }
  expect(await finished).toBe(6);
  expect(taken).toEqual([0, 1, 2, 3, 4, 5]);
  expect(new Set(by.slice(0, 3)).size).toBe(1);
  expect(new Set(by).size).toBe(2);
  // The blocks belong to the same workers in the next run, whatever the order.
  const again = pool.run(jobs([1, 0]), () => {});
  expect(out.get(0)!.worker).toBe(by[3]);
  expect(out.get(1)!.worker).toBe(by[0]);
  done(0);
  done(1);
  expect(await again).toBe(2);
});

test('a worker without work helps with the blocks of another', async () => {
  const { pool, out, done } = slowWorkers(2);
  const finished = pool.run(jobs([0, 0, 0]), () => {});
  expect([...out.keys()]).toEqual([0, 1]);
  done(0);
  done(1);
  done(2);
  expect(await finished).toBe(3);
});

test('a run that is ended early has done all jobs before the last that was begun', async () => {
  const { pool, out, done } = slowWorkers(2);
  const enough = new AbortController();
  const finished = pool.run(jobs([0, 0, 0, 1, 2]), () => {}, enough.signal);
  // The second worker has begun block 1, and so job 3.
  expect([...out.keys()]).toEqual([0, 3]);
  enough.abort();
  while (out.size > 0) done([...out.keys()][0]!);
  expect(await finished).toBe(4);
});
