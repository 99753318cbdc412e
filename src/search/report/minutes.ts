import type { Question } from '../question/question.js';
import { foretold, type Space } from '../space/space.js';

/** Candidates that one thread measures in a second: a rough guess, on the safe side. */
const MEASURED = 10_000;
/** Candidates that one thread holds against their bounds in a second, by what foretells their scores. */
const HELD = { nothing: MEASURED, forms: 30_000 } as const;
/** Tables hold whole classes of candidates at once: the time grows as the square root of their number. */
const ROOT_A_SECOND = 100;

/** What the time depends on. */
export type Sized = Pick<Space, 'way' | 'count' | 'numbers' | 'families'>;

/** About how many minutes a search takes on so many threads. */
export function minutesOf(question: Question, { way, count, numbers, families }: Sized, threads: number): number {
  return seconds() / threads / 60;

  function seconds(): number {
    if (way === 'evolved') return (numbers * question.tries) / MEASURED;
    if (way === 'scored') return count / MEASURED;
    const by = foretold(question, families);
    return by === 'tables' ? Math.sqrt(count) / ROOT_A_SECOND : count / HELD[by];
  }
}
