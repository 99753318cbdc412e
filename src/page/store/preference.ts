import type { Found } from '../../search/strategy/outcome.js';

/** A figure by which a liking is told, with the words for more and for less of it. */
interface Trait {
  readonly more: string;
  readonly less: string;
  of(found: Found): number;
}

export const TRAITS: readonly Trait[] = [
  { more: 'light and dark in areas', less: 'light and dark evenly mixed', of: ({ scores }) => scores.tone },
  { more: 'fine lines that cross', less: 'no fine lines', of: ({ scores }) => scores.line },
  { more: 'figures', less: 'stripes and checks', of: ({ scores }) => scores.figure },
  { more: 'turns and mirrors', less: 'few turns or mirrors', of: ({ scores }) => scores.symmetry },
  { more: 'dark', less: 'light', of: ({ scores }) => scores.darkShare },
  { more: 'large repeats', less: 'small repeats', of: ({ draft }) => Math.log(draft.warp.length * draft.weft.length) },
  { more: 'longer floats', less: 'shorter floats', of: ({ scores }) => Math.min(scores.floats.longest ?? 50, 50) },
  {
    more: 'many colour changes',
    less: 'few colour changes',
    of: ({ draft, ease }) => ease.warpChanges / draft.warp.length,
  },
];

/** A preference model, fitted to a person's stars. */
export interface Preference {
  /** For each trait, the stars gained by a figure one standard deviation above the mean of all cloths. */
  readonly weights: readonly number[];
  /** The stars that the model predicts for a cloth. */
  stars(found: Found): number;
}

/** Fewest starred cloths for a model. */
export const LEAST_STARRED = 3;
/** Ridge parameter λ, in cloths: pulls the weights towards 0, so that few stars show only strong preferences. */
const DISTRUST = 2;

/**
 * Fits the model: ridge regression of the stars on the figures, standardised over all cloths. Undefined if fewer than
 * three cloths have stars.
 */
export function preferenceOf(
  all: readonly Found[],
  starred: readonly (readonly [Found, number])[],
): Preference | undefined {
  if (starred.length < LEAST_STARRED) return undefined;
  const scales = TRAITS.map((trait) => {
    const values = all.map((found) => trait.of(found));
    const middle = mean(values);
    const spread = Math.sqrt(mean(values.map((value) => (value - middle) ** 2)));
    return { middle, spread };
  });
  const standing = (found: Found): number[] =>
    TRAITS.map((trait, t) => {
      const { middle, spread } = scales[t]!;
      return spread < 1e-12 ? 0 : (trait.of(found) - middle) / spread;
    });
  const usual = mean(starred.map(([, stars]) => stars));
  const rows = starred.map(([found]) => standing(found));
  const centre = TRAITS.map((_, t) => mean(rows.map((row) => row[t]!)));
  const apart = rows.map((row) => row.map((value, t) => value - centre[t]!));
  const products = TRAITS.map((_, a) =>
    TRAITS.map((_, b) => apart.reduce((sum, row) => sum + row[a]! * row[b]!, a === b ? DISTRUST : 0)),
  );
  const answers = TRAITS.map((_, a) => apart.reduce((sum, row, n) => sum + row[a]! * (starred[n]![1] - usual), 0));
  const weights = solved(products, answers);
  return {
    weights,
    stars: (found) => standing(found).reduce((sum, value, t) => sum + weights[t]! * (value - centre[t]!), usual),
  };
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** Solves a system with a positive definite matrix (Gauss, no pivoting needed). */
function solved(matrix: readonly (readonly number[])[], right: readonly number[]): number[] {
  const rows = matrix.map((row, r) => [...row, right[r]!]);
  const n = rows.length;
  for (let p = 0; p < n; p++) {
    for (let r = p + 1; r < n; r++) {
      const factor = rows[r]![p]! / rows[p]![p]!;
      for (let c = p; c <= n; c++) rows[r]![c] = rows[r]![c]! - factor * rows[p]![c]!;
    }
  }
  const answer = new Array<number>(n).fill(0);
  for (let p = n - 1; p >= 0; p--) {
    let sum = rows[p]![n]!;
    for (let c = p + 1; c < n; c++) sum -= rows[p]![c]! * answer[c]!;
    answer[p] = sum / rows[p]![p]!;
  }
  return answer;
}
