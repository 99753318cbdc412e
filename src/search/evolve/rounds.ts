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
/** How often another candidate is asked for in place of one that was tried before. */
const AGAIN = 10;
/** How many of the best of all are changed further. */
const BEST = 40;
/** A search has settled when in so many rounds it has gained less than this share of all it had. */
const PATIENCE = 80;
const GAIN = 0.001;

/** What a candidate came to. */
export interface Told {
  readonly niche: number;
  /** From 0 up. */
  readonly score: number;
  /** The same for the same cloth. */
  readonly key: string;
}

/** Whose turn it is, slot by slot: one by chance, three from the best of each kind, four from the best of all. */
const TURNS = ['drawn', 'kinds', 'best', 'kinds', 'best', 'kinds', 'best', 'best'] as const;

/**
 * A search in rounds. It asks its sources for candidates, hands them out to be scored, is told what they came to, and
 * tells the sources. Every slot of every round has a stream of chance of its own, and what is learnt within a round is
 * used in the next, so that the turns in which a round is scored cannot matter.
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
  /** What grid and best came to after each round. */
  private readonly worth: number[] = [];
  private out: { readonly proposal: Proposal; readonly source: Source }[] | undefined;
  private round = 0;

  /** `leftOut`: what is not to be kept, however well it does; asked only of what would be. */
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
   * The candidates of the next round, `most` at the most, as lines, none of a cloth that a tried one is known to weave; fewer where no others are met.
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
   * What the candidates of the round came to, in the order in which they were handed out; nothing for one set aside.
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

  /** Whether the last rounds have brought next to nothing. */
  get settled(): boolean {
    const now = this.worth.at(-1);
    const before = this.worth.at(-1 - PATIENCE);
    return now !== undefined && before !== undefined && now - before <= GAIN * before;
  }

  /** The kinds of cloth met, by their numbers. */
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
