import type { Space } from '../space/space.js';

/**
 * What a person is told is on the safe side: a search takes longer where its repeats are large or it prunes little, and
 * one that mutates may try sixteen times as many candidates as it usually does.
 */
const SAFE: Readonly<Record<Space['way'], number>> = { scored: 2, bounded: 4, evolved: 16 };

/** How many minutes a search takes on so many threads at the most, about. */
export function minutesOf({ way, seconds }: Pick<Space, 'way' | 'seconds'>, threads: number): number {
  return (SAFE[way] * seconds) / threads / 60;
}
