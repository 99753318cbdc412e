import type { Batch } from '../evaluate/batch.js';
import {
  CANDIDATE_COLUMNS,
  type Columns,
  columnsFor,
  copyRow,
  extend,
  KEY_WORDS,
  PREFERENCES,
} from '../evaluate/columns.js';
import { NICHES } from '../evaluate/niche.js';

/** Tests that keep a cloth out of the ranking, whatever its score. */
export interface LeftOut {
  /** Whether the cloth with this key (its words joined) is already woven. */
  isDone(key: string): boolean;
  /**
   * Whether a cloth is too similar to one already woven, by its key and a candidate; called only for cloths to be
   * shown.
   */
  isNear(key: string, index: number): boolean;
}

/**
 * State of a cloth. An open cloth is in the ranking, but has not yet been tested for similarity to cloths already
 * woven.
 */
const OPEN = 0;
const STAYS = 1;
const OUT = 2;

/** Columns of the archive, besides those of the candidate that is kept for the cloth. */
const KEPT_COLUMNS = {
  ...CANDIDATE_COLUMNS,
  /** How many other candidates weave the same cloth. */
  equals: [Uint32Array, 1],
  standing: [Uint8Array, 1],
} as const;

/** A cloth that the archive keeps. */
export interface Kept {
  readonly index: number;
  readonly score: number;
  readonly area: number;
  /** How many other candidates weave the same cloth. */
  readonly equals: number;
  /** Number of its niche. */
  readonly niche: number;
}

/**
 * The cloths found so far, each once. They are stored in columns of numbers with a hash table over them, about 70 bytes
 * per cloth, so that millions fit. Of several candidates for one cloth, the one that is kept depends on the candidates
 * alone, not on the order in which they arrive.
 */
export class Archive {
  private size = 0;
  private seen = 0;
  private columns: Columns<typeof KEPT_COLUMNS> = columnsFor(KEPT_COLUMNS, 1024);
  private table = new Int32Array(2048).fill(-1);
  private readonly sortsFirst: (a: number, b: number) => number;
  private readonly leftOut: LeftOut | undefined;

  /** `sortsFirst` compares two candidates (by index) by their laid colours; it is used if all else is equal. */
  constructor(sortsFirst: (a: number, b: number) => number, leftOut?: LeftOut) {
    this.sortsFirst = sortsFirst;
    this.leftOut = leftOut;
  }

  /** Cloths kept. */
  get cloths(): number {
    return this.size;
  }

  /** Candidates that wove a cloth already kept. */
  get duplicates(): number {
    return this.seen - this.size;
  }

  /** Number of cloths known to be left out, and of candidates that weave them. */
  get out(): { readonly cloths: number; readonly candidates: number } {
    let [cloths, candidates] = [0, 0];
    for (let at = 0; at < this.size; at++) {
      if (this.columns.standing[at] !== OUT) continue;
      cloths++;
      candidates += 1 + this.columns.equals[at]!;
    }
    return { cloths, candidates };
  }

  /** Adds a batch. A candidate for a known cloth is counted as a duplicate, and kept instead if it is preferable. */
  absorb(batch: Batch): void {
    for (let from = 0; from < batch.length; from++) {
      this.seen++;
      const slot = this.slotOf(batch.key, from * KEY_WORDS);
      const known = this.table[slot]!;
      if (known < 0) {
        this.table[slot] = this.size;
        this.write(this.size, batch, from);
        this.columns.standing[this.size] = this.standingOf(this.keyAt(this.size));
        this.size++;
        this.grow();
      } else {
        this.columns.equals[known] = this.columns.equals[known]! + 1;
        if (this.better(batch, from, known)) this.write(known, batch, from);
      }
    }
  }

  /**
   * Tests at most `few` of the open cloths that would be shown, and leaves out those that are too similar. Returns true
   * once none of the cloths that would be shown is open: the ranking is then final.
   */
  settle(most: number, eachKind: boolean, few: number): boolean {
    const open = this.showable(most, eachKind).filter((at) => this.columns.standing[at] === OPEN);
    for (const at of open.slice(0, few)) {
      this.columns.standing[at] = this.leftOut!.isNear(this.keyAt(at).join(), this.columns.index[at]!) ? OUT : STAYS;
    }
    return open.length === 0;
  }

