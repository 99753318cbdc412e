import type { Look } from '../model/figures.js';
import type { ScorePart } from './score-part.js';

/** Shannon's bits of sixteen equally frequent patches. */
const MOST_BITS = 4;
/** The number of shapes above which a cloth is busy. */
const MANY_SHAPES = 8;

/**
 * How lively a cloth is, from 0 to 1: the mean of the variety of its patches, as a share of the most there can be, and
 * of its closed shapes, as a share of the eight above which it is busy (a choice of ours). Calm is 1 less that.
 */
export function liveliness({ bits, shapes }: Pick<Look, 'bits' | 'shapes'>): number {
  return (bits / MOST_BITS + Math.min(1, shapes / MANY_SHAPES)) / 2;
}

export const calmPart = {
  name: 'calm',
  words: 'calm',
  means: 'few kinds of patches and shapes: 1 less liveliness',
  needs: ['bits', 'shapes'],
  of: (measured) => 1 - liveliness(measured),
} as const satisfies ScorePart;

export const livelyPart = {
  name: 'lively',
  words: 'liveliness',
  means: 'many kinds of patches and of closed shapes',
  needs: ['bits', 'shapes'],
  of: liveliness,
} as const satisfies ScorePart;
