import { parentPort, workerData } from 'node:worker_threads';
import { chunkScorer } from './chunk.js';
import type { Question } from './question.js';

/** Scores the chunks it is sent; closes when told to stop. */
const port = parentPort!;
const score = chunkScorer(workerData as Question);

port.on('message', (chunk: number | 'stop') => {
  if (chunk === 'stop') {
    port.close();
    return;
  }
  const batch = score(chunk);
  port.postMessage({ chunk, batch }, [
    batch.index.buffer,
    batch.score.buffer,
    batch.area.buffer,
    batch.preference.buffer,
    batch.key.buffer,
  ]);
});
