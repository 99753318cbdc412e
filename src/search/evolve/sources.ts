import type { Candidate } from '../candidate.js';
import { type Chance, pickFrom } from './changes.js';
import type { Verdict } from './grid.js';
import type { Room, Step } from './room.js';

/** Candidates that have done well so far. */
export interface Shelf {
  /** The best of each kind, the best of them first. */
  readonly kinds: readonly Candidate[];
  /** The best of all, the best first. */
  readonly best: readonly Candidate[];
}

/** A candidate with what its source must know to learn from it. */
export interface Proposal {
  readonly candidate: Candidate;
  readonly steps: readonly number[];
}

/** Makes candidates, and is told what became of them. It knows neither how they are scored nor how they are kept. */
export interface Source {
  ask(shelf: Shelf, chance: Chance): Proposal;
  /** What became of a proposal of its own; nothing where it was set aside. */
  tell(proposal: Proposal, verdict: Verdict | undefined): void;
}

/** Draws candidates by chance alone. */
export function drawing(room: Room): Source {
  return { ask: (_, chance) => ({ candidate: room.draw(chance), steps: [] }), tell: () => {} };
}

/** With what chance a candidate is one step further from the one it is made from. */
const ANOTHER_STEP = 0.4;
/** How much of what was learnt still counts after one more proposal. */
const REMEMBERED = 0.999;
/** How much each verdict speaks for the steps that led to it. */
const WORTH: Readonly<Record<Verdict, number>> = { rejected: 0, improved: 1, new: 2 };

/** One of a list, the earlier the more often. */
function pickEarly<T>(list: readonly T[], chance: Chance): T {
  return list[Math.floor(list.length * chance() ** 2)]!;
}

/** Changes candidates that have done well, more often by the steps that have led to better ones. */
export function changing(room: Room, from: keyof Shelf): Source {
  const tries = new Float64Array(room.steps.length).fill(1);
  const gains = new Float64Array(room.steps.length).fill(1);
  const drawn = drawing(room);
  const pickStep = (chance: Chance): number => {
    const weights = gains.map((gain, step) => gain / tries[step]! + 0.02);
    let at = chance() * weights.reduce((sum, weight) => sum + weight, 0);
    let step = 0;
    while (step < weights.length - 1 && at >= weights[step]!) at -= weights[step++]!;
    return step;
  };
  return {
    ask(shelf, chance) {
      if (shelf[from].length === 0 || room.steps.length === 0) return drawn.ask(shelf, chance);
      let candidate = pickEarly(shelf[from], chance);
      const steps: number[] = [];
      do {
        const step = pickStep(chance);
        candidate = room.take(room.steps[step] as Step, candidate, pickFrom(shelf.kinds, chance), chance);
        steps.push(step);
      } while (chance() < ANOTHER_STEP);
      return { candidate, steps };
    },
    tell({ steps }, verdict) {
      for (let step = 0; step < tries.length; step++) {
        tries[step] = 1 + (tries[step]! - 1) * REMEMBERED;
        gains[step] = 1 + (gains[step]! - 1) * REMEMBERED;
      }
      for (const step of steps) {
        tries[step] = tries[step]! + 1;
        gains[step] = gains[step]! + (verdict === undefined ? 0 : WORTH[verdict]);
      }
    },
  };
}
