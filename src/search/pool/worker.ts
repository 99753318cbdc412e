import { parentPort, workerData } from 'node:worker_threads';
import type { Question } from '../question/question.js';
import { buffersOf, type Job, jobRunner } from './jobs.js';

/** Does the jobs it is sent; closes when told to stop. */
const port = parentPort!;
const run = jobRunner(workerData as Question);

port.on('message', (message: { number: number; job: Job } | 'stop') => {
  if (message === 'stop') {
    port.close();
    return;
  }
  const result = run(message.job);
  port.postMessage({ number: message.number, result }, buffersOf(result));
});
