import type { Measured, ScorePart } from './score-part.js';

/**
 * Shares of figure: up to the first it is a plaid, from the second to the third best, beyond it the structure shows
 * most.
 */
const PLAID = 0.1;
const FIGURE_FROM = 0.25;
const FIGURE_TO = 0.6;

export const figurePart = {
  name: 'figure',
  words: 'figure',
  means: 'the share of the pattern that is not stripes: 0 for a plaid, 1 where the weave alone makes the pattern',
  needs: ['figure'],
  of: ({ figure }: Measured) => figure,
} as const satisfies ScorePart;

/** 1 from 0.25 to 0.6, 0 for plaids below 0.1 (common practice) and for 1, figure alone. */
export const figuredPart = {
  name: 'figured',
  words: 'good share of figure',
  means: 'more than stripes or plaid, and more than the weave alone: best where a quarter to three fifths is figure',
  needs: ['figure'],
  of: ({ figure }: Measured) =>
    Math.max(0, Math.min(1, (figure - PLAID) / (FIGURE_FROM - PLAID), (1 - figure) / (1 - FIGURE_TO))),
} as const satisfies ScorePart;