  /** The candidates of the cloths that may be shown: of the best, with those that tie with the last, and of each kind. */
  shown(most: number, eachKind: boolean): number[] {
    return this.showable(most, eachKind).map((at) => this.columns.index[at]!);
  }

  /**
   * Takes over from another archive how many candidates weave each cloth that would be shown.
   *
   * @returns how many of these were not seen here
   */
  countAs(other: Archive, most: number, eachKind: boolean): number {
    let unseen = 0;
    for (const at of this.showable(most, eachKind)) {
      const there = other.table[other.slotOf(this.columns.key, at * KEY_WORDS)]!;
      if (there < 0) continue;
      unseen += other.columns.equals[there]! - this.columns.equals[at]!;
      this.columns.equals[at] = other.columns.equals[there]!;
    }
    this.seen += unseen;
    return unseen;
  }

  /** The score at a place of the ranking, counted from 1; −∞ if there are fewer cloths. */
  scoreOfPlace(place: number): number {
    const at = this.foremost(place)[place - 1];
    return at === undefined ? Number.NEGATIVE_INFINITY : this.columns.score[at]! / 1e9;
  }

  /**
   * The best `most` cloths, sorted by score, then by smaller repeat, then by `code`, which is computed only for ties of
   * the first two.
   */
  best(most: number, code: (index: number) => string): Kept[] {
    return this.foremost(most)
      .sort(this.inRank(code))
      .slice(0, most)
      .map((at) => this.keptAt(at));
  }

  /** The best cloth of every niche, in the order of the ranking, at most `most`. */
  bestOfEachNiche(most: number, code: (index: number) => string): Kept[] {
    const order = this.inRank(code);
    return [...this.firstOfNiches().values()]
      .map((tied) => tied.reduce((a, b) => (order(b, a) < 0 ? b : a)))
      .sort(order)
      .slice(0, most)
      .map((at) => this.keptAt(at));
  }

  /** The best `most` cloths and the best of every niche, in the order of the ranking: a choice that is good and wide. */
  bestAndOfNiches(most: number, code: (index: number) => string): Kept[] {
    const best = this.best(most, code);
    const known = new Set(best.map(({ index }) => index));
    // What is not among the best comes after them all.
    return [...best, ...this.bestOfEachNiche(NICHES, code).filter(({ index }) => !known.has(index))];
  }

  /** The best score of every niche; −∞ where there is no cloth. */
  scoresOfNiches(): number[] {
    const first = this.firstOfNiches();
    return Array.from({ length: NICHES }, (_, niche) => {
      const best = first.get(niche)?.[0];
      return best === undefined ? Number.NEGATIVE_INFINITY : this.columns.score[best]! / 1e9;
    });
  }

  /** The first `most` cloths and those that tie with the last; where each kind is asked for, the first of every niche too. */
  private showable(most: number, eachKind: boolean): number[] {
    const firsts = eachKind ? [...this.firstOfNiches().values()].flat() : [];
    return [...new Set([...this.foremost(most), ...firsts])];
  }

  /** Compares two cloths by the ranking, ties by their codes, which are computed once each. */
  private inRank(code: (index: number) => string): (a: number, b: number) => number {
    const codes = new Map<number, string>();
    const codeAt = (at: number): string => {
      let known = codes.get(at);
      if (known === undefined) {
        known = code(this.columns.index[at]!);
        codes.set(at, known);
      }
      return known;
    };
    return (a, b) => this.bySize(a, b) || (codeAt(a) < codeAt(b) ? -1 : 1);
  }

