import type { Measured, ScorePart } from './score-part.js';

/** From this difference to the nearest classic on (0 to 1), newness is 1. Few orders differ by more. */
export const NOVEL = 0.1;

export const noveltyPart = {
  name: 'novelty',
  words: 'distance from the classic orders',
  means: 'how far it is from the orders that every weaver has seen; the nearest of them is named',
  needs: ['novelty'],
  of: ({ novelty }: Measured) => novelty,
} as const satisfies ScorePart;

/** 1 from a difference of a tenth to the nearest classic on (a choice of ours), less towards 0. */
export const newnessPart = {
  name: 'newness',
  words: 'newness beside the classic orders',
  means: 'how far it is from the classic orders, counted fully from a tenth on',
  needs: ['novelty'],
  of: ({ novelty }: Measured) => Math.min(1, novelty / NOVEL),
} as const satisfies ScorePart;
