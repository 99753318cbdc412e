import type { Counts } from '../strategy/outcome.js';

/**
 * Trials of the search by changes, where the best cloth is known because every candidate was scored too. They are what
 * `npm run bench -- changes` found and keeps in tests/bench/trials.json.
 */
export const TRIALS = { questions: 15, searches: 300, foundBest: 294, leastShare: 0.9988 } as const;

/** How sure a search is that varied the best found, in a sentence; undefined where it went another way, or was stopped. */
export function sureness({ evolved, stopped }: Pick<Counts, 'evolved' | 'stopped'>): string | undefined {
  if (evolved === undefined || stopped) return undefined;
  const { questions, searches, foundBest, leastShare } = TRIALS;
  return (
    `In trials on ${questions} questions small enough to try every candidate, such a search scored one candidate in a ` +
    `hundred; it found the best cloth ${foundBest} times of ${searches}, and always one with at least ` +
    `${Math.floor(leastShare * 1000) / 10} % of its score.`
  );
}
