import type { Measured, ScorePart } from './score-part.js';

/** 1 for one colour and one shuttle, lower with each change (a choice of ours). */
export const easePart = {
  name: 'ease',
  words: 'ease of weaving',
  means: 'few colour changes for the length of a repeat, few shuttles; 1 for one colour and one shuttle',
  of: ({ ease, ends, picks }: Measured) =>
    1 / (1 + (5 * ease.warpChanges) / ends + (5 * ease.weftChanges) / picks + (ease.shuttles - 1) / 2),
} as const satisfies ScorePart;
