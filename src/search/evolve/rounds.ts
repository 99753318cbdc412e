import seedrandom from 'seedrandom';
import type { Candidate } from '../candidate.js';
import type { Family } from '../family.js';
import { NICHES } from '../niche.js';
import type { Alike } from './alike.js';
import { Best } from './best.js';
import { Grid, type GridStats, type Verdict } from './grid.js';
import type { Room } from './room.js';
import { changing, drawing, type Proposal, type Source } from './sources.js';
import { writtenOf } from './written.js';

/** Candidates of one round. */
const ROUND = 64;
/** How often a slot asks in all, if its proposals were tried before. */
const AGAIN = 10;
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
 * The emitter of each slot: of eight, one draws at random, three mutate elites of niches, four mutate the best of all.
 */
const TURNS = ['drawn', 'kinds', 'best', 'kinds', 'best', 'kinds', 'best', 'best'] as const;

/**
 * The scheduler of an evolved search. Each round it asks the emitters for candidates, hands these out to be scored, is
 * told the results, and tells the emitters. Every slot of every round has its own random stream, and results are used
 * only from the next round on, so the order in which a round is scored does not matter. See EVOLVE.md.
 */
export class Rounds {
  private readonly families: readonly Family[];
  private readonly alike: Alike;
  private readonly seed: string;
  private readonly leftOut: (key: string, candidate: Candidate) => boolean;
  private readonly sources: Readonly<Record<(typeof TURNS)[number], Source>>;
  private readonly grid = new Grid<Candidate>(NICHES);
  private readonly best = new Best<Candidate>(BEST);
  private readonly tried = new Set<string>();
  /** After each round, the sum of the scores in the grid and in the top list. */
  private readonly worth: number[] = [];
  private out: { readonly proposal: Proposal; readonly source: Source }[] | undefined;
  private round = 0;

  /** `leftOut`: whether a candidate must not be kept despite its score; called only for those that would be kept. */
  constructor(
    room: Room,
    alike: Alike,
    families: readonly Family[],
    seed: string,
    leftOut: (key: string, candidate: Candidate) => boolean = () => false,
  ) {
    this.leftOut = leftOut;
    this.families = families;
    this.alike = alike;
    this.seed = seed;
    this.sources = { drawn: drawing(room), kinds: changing(room, 'kinds'), best: changing(room, 'best') };
  }

  /**
   * The candidates of the next round as lines, at most `most`. None is in the orbit of one tried before. A slot that
   * finds no new candidate is left out.
   *
   * @throws Error where the last round has not been told of
   */
  ask(most = ROUND): string[] {
    if (this.out !== undefined) throw new Error(`asked for a round while ${this.out.length} candidates are out`);
    const shelf = { kinds: this.grid.things(), best: this.best.things() };
    const out: { proposal: Proposal; source: Source }[] = [];
    const lines: string[] = [];
    for (let slot = 0; slot < ROUND && lines.length < most; slot++) {
      const source = this.sources[TURNS[slot % TURNS.length]!];
      const chance = seedrandom.alea(`${this.seed}/${this.round}/${slot}`);
      for (let time = 0; time < AGAIN; time++) {
        const proposal = source.ask(shelf, chance);
        const name = this.alike.nameOf(proposal.candidate);
        if (this.tried.has(name)) continue;
        this.tried.add(name);
        lines.push(writtenOf(proposal.candidate, this.families));
        out.push({ proposal, source });
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
    out.forEach(({ proposal, source }, slot) => {
      const result = told[slot];
      source.tell(proposal, result && this.keep(proposal.candidate, result));
    });
    this.out = undefined;
    this.worth.push(this.grid.stats().total + this.best.total());
  }

  /** Whether the last rounds gained next to nothing. */
  get settled(): boolean {
    const now = this.worth.at(-1);
    const before = this.worth.at(-1 - PATIENCE);
    return now !== undefined && before !== undefined && now - before <= GAIN * before;
  }

  /** The numbers of the filled niches. */
  kinds(): number[] {
    return this.grid.filled();
  }

  stats(): GridStats & { readonly rounds: number } {
    return { ...this.grid.stats(), rounds: this.worth.length };
  }

  private keep(candidate: Candidate, { niche, score, key }: Told): Verdict | undefined {
    const wanted = this.grid.takes(niche, score) || this.best.takes(key, score);
    if (wanted && this.leftOut(key, candidate)) return undefined;
    const verdict = this.grid.offer(niche, score, candidate);
    const entered = this.best.offer(key, score, candidate);
    return verdict === 'rejected' && entered ? 'improved' : verdict;
  }
}
