import type { Measured, ScorePart } from './score-part.js';

export const contrastPart = {
  name: 'contrast',
  words: 'contrast',
  means: 'how clearly light and dark areas, or upright and level lines, stand apart once the eye has blurred them',
  weight: 3,
  of: ({ contrast }: Measured) => contrast,
} as const satisfies ScorePart;
