import type { Candidate } from '../candidate.js';
import { type Carrier, carriersOf, imageOf, type StartsAlike, startsAlike } from '../carriers.js';
import type { Family } from '../family.js';
import type { Question } from '../question.js';
import { startsOf } from '../starts.js';
import { writtenOf } from './written.js';

/** Pairs of lengths whose starts are remembered. */
const REMEMBERED = 4000;

/** Names candidates: those that a symmetry of the weave or an exchange of colours makes one cloth have one name. */
export class Alike {
  private readonly question: Question;
  private readonly families: readonly Family[];
  private readonly carriers: ReadonlyMap<Family, readonly Carrier[]>;
  private readonly lengths = new Map<string, { begun: StartsAlike; starts: ReturnType<typeof startsOf> }>();

  constructor(question: Question, families: readonly Family[]) {
    this.question = question;
    this.families = families;
    this.carriers = new Map(families.map((family) => [family, carriersOf(question, family)]));
  }

  /** The line of the candidate or of one of the same cloth, whichever sorts first. */
  nameOf(candidate: Candidate): string {
    const { family, warp, weft, start } = candidate;
    let name = writtenOf(candidate, this.families);
    for (const carrier of this.carriers.get(family)!) {
      const { begun, starts } = this.startsFor(family, warp.length, weft.length);
      const w = imageOf(warp, carrier.flipAcross, carrier.exchange);
      const f = imageOf(weft, carrier.flipDown, carrier.exchange);
      const number = begun(carrier, ...start, w.turn, f.turn);
      const line = writtenOf({ family, warp: w.order, weft: f.order, start: starts[number]! }, this.families);
      if (line < name) name = line;
    }
    return name;
  }

  private startsFor(family: Family, n: number, m: number): { begun: StartsAlike; starts: ReturnType<typeof startsOf> } {
    const sign = `${this.families.indexOf(family)}/${n}/${m}`;
    let known = this.lengths.get(sign);
    if (known === undefined) {
      const { question } = this;
      known = { begun: startsAlike(question, family, n, m), starts: startsOf(question.starts, family, n, m) };
      if (this.lengths.size >= REMEMBERED) this.lengths.clear();
      this.lengths.set(sign, known);
    }
    return known;
  }
}
