import type { ScorePart } from './score-part.js';

export const unlikePart = {
  name: 'unlike',
  words: 'unlikeness to the structure alone',
  means: 'unlike what the structure shows by itself, with a dark warp on a light weft, for which it is 0',
  looks: [
    {
      key: 'unlike',
      heading: 'unlike the structure',
      name: 'Unlike the structure',
      means: 'what a dark warp on a light weft does not show; 0 shows no more',
      places: 3,
      measure: (seen) => seen.unlikeStructure(),
    },
  ],
  of: ({ unlike }: { readonly unlike: number }) => unlike,
} as const satisfies ScorePart;
