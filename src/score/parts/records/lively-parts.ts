import { patchBits } from '../../look/patches.js';
import { shapesOf } from '../../look/shapes.js';
import type { LookFigure, ScorePart } from './score-part.js';

/** Shannon's bits of sixteen equally frequent patches. */
const MOST_BITS = 4;
/** The number of shapes above which a cloth is busy. */
export const MANY_SHAPES = 8;

const PATCHES_AND_SHAPES = [
  {
    key: 'bits',
    heading: 'patches',
    name: 'Patches',
    means: 'variety of the patches of 2 × 2 crossings: 1 is stripes, 4 noise',
    places: 2,
    measure: ({ face, values }) => patchBits(face, values),
  },
  {
    key: 'shapes',
    heading: 'shapes',
    name: 'Shapes',
    means: 'closed shapes for the eye to learn, seen from 2 m; 0 is stripes or a net',
    places: 0,
    measure: (seen, enough) => shapesOf(seen.fromAfar(), enough).closed,
  },
] as const satisfies readonly LookFigure[];

/**
 * How lively a cloth is, from 0 to 1: the mean of the variety of its patches, as a share of the most there can be, and
 * of its closed shapes, as a share of the eight above which it is busy (a choice of ours). Calm is 1 less that.
 */
export function liveliness({ bits, shapes }: { readonly bits: number; readonly shapes: number }): number {
  return (bits / MOST_BITS + Math.min(1, shapes / MANY_SHAPES)) / 2;
}

export const calmPart = {
  name: 'calm',
  words: 'calm',
  means: 'few different patches of 2 × 2 crossings, and few different shapes',
  looks: PATCHES_AND_SHAPES,
  of: (measured: Parameters<typeof liveliness>[0]) => 1 - liveliness(measured),
} as const satisfies ScorePart;

export const livelyPart = {
  name: 'lively',
  words: 'liveliness',
  means: 'many different patches of 2 × 2 crossings, and many different shapes',
  looks: PATCHES_AND_SHAPES,
  of: liveliness,
} as const satisfies ScorePart;
