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

/** What the eye meets, areas, outlines and shapes: the heading of each figure in tables, and what it measures. */
export const LOOK = {
  solid: { heading: 'solid', means: 'twice the smaller share of clearly dark and clearly light areas' },
  sharp: { heading: 'sharp', means: 'how crisp the outlines between dark and light are' },
  bits: { heading: 'patches', means: 'variety of the patches of 2 × 2 crossings, in bits from 0 to 4' },
  shapes: { heading: 'shapes', means: 'number of closed shapes that differ by more than a shift' },
  unlike: { heading: 'unlike the structure', means: 'how unlike the cloth is to the structure’s drawdown alone' },
} as const;
export type Look = Readonly<Record<keyof typeof LOOK, number>>;

/** Every figure of one cloth, as written in a gallery. */
export interface Scores extends Contrast, Symmetry, Look {
  readonly score: number;
  readonly nearly?: Nearly;
  /** Smallest difference to a classic order on the same structure (0 is a classic), and the name of that classic. */
  readonly novelty?: number;
  readonly nearest?: string;
  readonly floats: Floats;
  /** Standard deviation of L* seen from 0.6, 2 and 6 metres. */
  readonly reads: Readonly<Record<'0.6' | '2' | '6', number>>;
  /** Metres up to which the motif is easy to see. */
  readonly easyTo: number;
  /** Metres from which it has melted. */
  readonly goneBy: number;
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
