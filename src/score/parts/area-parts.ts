import type { ScorePart } from './score-part.js';

export const solidPart = {
  name: 'solid',
  words: 'solid dark and light',
  means: 'clear areas of dark beside clear areas of light; motifs under about ten threads have none',
  needs: ['solid'],
  of: ({ solid }) => solid,
} as const satisfies ScorePart;

export const sharpPart = {
  name: 'sharp',
  words: 'crisp outlines',
  means: 'crisp outlines between dark and light; below 0.4 they drown in half-tones',
  needs: ['sharp'],
  of: ({ sharp }) => sharp,
} as const satisfies ScorePart;
