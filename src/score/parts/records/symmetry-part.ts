import type { Measured, ScorePart } from './score-part.js';

export const symmetryPart = {
  name: 'symmetry',
  words: 'symmetry',
  means: 'half-turn, mirror, quarter-turn and diagonal symmetry, and dark and light swapped; 1 for all of them',
  weight: 2,
  of: ({ symmetry }: Measured) => symmetry,
} as const satisfies ScorePart;
