import type { Lift } from '../loom/lifts.js';

/** A cyclic tie-up: each treadle raises the shafts of the treadle before it, moved on by one. */
export interface RegularTieUp {
  /** Picks over and under each end in turn, `2/2` or `3/1/1/3`. */
  readonly name: string;
  readonly lifts: readonly Lift[];
  /** Lengths of the runs: picks for which an end is up, and down, alternating. */
  readonly runs: readonly number[];
}

/** The longest run of a twill with one rise: a satin of eight has it. */
const LONGEST_RUN = 7;
/** The longest run of a twill with two rises. */
const LONGEST_OF_FOUR = 3;
/** On five to eight shafts twills rise twice as well. */
const TWO_RISES = { from: 5, to: 8 };
/** Most shafts for which all tie-ups are tried: more shafts have too many. */
export const EVERY_TIE_UP_SHAFTS = 4;

/**
 * The regular twills on `shafts` shafts, plain weave (1/1) included: all with one rise whose repeat divides the number
 * of shafts and whose runs are at most seven; on five to eight shafts, also those with two rises and runs of at most
 * three. The shaft on which a treadle begins makes no different twill, and the treadling decides the direction of the
 * diagonal.
 */
export function regularTieUps(shafts: number): RegularTieUp[] {
  const found: RegularTieUp[] = [];
  for (let repeat = shafts; repeat >= 2; repeat--) {
    if (shafts % repeat !== 0) continue;
    for (const up of nearestToHalf(repeat)) found.push(tieUp(shafts, [up, repeat - up]));
  }
  if (shafts < TWO_RISES.from || shafts > TWO_RISES.to) return found;
  for (let first = LONGEST_OF_FOUR; first >= 1; first--) {
    for (let under = LONGEST_OF_FOUR; under >= 1; under--) {
      for (let second = LONGEST_OF_FOUR; second >= 1; second--) {
        const last = shafts - first - under - second;
        if (last < 1 || last > LONGEST_OF_FOUR) continue;
        // Beginning with the other rise gives the same twill; with two equal rises the repeat is half as long.
        if (first * 10 + under > second * 10 + last) found.push(tieUp(shafts, [first, under, second, last]));
      }
    }
  }
  return found;
}

/** The possible numbers of raised ends in a twill with one rise, the most balanced first. */
function nearestToHalf(repeat: number): number[] {
  const ups = Array.from({ length: repeat - 1 }, (_, index) => index + 1);
  return ups
    .filter((up) => up <= LONGEST_RUN && repeat - up <= LONGEST_RUN)
    .sort((a, b) => Math.abs(2 * a - repeat) - Math.abs(2 * b - repeat) || a - b);
}

function tieUp(shafts: number, runs: readonly number[]): RegularTieUp {
  const rise = runs.flatMap((length, index) => new Array<boolean>(length).fill(index % 2 === 0));
  const lifts = rise.map((_, treadle) =>
    Array.from({ length: shafts }, (_, place) => place + 1).filter(
      (shaft) => rise[(shaft - 1 - treadle + shafts) % rise.length],
    ),
  );
  return { name: runs.join('/'), lifts, runs };
}

/**
 * Every tie-up, of as many treadles as shafts, that can weave on a straight treadling: no empty or full shed, and no
 * shaft that is always up or always down. Of tie-ups that differ only in the first treadle, one is returned.
 */
export function everyTieUp(shafts: number): Lift[][] {
  const most = (1 << shafts) - 1;
  const found: Lift[][] = [];
  const sheds: number[] = [];
  const add = (): void => {
    if (sheds.length === shafts) {
      const everUp = sheds.reduce((set, shed) => set | shed);
      const alwaysUp = sheds.reduce((set, shed) => set & shed);
      if (everUp === most && alwaysUp === 0 && isFirstTurn(sheds)) found.push(sheds.map(shaftsOf));
      return;
    }
    for (let shed = sheds[0] ?? 1; shed < most; shed++) {
      sheds.push(shed);
      add();
      sheds.pop();
    }
  };
  add();
  return found;
}

/** Whether this rotation is the first in order of all rotations. */
function isFirstTurn(ring: readonly number[]): boolean {
  return ring.every((_, turn) => {
    const differs = ring.findIndex((word, i) => word !== ring[(i + turn) % ring.length]);
    return differs < 0 || ring[differs]! < ring[(differs + turn) % ring.length]!;
  });
}

function shaftsOf(set: number): number[] {
  return Array.from({ length: 32 - Math.clz32(set) }, (_, bit) => bit + 1).filter((shaft) => set & (1 << (shaft - 1)));
}
