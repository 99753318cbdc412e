import type { Foreseen } from '../evaluate/reach.js';

/**
 * The score to reach at a place. Where the best of each kind is asked for, the place of a candidate is the number of the
 * niche that it has if it has the most symmetry that it can have; else it is 0.
 */
export type Aim = (place: number) => number;

/** Is told of the candidates of a block, by the numbers of warp, weft and start. */
export interface Visitor {
  /** One that may reach its score, and a function that tells what is foreseen of it. */
  reached(warp: number, weft: number, start: number, foresee: () => Foreseen): void;
  /** One that is pruned. */
  pruned?(warp: number, weft: number, start: number, toneSquared: number): void;
  /** Of a pruned one with a lower T² it need not be told. */
  readonly leastTone?: number;
}

/** Is told of a candidate, by the numbers of warp, weft and start, with its place and a guess of its score. */
export type Guessed = (warp: number, weft: number, start: number, place: number, guess: number) => void;

/** What became of the candidates that a scan did not hand on. */
export interface Passed {
  /** They cannot reach the score. */
  pruned: number;
  /** They need a longer repeat, more changes of colour or more shuttles than they may. */
  limits: number;
}

/** Holds the candidates of one block against the score to reach: those of some warp orders that represent their orbit. */
export interface Scan {
  /** Scans those with warp orders `from` to before `to`. */
  scan(from: number, to: number, aim: Aim, visitor: Visitor): Passed;
  /** Tells those of the same whose guess is as high as the aim, or higher. A guess takes line contrast as 0. */
  guess(from: number, to: number, aim: Aim, guessed: Guessed): void;
}
