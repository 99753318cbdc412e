import type { ScorePart } from './score-part.js';

/** From this difference to the nearest classic on (0 to 1), newness is 1. Few orders differ by more. */
const NOVEL = 0.1;

export const noveltyPart = {
  name: 'novelty',
  words: 'distance from the classic orders',
  means: 'the distance in figures from the nearest classic order on the same structure; 0 for a classic',
  needs: ['novelty'],
  of: ({ novelty }) => novelty,
} as const satisfies ScorePart;

/** 1 from a difference of a tenth to the nearest classic on (a choice of ours), less towards 0. */
export const newnessPart = {
  name: 'newness',
  words: 'newness beside the classic orders',
  means: 'as novelty, but 1 from a distance of 0.1 on',
  needs: ['novelty'],
  of: ({ novelty }) => Math.min(1, novelty / NOVEL),
} as const satisfies ScorePart;
