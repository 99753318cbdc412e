import type { Candidate } from '../candidate.js';
import { type Carrier, carriersOf, imageOf, type StartsAlike, startsAlike } from '../carriers.js';
import type { Family } from '../family.js';
import type { Question } from '../question.js';
import { remembered } from '../remembered.js';
import { startsOf } from '../starts.js';
import { writtenOf } from './written.js';

/** Families and pairs of lengths whose starts are memoized. */
const REMEMBERED = 4000;

/** Gives candidates canonical names: all candidates of an orbit (see ../COUNTING.md) have the same name. */
export class Alike {
  private readonly families: readonly Family[];
  private readonly carriers: ReadonlyMap<Family, readonly Carrier[]>;
  private readonly startsFor: (
    family: Family,
    n: number,
    m: number,
  ) => { readonly begun: StartsAlike; readonly starts: ReturnType<typeof startsOf> };

  constructor(question: Question, families: readonly Family[]) {
    this.families = families;
    this.carriers = new Map(families.map((family) => [family, carriersOf(question, family)]));
    this.startsFor = remembered(
      REMEMBERED,
      (family: Family, n: number, m: number) => ({
        begun: startsAlike(question, family, n, m),
        starts: startsOf(question.starts, family, n, m),
      }),
      (family, n, m) => `${families.indexOf(family)}/${n}/${m}`,
    );
  }

  /** The line that sorts first among the candidate's own and those of its images. */
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
}
