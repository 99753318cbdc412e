/**
 * How near a search by kinds has come to the best there is (Mouret and Clune 2015): for every cell the score found over
 * the best possible score, 0 where nothing was found; the mean over all cells that can be reached (reliability), and
 * over those that were (precision).
 */
export function graded(
  possible: ReadonlyMap<number, number>,
  found: ReadonlyMap<number, number>,
): { readonly coverage: number; readonly total: number; readonly reliability: number; readonly precision: number } {
  const shares = [...possible].map(([cell, best]) => (found.get(cell) ?? 0) / best);
  const sum = (list: Iterable<number>): number => [...list].reduce((total, each) => total + each, 0);
  return {
    coverage: found.size / possible.size,
    total: sum(found.values()),
    reliability: sum(shares) / possible.size,
    precision: sum(shares) / found.size,
  };
}