  /** For every niche, the first cloth that is not left out, and the cloths that tie with it in score and size. */
  private firstOfNiches(): Map<number, number[]> {
    const first = new Map<number, number[]>();
    for (let at = 0; at < this.size; at++) {
      if (this.columns.standing[at] === OUT) continue;
      const known = first.get(this.columns.niche[at]!);
      const order = known === undefined ? -1 : this.bySize(at, known[0]!);
      if (order < 0) first.set(this.columns.niche[at]!, [at]);
      else if (order === 0) known!.push(at);
    }
    return first;
  }

  /**
   * The first `most` cloths of the ranking that are not left out, and the cloths that tie with the last of them in
   * score and size.
   */
  private foremost(most: number): number[] {
    const scores = this.columns.score.slice(0, this.size).sort();
    for (let reach = most; ; reach *= 2) {
      const least = reach < this.size ? scores[this.size - reach]! : Number.NEGATIVE_INFINITY;
      const candidates: number[] = [];
      for (let at = 0; at < this.size; at++) if (this.columns.score[at]! >= least) candidates.push(at);
      candidates.sort((a, b) => this.bySize(a, b));
      const stay: number[] = [];
      for (const at of candidates) {
        const last = stay[most - 1];
        if (last !== undefined && this.bySize(last, at) < 0) break;
        if (this.columns.standing[at] !== OUT) stay.push(at);
      }
      if (stay.length >= most || reach >= this.size) return stay;
    }
  }

  private bySize(a: number, b: number): number {
    return this.columns.score[b]! - this.columns.score[a]! || this.columns.area[a]! - this.columns.area[b]!;
  }

  private standingOf(key: Uint32Array): number {
    if (this.leftOut === undefined) return STAYS;
    return this.leftOut.isDone(key.join()) ? OUT : OPEN;
  }

  private keptAt(at: number): Kept {
    return {
      index: this.columns.index[at]!,
      score: this.columns.score[at]!,
      area: this.columns.area[at]!,
      equals: this.columns.equals[at]!,
      niche: this.columns.niche[at]!,
    };
  }

  private write(at: number, batch: Batch, from: number): void {
    copyRow(CANDIDATE_COLUMNS, { from: batch, at: from }, { to: this.columns, row: at });
  }

  private keyAt(at: number): Uint32Array {
    return this.columns.key.subarray(at * KEY_WORDS, (at + 1) * KEY_WORDS);
  }

  /** Whether a new candidate is preferable to the one kept: it ranks higher, or is easier to weave. */
  private better(batch: Batch, from: number, known: number): boolean {
    const rank = batch.score[from]! - this.columns.score[known]!;
    if (rank !== 0) return rank > 0;
    for (let p = 0; p < PREFERENCES; p++) {
      const difference = batch.preference[from * PREFERENCES + p]! - this.columns.preference[known * PREFERENCES + p]!;
      if (difference !== 0) return difference < 0;
    }
    const area = batch.area[from]! - this.columns.area[known]!;
    if (area !== 0) return area < 0;
    const word = this.sortsFirst(batch.index[from]!, this.columns.index[known]!);
    return word !== 0 ? word < 0 : batch.index[from]! < this.columns.index[known]!;
  }

  /** The slot of a key in the hash table: its own, or the free slot where it belongs. */
  private slotOf(keys: Uint32Array, from: number): number {
    const mask = this.table.length - 1;
    let slot = (keys[from]! ^ keys[from + 1]!) & mask;
    for (;;) {
      const at = this.table[slot]!;
      if (at < 0) return slot;
      let same = true;
      for (let w = 0; same && w < KEY_WORDS; w++) same = this.columns.key[at * KEY_WORDS + w] === keys[from + w];
      if (same) return slot;
      slot = (slot + 1) & mask;
    }
  }

  /** Makes room for more cloths: half as many more columns, and a table that is twice as large, once it is half full. */
  private grow(): void {
    if (this.size === this.columns.index.length) extend(KEPT_COLUMNS, this.columns, this.size + (this.size >> 1));
    if (2 * this.size < this.table.length) return;
    this.table = new Int32Array(2 * this.table.length).fill(-1);
    for (let at = 0; at < this.size; at++) this.table[this.slotOf(this.columns.key, at * KEY_WORDS)] = at;
  }
}
