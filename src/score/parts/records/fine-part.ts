import type { ScorePart } from './score-part.js';

/** Crossings of the smallest piece that shows two colours: a hairline of one and one. */
const HAIRLINE = 2;
/** Crossings from which a piece is a motif by itself, and no texture: twenty each way (a choice of ours). */
const MOTIF = 400;

/**
 * 1 for a piece of two crossings, 0 from twenty each way on, by doublings between. What the fine classics share: of
 * lines that run through the whole cloth, line contrast is 0, and in a pinwheel as many edges stand as lie.
 */
export const finePart = {
  name: 'fine',
  words: 'fineness',
  means: 'a small piece that makes the whole cloth: 1 for hairlines, 0.6 for pinwheels, 0 from 20 × 20 threads on',
  looks: [
    {
      key: 'piece',
      heading: 'piece',
      name: 'Smallest piece',
      means:
        'crossings in the smallest piece from which shifts alone make the cloth: 2 for a hairline, 16 for a pinwheel',
      places: 0,
      measure: ({ analysis: { lattice } }) => lattice.width * lattice.height,
    },
  ],
  of: ({ piece }: { readonly piece: number }) =>
    piece === 0 ? 0 : Math.max(0, Math.min(1, Math.log(MOTIF / piece) / Math.log(MOTIF / HAIRLINE))),
} as const satisfies ScorePart;
