import type { Floats } from '../../cloth/floats.js';

export type { Floats };

/** Point operations on the face, in the order in which they are always listed. */
export const OPERATIONS = [
  'half-turn',
  'mirror-left-right',
  'mirror-up-down',
  'quarter-turn',
  'quarter-turn-back',
  'diagonal',
  'antidiagonal',
] as const;
export type Operation = (typeof OPERATIONS)[number];

/** Plane groups that a pattern of cells can have, in short International Tables notation. */
export const PLANE_GROUPS = ['p1', 'p2', 'pm', 'pg', 'cm', 'pmm', 'pmg', 'pgg', 'cmm', 'p4', 'p4m', 'p4g'] as const;
export type PlaneGroup = (typeof PLANE_GROUPS)[number];

/** What carries the face to itself. */
export interface Symmetry {
  /** S: 0, 0.25, 0.5, 0.75 or 1. */
  readonly symmetry: number;
  /** Point operations other than the identity that hold; counterchange: only with the two colours exchanged. */
  readonly operations: readonly { readonly op: Operation; readonly counterchange: boolean }[];
  /** A translation exchanges the two colours everywhere. */
  readonly shiftExchange: boolean;
  readonly planeGroup: PlaneGroup;
  /** `G/H`, or null where nothing exchanges the colours. */
  readonly colourGroup: string | null;
}

/** The operation that just fails to hold, and the share of cells that agree at its best shift (0.8 and above). */
export interface Nearly {
  readonly op: Operation;
  readonly agreement: number;
}

/** How light and dark are spread over the face. */
export interface Contrast {
  /** M = min(1, √(T² + N²)). */
  readonly contrast: number;
  /** T: light and dark areas. */
  readonly tone: number;
  /** N: upright against level lines. */
  readonly line: number;
  /** Share of the pattern that is not stripes. */
  readonly figure: number;
  readonly darkShare: number;
}

/** What a cloth costs to weave, counted round one repeat. */
export interface Ease {
  readonly warpChanges: number;
  /** Ends of each yarn, by letter. */
  readonly ends: Readonly<Record<string, number>>;
  readonly winding: readonly { readonly way: string; readonly knots: number }[];
  readonly shuttles: number;
  readonly weftChanges: number;
  /** Most picks strictly between two uses of one shuttle; 0 with one shuttle. */
  readonly longestCarry: number;
  /** Every shuttle leaves from the side where it rests. */
  readonly sameSide: boolean;
}
