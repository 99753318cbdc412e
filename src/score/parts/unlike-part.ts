import type { ScorePart } from './score-part.js';

export const unlikePart = {
  name: 'unlike',
  words: 'unlikeness to the structure alone',
  means: 'unlike what the structure shows with a dark warp and a light weft, for which it is 0',
  needs: ['unlike'],
  of: ({ unlike }) => unlike,
} as const satisfies ScorePart;
