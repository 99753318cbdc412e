import type { Classic } from '../../score/likeness/novelty.js';

/** The most that novelty can be of a cloth, each of whose traits is known to be from one number to another. */
type NoveltyMost = (least: ArrayLike<number>, most: ArrayLike<number>) => number;

const made = new WeakMap<readonly Classic[], NoveltyMost>();

/** Bounds novelty beside some classics. Many of them are alike, and one of each is enough for a bound. */
export function noveltyMostBeside(classics: readonly Classic[]): NoveltyMost {
  const known = made.get(classics) ?? noveltyMost(classics);
  made.set(classics, known);
  return known;
}

function noveltyMost(classics: readonly Classic[]): NoveltyMost {
  const unlike = new Map(classics.map(({ traits }) => [traits.map((trait) => trait.toFixed(9)).join(), traits]));
  const all = [...unlike.values()];
  return (least, most) => {
    let nearest = least.length;
    for (const traits of all) {
      let sum = 0;
      // Most are known to be farther off before all traits are compared.
      for (let t = 0; t < traits.length && sum < nearest; t++) {
        const trait = traits[t]!;
        sum += Math.max(trait - least[t]!, most[t]! - trait);
      }
      nearest = Math.min(nearest, sum);
    }
    return nearest / least.length;
  };
}
