import type { ScorePart } from './score-part.js';

export const symmetryPart = {
  name: 'symmetry',
  words: 'symmetry',
  means: 'mirrors, turns and exchanges of dark and light that carry the cloth to itself; 1 for all of them',
  needs: [],
  weight: 2,
  hasBound: true,
  of: ({ symmetry }) => symmetry,
} as const satisfies ScorePart;
