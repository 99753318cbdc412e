import type { Question } from '../../search/question/question.js';
import { minutesOf } from '../../search/report/minutes.js';
import { spaceOf } from '../../search/space/space.js';
import { counted as countedIn, grouped, plural } from '../../words/counts.js';

/** How large a question is. */
export interface Counted {
  readonly candidates: number;
  /** How many of them are tried at the most; undefined if every one is. */
  readonly atMost?: number;
  /** About how long the search takes. */
  readonly minutes: number;
}

/** A search that takes longer than so many minutes is better left to the command. */
const TOO_LONG = 5;
/** More candidates than anyone can picture are not counted. */
const COUNTLESS = 1e15;

export function counted(question: Question, workers: number): Counted {
  const space = spaceOf(question);
  return {
    candidates: space.count,
    ...(space.way === 'evolved' && { atMost: space.numbers * question.tries }),
    minutes: minutesOf(space, workers),
  };
}

/** Whether the command should answer the question, which may be stopped and go on, and needs no open window. */
export function isTooLarge({ minutes }: Counted): boolean {
  return minutes > TOO_LONG;
}

/** `1,111 candidates: every one will be tried.` */
export function countInWords({ candidates, atMost, minutes }: Counted): string {
  const many =
    candidates < COUNTLESS ? `${grouped(candidates)} ${plural(candidates, 'candidate')}` : 'More than 10¹⁵ candidates';
  const wait = minutes < 1 ? '' : ` It takes about ${countedIn(Math.round(minutes), 'minute')}.`;
  const tried =
    atMost === undefined
      ? 'every one will be tried.'
      : `too many to try them all. Up to ${grouped(atMost)} will be, and the best found varied further.`;
  return `${many}: ${tried}${wait}`;
}
