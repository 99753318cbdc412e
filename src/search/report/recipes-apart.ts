import type { Found } from '../strategy/outcome.js';

/** Recipes divided into what all cloths share, said once, and what sets each apart. */
export interface RecipesApart {
  /** Parts that all of several cloths share, such as the structure of all; none for a single cloth. */
  readonly shared: readonly string[];
  /** The other parts of each recipe; empty if a cloth has none. */
  readonly apart: ReadonlyMap<Found, string>;
}

/** Divides recipes. `recipeOf`: the recipe meant, the whole one or the one without the orders. */
export function recipesApart(
  found: readonly Found[],
  recipeOf: (found: Found) => string = ({ recipe }) => recipe,
): RecipesApart {
  const parts = found.map((each) => [...new Set(recipeOf(each).split(', '))]);
  const isShared = (part: string): boolean => found.length > 1 && parts.every((own) => own.includes(part));
  const shared = (parts[0] ?? []).filter(isShared);
  const own = (at: number): string => parts[at]!.filter((part) => !shared.includes(part)).join(', ');
  return { shared, apart: new Map(found.map((each, at) => [each, own(at)])) };
}
