import type { Candidate } from '../space/candidate.js';
import type { OfferOutcome } from './elites.js';
import type { MutationSpace, Step } from './mutation-space.js';
import { pickFrom, type Rng } from './mutations.js';

/** The candidates that serve as parents. */
interface BestSoFar {
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
export interface Emitter {
  ask(best: BestSoFar, rng: Rng): Proposal;
  /** Tells it the verdict on one of its proposals; undefined if the candidate was set aside. */
  tell(proposal: Proposal, verdict: OfferOutcome | undefined): void;
}

/** The emitter of random candidates. */
export function randomEmitter(mutations: MutationSpace): Emitter {
  return { ask: (_, rng) => ({ candidate: mutations.draw(rng), steps: [] }), tell: () => {} };
}

/** The probability that one more step follows a step. */
const ANOTHER_STEP = 0.4;
/** The factor by which tries and gains of every step fade towards 1 with each proposal. */
const REMEMBERED = 0.999;
/** What each verdict adds to the gains of the steps that led to it. */
const WORTH: Readonly<Record<OfferOutcome, number>> = { rejected: 0, improved: 1, new: 2 };

/** A random entry of a list, earlier ones more often: at the place of a squared random number. */
function pickEarly<T>(list: readonly T[], rng: Rng): T {
  return list[Math.floor(list.length * rng() ** 2)]!;
}

/** The emitter that mutates elites. It prefers the steps with the most gains for each try. */
export function mutationEmitter(mutations: MutationSpace, from: keyof BestSoFar): Emitter {
  const tries = new Float64Array(mutations.steps.length).fill(1);
  const gains = new Float64Array(mutations.steps.length).fill(1);
  const drawn = randomEmitter(mutations);
  const pickStep = (rng: Rng): number => {
    const weights = gains.map((gain, step) => gain / tries[step]! + 0.02);
    let at = rng() * weights.reduce((sum, weight) => sum + weight, 0);
    let step = 0;
    while (step < weights.length - 1 && at >= weights[step]!) at -= weights[step++]!;
    return step;
  };
  return {
    ask(best, rng) {
      if (best[from].length === 0 || mutations.steps.length === 0) return drawn.ask(best, rng);
      let candidate = pickEarly(best[from], rng);
      const steps: number[] = [];
      do {
        const step = pickStep(rng);
        candidate = mutations.take(mutations.steps[step] as Step, candidate, pickFrom(best.kinds, rng), rng);
        steps.push(step);
      } while (rng() < ANOTHER_STEP);
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

/** How many parents have their neighbours gone through. */
const PARENTS = 8;

/** The emitter that goes through the neighbours of elites, those of the very best first; then it mutates. */
export function neighbourEmitter(mutations: MutationSpace, from: keyof BestSoFar): Emitter {
  const begun = new WeakMap<Candidate, Generator<Candidate>>();
  const mutated = mutationEmitter(mutations, from);
  return {
    ask(best, rng) {
      for (const parent of best[from].slice(0, PARENTS)) {
        const neighbours = begun.get(parent) ?? mutations.neighbours(parent, best.best);
        begun.set(parent, neighbours);
        const next = neighbours.next();
        if (!next.done) return { candidate: next.value, steps: [] };
      }
      return mutated.ask(best, rng);
    },
    tell: mutated.tell,
  };
}
