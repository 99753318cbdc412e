import seedrandom from 'seedrandom';
import { NICHES } from '../evaluate/niche.js';
import type { Candidate } from '../space/candidate.js';
import type { Family } from '../space/family.js';
import { genomeOf } from '../space/genome.js';
import type { Canonicalizer } from './canonical-genome.js';
import { type EliteStats, Elites, type OfferOutcome } from './elites.js';
import { type Emitter, mutationEmitter, neighbourEmitter, type Proposal, randomEmitter } from './emitters.js';
import type { MutationSpace } from './mutation-space.js';
import { TopK } from './top-k.js';

/** Candidates of one round. */
const ROUND = 64;
/** How often a slot asks in all, if its proposals were tried before. */
const AGAIN = 30;
/** How many of the best of all serve as parents. */
const BEST = 40;
/** A search has settled when in the last PATIENCE rounds its worth grew by at most this share (GAIN). */
const PATIENCE = 80;
const GAIN = 0.001;

/** The result of a scored candidate. */
export interface Told {
  readonly niche: number;
  /** From 0 up. */
  readonly score: number;
  /** The key of the cloth. */
  readonly key: string;
}

/**
 * The emitter of each slot: of eight, one draws at random, three mutate elites of niches, two go through the neighbours
 * of the best of all, and two through those of the best niches.
 */
const TURNS = ['nearBest', 'kinds', 'nearKinds', 'drawn', 'nearBest', 'kinds', 'nearKinds', 'kinds'] as const;

/**
 * The scheduler of an evolved search. Each round it asks the emitters for candidates, hands these out to be scored, is
 * told the results, and tells the emitters. Every slot of every round has its own random stream, and results are used
 * only from the next round on, so the order in which a round is scored does not matter. See EVOLVE.md.
 */
export class Rounds {
  private readonly families: readonly Family[];
  private readonly alike: Canonicalizer;
  private readonly seed: string;
  private readonly leftOut: (key: string, candidate: Candidate) => boolean;
  private readonly sources: Readonly<Record<(typeof TURNS)[number], Emitter>>;
  private readonly elites = new Elites<Candidate>(NICHES);
  private readonly best = new TopK<Candidate>(BEST);
  private readonly tried = new Set<string>();
  /** After each round, the sum of the scores in the grid and in the top list. */
  private readonly worth: number[] = [];
  private out: { readonly proposal: Proposal; readonly emitter: Emitter }[] | undefined;
  private round = 0;

  /** `leftOut`: whether a candidate must not be kept despite its score; called only for those that would be kept. */
  constructor(
    mutations: MutationSpace,
    alike: Canonicalizer,
    families: readonly Family[],
    seed: string,
    leftOut: (key: string, candidate: Candidate) => boolean = () => false,
  ) {
    this.leftOut = leftOut;
    this.families = families;
    this.alike = alike;
    this.seed = seed;
    this.sources = {
      drawn: randomEmitter(mutations),
      kinds: mutationEmitter(mutations, 'kinds'),
      nearBest: neighbourEmitter(mutations, 'best'),
      nearKinds: neighbourEmitter(mutations, 'kinds'),
    };
  }

  /**
   * The candidates of the next round as lines, at most `most`. None is in the orbit of one tried before. A slot that
   * finds no new candidate is left out.
   *
   * @throws Error where the last round has not been told of
   */
  ask(most = ROUND): string[] {
    if (this.out !== undefined) throw new Error(`asked for a round while ${this.out.length} candidates are out`);
    const shelf = { kinds: this.elites.all(), best: this.best.things() };
    const out: { proposal: Proposal; emitter: Emitter }[] = [];
    const lines: string[] = [];
    for (let slot = 0; slot < ROUND && lines.length < most; slot++) {
      const emitter = this.sources[TURNS[slot % TURNS.length]!];
      const chance = seedrandom.alea(`${this.seed}/${this.round}/${slot}`);
      for (let time = 0; time < AGAIN; time++) {
        const proposal = emitter.ask(shelf, chance);
        const name = this.alike.canonicalGenome(proposal.candidate);
        if (this.tried.has(name)) continue;
        this.tried.add(name);
        lines.push(genomeOf(proposal.candidate, this.families));
        out.push({ proposal, emitter });
        break;
      }
    }
    this.round++;
    this.out = out;
    return lines;
  }

  /**
   * Takes the results of the round, in the order in which the candidates were handed out; undefined for one set aside.
   *
   * @throws Error where no round is out, or it was of another length
   */
  tell(told: readonly (Told | undefined)[]): void {
    const { out } = this;
    if (out === undefined) throw new Error(`told of ${told.length} candidates while none are out`);
    if (out.length !== told.length) throw new Error(`told of ${told.length} candidates while ${out.length} are out`);
    out.forEach(({ proposal, emitter }, slot) => {
      const result = told[slot];
      emitter.tell(proposal, result && this.keep(proposal.candidate, result));
    });
    this.out = undefined;
    this.worth.push(this.elites.stats().total + this.best.total());
  }

  /** Whether the last rounds gained next to nothing. */
  get settled(): boolean {
    const now = this.worth.at(-1);
    const before = this.worth.at(-1 - PATIENCE);
    return now !== undefined && before !== undefined && now - before <= GAIN * before;
  }

  /** The numbers of the filled niches. */
  kinds(): number[] {
    return this.elites.filled();
  }

  stats(): EliteStats & { readonly rounds: number } {
    return { ...this.elites.stats(), rounds: this.worth.length };
  }

  private keep(candidate: Candidate, { niche, score, key }: Told): OfferOutcome | undefined {
    const wanted = this.elites.takes(niche, score) || this.best.takes(key, score);
    if (wanted && this.leftOut(key, candidate)) return undefined;
    const verdict = this.elites.offer(niche, score, candidate);
    const entered = this.best.offer(key, score, candidate);
    return verdict === 'rejected' && entered ? 'improved' : verdict;
  }
}
