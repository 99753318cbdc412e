import type { Batch } from './batch.js';
import type { Candidate } from './candidate.js';
import { evaluator } from './evaluate.js';
import type { Question } from './question.js';
import { type Space, spaceOf } from './space.js';

/** Candidates scored in one go: some tens of milliseconds of work. */
export const CHUNK = 2048;

/** Scores stretches of a question's space by their number; what a worker does, and what runs without one. */
export function chunkScorer(question: Question, space: Space = spaceOf(question)): (chunk: number) => Batch {
  const evaluate = evaluator(question);
  return (chunk) => {
    const from = chunk * CHUNK;
    const to = Math.min(space.tried, from + CHUNK);
    return evaluate(stretch(space, from, to), to - from);
  };
}

function* stretch(space: Space, from: number, to: number): Generator<readonly [number, Candidate]> {
  for (let index = from; index < to; index++) yield [index, space.at(index)];
}
