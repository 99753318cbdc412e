import seedrandom from 'seedrandom';

/** Chance that is the same for the same seed. */
export function chance(seed) {
  const random = seedrandom.alea(seed);
  const below = (most) => Math.floor(random() * most);
  const pick = (list) => list[below(list.length)];
  return { random, below, pick };
}
