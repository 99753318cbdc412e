import type { Question } from '../question/question.js';
import type { Candidate } from '../space/candidate.js';
import type { Family } from '../space/family.js';
import { familyWritten, genomeOf } from '../space/genome.js';
import { memoized } from '../space/memoize.js';
import { startsOf } from '../space/starts.js';
import {
  imageOf,
  type StartsAlike,
  startsAlike,
  type WeaveSymmetry,
  weaveSymmetries,
} from '../space/weave-symmetries.js';

/** Families and pairs of lengths whose starts are memoized. */
const REMEMBERED = 4000;

/** Gives candidates canonical names: all candidates of an orbit (see ../COUNTING.md) have the same name. */
export class Canonicalizer {
  private readonly families: readonly Family[];
  private readonly carriersOf: (family: Family) => readonly WeaveSymmetry[];
  private readonly startsFor: (
    family: Family,
    n: number,
    m: number,
  ) => { readonly begun: StartsAlike; readonly starts: ReturnType<typeof startsOf> };

  constructor(question: Question, families: readonly Family[]) {
    this.families = families;
    this.carriersOf = memoized(REMEMBERED, (family: Family) => weaveSymmetries(question, family));
    this.startsFor = memoized(
      REMEMBERED,
      (family: Family, n: number, m: number) => ({
        begun: startsAlike(question, family, n, m),
        starts: startsOf(question.starts, family, n, m),
      }),
      (family, n, m) => `${familyWritten(family, families)} ${n} ${m}`,
    );
  }

  /** The line that sorts first among the candidate's own and those of its images. */
  canonicalGenome(candidate: Candidate): string {
    const { family, warp, weft, start } = candidate;
    let name = genomeOf(candidate, this.families);
    for (const weaveSymmetry of this.carriersOf(family)) {
      const { begun, starts } = this.startsFor(family, warp.length, weft.length);
      const w = imageOf(warp, weaveSymmetry.flipAcross, weaveSymmetry.exchange);
      const f = imageOf(weft, weaveSymmetry.flipDown, weaveSymmetry.exchange);
      const number = begun(weaveSymmetry, ...start, w.turn, f.turn);
      const line = genomeOf({ family, warp: w.order, weft: f.order, start: starts[number]! }, this.families);
      if (line < name) name = line;
    }
    return name;
  }
}
