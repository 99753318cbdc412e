import { outlineOf } from '../../look/sharp.js';
import { solidShare } from '../../look/solid.js';
import type { ScorePart } from './score-part.js';

export const solidPart = {
  name: 'solid',
  words: 'solid dark and light',
  means: 'clearly dark areas beside clearly light ones, against half-tones; motifs under about ten threads have none',
  looks: [
    {
      key: 'solid',
      heading: 'solid',
      name: 'Solid',
      means: 'clearly dark areas beside clearly light ones, against half-tones, 0 to 1',
      places: 3,
      measure: (seen) => solidShare(seen.areas()),
    },
  ],
  of: ({ solid }: { readonly solid: number }) => solid,
} as const satisfies ScorePart;

export const sharpPart = {
  name: 'sharp',
  words: 'crisp outlines',
  means: 'outlines that are crisp, not feathered; below 0.4 they drown in half-tones',
  looks: [
    {
      key: 'sharp',
      heading: 'sharp',
      name: 'Crisp outlines',
      means: '1 is a clean step from dark to light, near 0 a feathered outline',
      places: 3,
      measure: (seen) => outlineOf(seen.areas(), seen.squareness).slope,
    },
  ],
  of: ({ sharp }: { readonly sharp: number }) => sharp,
} as const satisfies ScorePart;
