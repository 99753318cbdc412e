import { buffersOf, type Job, jobRunner } from '../../search/pool/jobs.js';
import type { Question } from '../../search/question/question.js';
import { spaceOf } from '../../search/space/space.js';

/** What a worker is sent: first the question, then `count` or jobs. */
export type ToWorker = { readonly question: Question } | 'count' | { readonly number: number; readonly job: Job };

/** How many candidates a question has, and whether every one would be tried. */
export interface Counted {
  readonly candidates: number;
  readonly all: boolean;
}

/** The part of a worker's global scope that is used here. */
interface Scope {
  onmessage: ((event: { readonly data: ToWorker }) => void) | null;
  postMessage(message: unknown, transfer?: readonly ArrayBuffer[]): void;
}

/** Does what it is told, in a worker that runs the script of the page. */
export function work(scope: Scope): void {
  let asked: Question | undefined;
  let run: ReturnType<typeof jobRunner> | undefined;
  scope.onmessage = ({ data }) => {
    if (data === 'count') {
      const { count, way } = spaceOf(asked!);
      scope.postMessage({ candidates: count, all: way !== 'evolved' } satisfies Counted);
    } else if ('question' in data) {
      asked = data.question;
    } else {
      run ??= jobRunner(asked!);
      const result = run(data.job);
      scope.postMessage({ number: data.number, result }, buffersOf(result));
    }
  };
}
