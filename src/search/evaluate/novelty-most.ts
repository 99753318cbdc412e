import type { Classic } from '../../score/likeness/novelty.js';

/** Place of symmetry among the traits. Classics share few values of it, so that it is compared last, once for each. */
const SYMMETRY = 3;

/**
 * The most that novelty can be of a cloth, each of whose traits is known to be from one number to another. Many classics
 * are alike, and one of each is enough for a bound.
 */
export class NoveltyMost {
  private readonly groups: readonly { readonly symmetry: number; readonly others: Float64Array }[];
  /** How far the cloth in hand is at the most from the nearest classic of each group, symmetry left out. */
  private readonly nearest: Float64Array;
  /** Where the traits of the cloth in hand are in the middle, symmetry left out. */
  private readonly middle: Float64Array;
  private readonly traits: number;

  private constructor(classics: readonly Classic[]) {
    const unlike = new Map(classics.map(({ traits }) => [traits.map((trait) => trait.toFixed(9)).join(), traits]));
    const groups = new Map<number, number[]>();
    for (const traits of unlike.values()) {
      const symmetry = traits[SYMMETRY]!;
      const others = groups.get(symmetry) ?? [];
      others.push(...traits.slice(0, SYMMETRY), ...traits.slice(SYMMETRY + 1));
      groups.set(symmetry, others);
    }
    this.groups = [...groups].map(([symmetry, others]) => ({ symmetry, others: Float64Array.from(others) }));
    this.nearest = new Float64Array(groups.size);
    this.traits = classics[0]!.traits.length;
    this.middle = new Float64Array(this.traits - 1);
  }

  private static readonly made = new WeakMap<readonly Classic[], NoveltyMost>();

  /** Beside some classics, of which there is at least one. */
  static beside(classics: readonly Classic[]): NoveltyMost {
    const made = NoveltyMost.made.get(classics) ?? new NoveltyMost(classics);
    NoveltyMost.made.set(classics, made);
    return made;
  }

  /**
   * Takes a cloth in hand, by what its traits are at the least and at the most; its symmetry is told later. Whether its
   * novelty is `counted` or more makes no difference.
   */
  take(least: ArrayLike<number>, most: ArrayLike<number>, counted = 1): void {
    const { middle, groups, nearest } = this;
    // A trait from a to b is from c at the most |c − (a + b)/2| + (b − a)/2 away.
    let spread = 0;
    for (let k = 0; k < middle.length; k++) {
      const t = k < SYMMETRY ? k : k + 1;
      middle[k] = (least[t]! + most[t]!) / 2;
      spread += (most[t]! - least[t]!) / 2;
    }
    for (let group = 0; group < groups.length; group++) {
      nearest[group] = nearestOf(groups[group]!.others, middle, spread, counted * this.traits);
    }
  }

  /** The most that the novelty of the cloth in hand can be, with this symmetry. */
  with(symmetry: number): number {
    let nearest = this.traits;
    this.groups.forEach((group, at) => {
      nearest = Math.min(nearest, this.nearest[at]! + Math.abs(symmetry - group.symmetry));
    });
    return nearest / this.traits;
  }
}

/** The least sum of differences from `middle` to one of a list of rows, and `spread`; at the most `far`. */
function nearestOf(rows: Float64Array, middle: Float64Array, spread: number, far: number): number {
  let nearest = far;
  for (let from = 0; from < rows.length; from += middle.length) {
    let sum = spread;
    // Most are known to be farther off before all traits are compared.
    for (let k = 0; k < middle.length && sum < nearest; k++) sum += Math.abs(rows[from + k]! - middle[k]!);
    if (sum < nearest) nearest = sum;
  }
  return nearest;
}
