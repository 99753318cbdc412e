import { INCH } from '../../words/measure.js';

/**
 * Threads in the longest float that is no longer than `limit`.
 *
 * @param limit, spacing lengths in the same unit; `spacing` is from thread to thread
 */
export function threadsWithin(limit: number, spacing: number): number {
  return Math.floor(limit / spacing + 1e-9);
}

/** Picks that make a unit of `ends` ends as long as it is wide. */
export function picksForSquare(ends: number, endsPer: number, picksPer: number): number {
  return (ends * picksPer) / endsPer;
}

/** Longest float for each purpose, in millimetres (common practice, no source; one for a baby: 1/4 inch). */
export const FLOAT_LIMITS = {
  towel: (3 / 8) * INCH,
  general: INCH / 2,
  hanging: (3 / 4) * INCH,
  baby: INCH / 4,
} as const;
export type Purpose = keyof typeof FLOAT_LIMITS;
