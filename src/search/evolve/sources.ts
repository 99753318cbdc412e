import type { Candidate } from '../candidate.js';
import { type Chance, pickFrom } from './changes.js';
import type { Verdict } from './grid.js';
import type { Room, Step } from './room.js';

/** The candidates that serve as parents. */
export interface Shelf {
  /** The elites of all niches, best first. */
  readonly kinds: readonly Candidate[];
  /** The best of all, the best first. */
  readonly best: readonly Candidate[];
}

/** A candidate with the steps that made it (indices in `Room.steps`), from which its emitter learns. */
export interface Proposal {
  readonly candidate: Candidate;
  readonly steps: readonly number[];
}

/** An emitter: proposes candidates and is told what became of them. It does not know how they are scored or kept. */
export interface Source {
  ask(shelf: Shelf, chance: Chance): Proposal;
  /** Tells it the verdict on one of its proposals; undefined if the candidate was set aside. */
  tell(proposal: Proposal, verdict: Verdict | undefined): void;
}

/** The emitter of random candidates. */
export function drawing(room: Room): Source {
  return { ask: (_, chance) => ({ candidate: room.draw(chance), steps: [] }), tell: () => {} };
}

/** The probability that one more step follows a step. */
const ANOTHER_STEP = 0.4;
/** The factor by which tries and gains of every step fade towards 1 with each proposal. */
const REMEMBERED = 0.999;
/** What each verdict adds to the gains of the steps that led to it. */
const WORTH: Readonly<Record<Verdict, number>> = { rejected: 0, improved: 1, new: 2 };

/** A random entry of a list, earlier ones more often: at the place of a squared random number. */
function pickEarly<T>(list: readonly T[], chance: Chance): T {
  return list[Math.floor(list.length * chance() ** 2)]!;
}

/** The emitter that mutates elites. It prefers the steps with the most gains for each try. */
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
