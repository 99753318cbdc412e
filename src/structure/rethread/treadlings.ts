import type { RegularTieUp } from './usual-tie-ups.js';

/** An order of treadles, in units of picks. */
export interface Treadling {
  readonly name: string;
  /** Treadles of each unit, numbered from 1. */
  readonly units: readonly (readonly number[])[];
}

/** A threading with one shaft per end: the shaft of each end, numbered from 1 among the shafts in use. */
export interface Places {
  readonly ends: readonly number[];
  readonly units: readonly number[];
}

/**
 * The treadlings that weavers know for the treadles of a regular twill: straight on, turned, broken, doubled, and in
 * the order of the threading (common practice, no source; the orders for four treadles are those of the twills known
 * here).
 */
export function treadlingsFor({ lifts, runs }: RegularTieUp, threaded: Places): Treadling[] {
  const count = lifts.length;
  const straight = Array.from({ length: count }, (_, treadle) => treadle + 1);
  const one = (name: string, ...units: readonly (readonly number[])[]): Treadling => ({ name, units });
  if (count === 2) return [one('straight', straight), one('each pick twice', straight.flatMap(twice))];
  const back = straight.toReversed();
  const half = count / 2;
  const isEven = count % 2 === 0;
  const broken = isEven ? [...straight.slice(0, half).reverse(), ...straight.slice(half).reverse()] : [];
  const drawnIn = inUnits(
    threaded.ends.map((place) => ((place - 1) % count) + 1),
    threaded.units,
  );
  const skipping = count === 4 ? [1, 2, 4, 3] : satinOrder(count);
  return [
    one('straight', straight),
    one('reversed', back),
    one('point', [...straight, ...back.slice(1, -1)]),
    one('as drawn in', ...drawnIn),
    ...(isEven ? [one('rose', ...drawnIn.map((unit) => unit.map(neighbour)))] : []),
    ...(skipping === undefined ? [] : [one(count === 4 ? 'broken' : 'in satin order', skipping)]),
    ...(isEven ? [one('herringbone', straight, straight, broken, broken)] : []),
    one('rosepath', [...straight, 1, ...back.slice(0, -1)]),
    one('each pick twice', straight.flatMap(twice)),
    // Opposite sheds, for ends and picks in equal groups.
    ...(runs.length === 2 && runs[0] === runs[1]
      ? [
          one(
            'basket',
            [1, half + 1].flatMap((treadle) => new Array<number>(half).fill(treadle)),
          ),
          one('half basket', [1, half + 1]),
        ]
      : []),
  ];
}

/** Treadlings that may have a plain-weave pick after each pick, as in overshot. */
export const WITH_TABBY: readonly string[] = ['straight', 'point', 'as drawn in', 'rose'];

const twice = (treadle: number): number[] => [treadle, treadle];

/** 2 for 1, 1 for 2, 4 for 3 …: this converts star fashion to rose fashion. */
const neighbour = (treadle: number): number => (treadle % 2 === 1 ? treadle + 1 : treadle - 1);

/** Visits every treadle once in equal steps other than one forward or one back; undefined if no step does so. */
function satinOrder(count: number): number[] | undefined {
  for (let move = 2; move < count - 1; move++) {
    const order = Array.from({ length: count }, (_, pick) => ((pick * move) % count) + 1);
    if (new Set(order).size === count) return order;
  }
  return undefined;
}

function inUnits(treadles: readonly number[], lengths: readonly number[]): number[][] {
  let from = 0;
  return lengths.map((length) => {
    from += length;
    return treadles.slice(from - length, from);
  });
}
