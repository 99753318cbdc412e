import { ofEachPart, PARTS, type Part, type Weights } from '../../score/parts/parts.js';

/**
 * What foretells a part of a score, of a pair of orders whose face is not made: `tables` of orders, which hold many pairs
 * against a score at once; quadratic `forms` in the two orders, pair by pair; or `nothing` but a loose bound, so that it
 * is known only from the face. See `../bounded/BOUNDS.md`.
 */
type Bound = 'tables' | 'forms' | 'nothing';

const PART_BOUNDS: Readonly<Record<Part, Bound>> = {
  ...ofEachPart(() => 'nothing' as const),
  contrast: 'tables',
  symmetry: 'tables',
  float: 'tables',
  figure: 'forms',
  figured: 'forms',
  ease: 'forms',
  balance: 'forms',
};

/** What foretells a ranking: the least that foretells a part that it weighs. */
export function boundOf(rank: Weights): Bound {
  const bounds = PARTS.filter((part) => rank[part] > 0).map((part) => PART_BOUNDS[part]);
  if (bounds.includes('nothing')) return 'nothing';
  return bounds.includes('forms') || rank.contrast === 0 ? 'forms' : 'tables';
}

/** Pairs of orders of a block from which tables pay. */
export const MANY_PAIRS = 20_000;
