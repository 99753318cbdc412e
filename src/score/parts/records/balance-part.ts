import type { Measured, ScorePart } from './score-part.js';

export const balancePart = {
  name: 'balance',
  words: 'balance of dark and light',
  means: 'as much dark as light on the face; 0 for one of them alone',
  of: ({ darkShare }: Measured) => 1 - Math.abs(2 * darkShare - 1),
} as const satisfies ScorePart;
