import type { Found } from '../strategy/outcome.js';

/**
 * The recipes without the parts that all of them share, such as the structure of all; of a single cloth, in full.
 * `recipeOf`: the recipe meant, the whole one or the one without the orders.
 */
export function recipesApart(
  found: readonly Found[],
  recipeOf: (found: Found) => string = ({ recipe }) => recipe,
): Map<Found, string> {
  const parts = found.map((each) => [...new Set(recipeOf(each).split(', '))]);
  const times = new Map<string, number>();
  for (const part of parts.flat()) times.set(part, (times.get(part) ?? 0) + 1);
  const shared = (part: string): boolean => times.get(part) === found.length;
  return new Map(
    found.map((each, at) => {
      const apart = parts[at]!.filter((part) => !shared(part));
      return [each, apart.length === 0 ? recipeOf(each) : apart.join(', ')];
    }),
  );
}
