import type { ScorePart } from './score-part.js';

export const contrastPart = {
  name: 'contrast',
  words: 'contrast',
  means: 'motif contrast: how clearly the pattern is seen, as areas or as lines; 1 for black beside white',
  needs: [],
  weight: 3,
  hasBound: true,
  of: ({ contrast }) => contrast,
} as const satisfies ScorePart;
