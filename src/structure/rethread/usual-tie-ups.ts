import type { Lift } from '../loom/lifts.js';

/** A tie-up that goes round its shafts: each treadle raises what the one before it raises, one shaft further on. */
export interface RegularTieUp {
  /** Picks over and under each end in turn, `2/2` or `3/1/1/3`. */
  readonly name: string;
  readonly lifts: readonly Lift[];
  /** Every end is up for one run of picks and down for one. */
  readonly runs: readonly number[];
}

/** The longest run of a twill with one rise: a satin of eight has it. */
const LONGEST_RUN = 7;
/** The longest run of a twill with two rises. */
const LONGEST_OF_FOUR = 3;
/** On five to eight shafts twills rise twice as well. */
const TWO_RISES = { from: 5, to: 8 };
/** On more shafts there are too many tie-ups to try them all. */
export const EVERY_TIE_UP_SHAFTS = 4;

/**
 * The regular twills on so many shafts, plain weave (1/1) among them: all with one rise whose repeat divides the shafts
 * and whose runs are of seven at the most; on five to eight shafts those with two rises and runs of three at the most.
 * Which shaft a treadle begins on makes no other twill; which way the diagonal runs is a matter of the treadling.
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
        // Begun with the other rise it is the same twill; with two like rises its repeat is half as long.
        if (first * 10 + under > second * 10 + last) found.push(tieUp(shafts, [first, under, second, last]));
      }
    }
  }
  return found;
}

/** Ends up of a twill with one rise, the most balanced first. */
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
 * Every tie-up of as many treadles as shafts that may weave something on a straight treadling: no shed that is open
 * nowhere, no shaft that is always up or always down. Of those that only begin with another treadle, one.
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

/** Whether no other beginning sorts before this one. */
function isFirstTurn(ring: readonly number[]): boolean {
  return ring.every((_, turn) => {
    const differs = ring.findIndex((word, i) => word !== ring[(i + turn) % ring.length]);
    return differs < 0 || ring[differs]! < ring[(differs + turn) % ring.length]!;
  });
}

function shaftsOf(set: number): number[] {
  return Array.from({ length: 32 - Math.clz32(set) }, (_, bit) => bit + 1).filter((shaft) => set & (1 << (shaft - 1)));
}
