import { oneRepeat } from '../../draft/shortest-repeat.js';

/** One repeat of a cyclic list, then the whole list if it is longer: a unit may hold several repeats (1-2-1-2). */
export function repeatAndAll(ring: readonly number[]): (readonly number[])[] {
  const repeat = oneRepeat(ring);
  return repeat.length === ring.length ? [ring] : [repeat, ring];
}

/** Whether one cyclic list is a rotation of the other. */
export function isTurn<T>(ring: readonly T[], other: readonly T[]): boolean {
  const { length } = ring;
  if (other.length !== length) return false;
  return ring.some((_, turn) => ring.every((word, i) => word === other[(i + turn) % length]));
}
