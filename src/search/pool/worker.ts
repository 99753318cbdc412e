import { parentPort, workerData } from 'node:worker_threads';
import type { Question } from '../question/question.js';
import { type Job, jobRunner } from './jobs.js';

/** Does the jobs it is sent; closes when told to stop. */
const port = parentPort!;
const run = jobRunner(workerData as Question);

port.on('message', (message: { number: number; job: Job } | 'stop') => {
  if (message === 'stop') {
    port.close();
    return;
  }
  const result = run(message.job);
  const { index, score, area, preference, niche, key } = result.batch;
  port.postMessage({ number: message.number, result }, [
    index.buffer,
    score.buffer,
    area.buffer,
    preference.buffer,
    niche.buffer,
    key.buffer,
  ]);
});
