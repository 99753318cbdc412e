import { Misread } from '../../input/given.js';
import { LONGEST_REPEAT } from '../notation.js';
import { cycle, lcm, smallestPeriod } from '../repeat.js';

/**
 * Threads in one whole repeat: the least common multiple of the smallest periods of several cyclic lists, of which the
 * last are the colours. Throws a Problem if there are more than 2000.
 */
export function repeatOf(
  what: 'ends' | 'picks',
  colours: 'warp' | 'weft',
  ...lists: readonly (readonly unknown[])[]
): number {
  const repeat = lists.map(periodOf).reduce(lcm);
  if (repeat > LONGEST_REPEAT) {
    const [weave, colour] = [lists.slice(0, -1).map(periodOf).reduce(lcm), periodOf(lists.at(-1)!)];
    throw new Misread(
      `found colours that come again after ${colour} ${what} on a weave that does after ${weave}, together ${repeat}; expected ${LONGEST_REPEAT} at most`,
      { within: [colours] },
    );
  }
  return repeat;
}

/** Length of the smallest cyclic repeat of a list; it divides the list's length. */
export function periodOf(list: readonly unknown[]): number {
  return smallestPeriod(list.map(String));
}

/**
 * The unit lengths of a whole repeat. `units` are the unit lengths of the `written` threads, repeated; without them
 * each thread is a unit. Throws a Problem if the end of the repeat would cut a unit.
 */
export function unitsOver(
  units: readonly number[] | undefined,
  written: readonly unknown[],
  repeat: number,
  what: 'ends' | 'picks',
): number[] {
  if (units === undefined) return cycle([1], repeat);
  const sum = units.reduce((all, unit) => all + unit, 0);
  if (written.length % sum !== 0) {
    throw new Misread(
      `found units of ${units.join(' ')}, together ${sum}; expected them to fill ${written.length} ${what}`,
    );
  }
  const starts = unitStarts(cycle(units, (written.length / sum) * units.length));
  if (repeat % periodOf(starts) !== 0) {
    throw new Misread(
      `found units of ${units.join(' ')}; expected units that fill the ${repeat} ${what} after which all comes again`,
    );
  }
  const begun = cycle(starts, repeat).flatMap((start, at) => (start ? [at] : []));
  return begun.map((at, unit) => (begun[unit + 1] ?? repeat) - at);
}

/** For each thread, whether a unit begins with it. */
export function unitStarts(units: readonly number[]): boolean[] {
  return units.flatMap((unit) => Array.from({ length: unit }, (_, at) => at === 0));
}
