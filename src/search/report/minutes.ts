import type { Question } from '../question/question.js';
import { foretold, type Space } from '../space/space.js';

/** Candidates that one thread measures in a second, about: two to four times as many where no look is weighed. */
const MEASURED = 40_000;
/** The same where they are mutated, and each is measured to the end. */
const MUTATED = 10_000;
/** A search that mutates usually settles after this share of the most that it may score. */
const SETTLED = 1 / 16;
/** Candidates that one thread holds against their bounds in a second, by what foretells their scores. */
const HELD = { nothing: MEASURED, forms: 400_000 } as const;
/** Tables hold whole classes of candidates at once: the time grows as the square root of their number. */
const ROOT_A_SECOND = 400;
/** What a person is told is on the safe side: large repeats take so many times as long. */
const SAFE = 4;

/** What the time depends on. */
export type Sized = Pick<Space, 'way' | 'count' | 'numbers' | 'families'>;

/** About how many seconds a search takes on one thread. */
export function secondsOf(question: Question, { way, count, numbers, families }: Sized): number {
  if (way === 'evolved') return (SETTLED * numbers * question.tries) / MUTATED;
  if (way === 'scored') return count / MEASURED;
  const by = foretold(question, families);
  return by === 'tables' ? Math.sqrt(count) / ROOT_A_SECOND : count / HELD[by];
}

/** How many minutes a search takes on so many threads at the most, about. */
export function minutesOf(question: Question, space: Sized, threads: number): number {
  return ((space.way === 'evolved' ? 1 / SETTLED : SAFE) * secondsOf(question, space)) / threads / 60;
}
