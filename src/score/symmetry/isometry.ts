import type { Operation } from '../model/figures.js';

/**
 * What a point operation does to cell (i, j): to (across·i, along·j), or where `turned` (rows become columns) to
 * (across·j, along·i).
 */
export interface Isometry {
  readonly turned: boolean;
  readonly across: 1 | -1;
  readonly along: 1 | -1;
}

/** A translation, in ends and picks. */
export interface Vector {
  readonly x: number;
  readonly y: number;
}

export const IDENTITY: Isometry = { turned: false, across: 1, along: 1 };

export const ISOMETRIES: Readonly<Record<Operation, Isometry>> = {
  'half-turn': { turned: false, across: -1, along: -1 },
  'mirror-left-right': { turned: false, across: -1, along: 1 },
  'mirror-up-down': { turned: false, across: 1, along: -1 },
  'quarter-turn': { turned: true, across: -1, along: 1 },
  'quarter-turn-back': { turned: true, across: 1, along: -1 },
  diagonal: { turned: true, across: 1, along: 1 },
  antidiagonal: { turned: true, across: -1, along: -1 },
};
