import { buffersOf, type Job, type JobResult, jobRunner } from '../../search/pool/jobs.js';
import type { Question } from '../../search/question/question.js';

/** What a worker that does jobs is sent: first the question, then jobs. */
export type ToWorker = { readonly question: Question } | { readonly number: number; readonly job: Job };
/** What it sends back for each job. */
export type Did = { readonly number: number; readonly result: JobResult };

/** The part of a worker's global scope that is used here. */
export interface Scope {
  onmessage: ((event: { readonly data: ToWorker }) => void) | null;
  postMessage(message: unknown, transfer?: readonly ArrayBuffer[]): void;
}

/** Does the jobs that it is sent, in a worker. */
export function work(scope: Scope): void {
  let run: ReturnType<typeof jobRunner> | undefined;
  scope.onmessage = ({ data }) => {
    if ('question' in data) {
      run = jobRunner(data.question);
      return;
    }
    const result = run!(data.job);
    scope.postMessage({ number: data.number, result } satisfies Did, buffersOf(result));
  };
}
