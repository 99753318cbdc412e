import type { ScorePart } from './score-part.js';

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
  means: 'the share of the pattern that is not stripes: 0 for a plaid, 1 where only the weave makes the pattern',
  needs: ['figure'],
  of: ({ figure }) => figure,
} as const satisfies ScorePart;

/** 1 from 0.25 to 0.6, 0 for plaids below 0.1 (common practice) and for 1, figure alone. */
export const figuredPart = {
  name: 'figured',
  words: 'good share of figure',
  means: 'a good share of figure beside stripes: 1 from 0.25 to 0.6, less for a plaid and for figure alone',
  needs: ['figure'],
  of: ({ figure }) =>
    Math.max(0, Math.min(1, (figure - PLAID) / (FIGURE_FROM - PLAID), (1 - figure) / (1 - FIGURE_TO))),
} as const satisfies ScorePart;
