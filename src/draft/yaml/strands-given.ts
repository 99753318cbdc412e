import { describe, eachOf, type Given, Misread, textOf, wholeOf, wordOf } from '../../input/given.js';
import type { PickKind } from '../draft.js';
import { LOOM_SHAFTS, LOOM_TREADLES } from '../limits.js';
import { LONGEST_REPEAT, numbers, readElements } from '../notation.js';
import { runTogether } from '../run-together.js';

/** Shafts of one end, or of one lift; treadles of one pick. */
type Numbers = readonly number[];

/** The sheds of a draft: its tie-up, and the treadles of each pick. */
export interface Sheds {
  readonly tieUp: readonly Numbers[];
  readonly treadling: readonly Numbers[];
}

const SHAFTS = numbers('shaft', LOOM_SHAFTS);
const ENDS = numbers('shaft', LOOM_SHAFTS, true);
const PICKS = numbers('treadle', LOOM_TREADLES, true);
const KINDS: readonly PickKind[] = ['ground', 'pattern', 'tabby'];
export const PICK_KINDS = 'kinds of pick, as pattern tabby';
export const UNITS = `threads in a unit, from 1 to ${LONGEST_REPEAT}`;
export const ORDER = 'a colour order such as D L D D L';
export const LIFTS = 'a list of the shafts of each, as [1 2, 2 3, 3 4, 4 1]';

/** Reads a threading: shafts of each end; none is written 0. */
export function endsOf(given: Given): Numbers[] {
  return strandsOf(given, ENDS);
}

/** Reads a treadling: treadles of each pick; none is written 0. */
export function picksOf(given: Given): Numbers[] {
  return strandsOf(given, PICKS);
}

/** Reads a tie-up: shafts of each treadle; none is written 0 or []. */
export function tieUpOf(given: Given): Numbers[] {
  if (typeof given === 'string') throw new Misread(`found ${describe(given)}; expected ${LIFTS}`);
  if (Array.isArray(given) && given.length > LOOM_TREADLES) {
    throw new Misread(`found ${given.length} treadles; expected ${LOOM_TREADLES} at most`);
  }
  return eachOf(given, LIFTS, liftOf);
}

/** Reads a lift plan: shafts at each pick. */
export function liftPlanOf(given: Given): Numbers[] {
  if (typeof given === 'string') throw new Misread(`found ${describe(given)}; expected ${LIFTS}`);
  if (Array.isArray(given) && given.length > LONGEST_REPEAT) {
    throw new Misread(`found ${given.length} picks; expected ${LONGEST_REPEAT} at most`);
  }
  return eachOf(given, LIFTS, liftOf);
}

/** Reads kinds of pick, in turn and over again. */
export function pickKindsOf(given: Given): PickKind[] {
  const kinds = eachOf(given, PICK_KINDS, (kind) => wordOf(kind, KINDS), /[\s,]+/);
  if (kinds.length > LONGEST_REPEAT)
    throw new Misread(`found ${kinds.length} kinds; expected ${LONGEST_REPEAT} at most`);
  return kinds;
}

/** Reads unit lengths: one, or a list. */
export function unitsOf(given: Given): number[] {
  return eachOf(given, UNITS, (unit) => wholeOf(unit, UNITS, 1, LONGEST_REPEAT), /[\s,]+/);
}

/** The text of a colour order, given as one text or as a list of letters. */
export function orderTextOf(given: Given): string {
  return typeof given === 'string'
    ? textOf(given, ORDER)
    : eachOf(given, ORDER, (item) => textOf(item, ORDER)).join(' ');
}

/** The sheds of a draft as a rising shed, from its tie-up and treadling or from its lift plan. */
export function tiedUp(written: {
  readonly threading: readonly Numbers[];
  readonly 'tie-up'?: readonly Numbers[] | undefined;
  readonly treadling?: readonly Numbers[] | undefined;
  readonly 'lift plan'?: readonly Numbers[] | undefined;
  readonly sinking?: boolean | undefined;
}): Sheds {
  const { 'tie-up': tieUp, treadling, 'lift plan': lifts, sinking = false } = written;
  if (lifts !== undefined && (tieUp ?? treadling) !== undefined) {
    throw new Misread('found a lift plan beside a tie-up or treadling; expected one or the other', {
      within: ['lift plan'],
      key: true,
    });
  }
  for (const [key, given] of [
    ['tie-up', tieUp],
    ['lift plan', lifts],
  ] as const) {
    const slip = runTogether(written.threading, given ?? []);
    if (slip !== undefined) {
      throw new Misread(`found ${slip.found}; expected ${slip.expected}`, { within: [key, slip.lift] });
    }
  }
  const sheds = lifts === undefined ? pressed(tieUp, treadling) : lifted(lifts);
  if (!sinking) return sheds;
  const shafts = Math.max(...written.threading.flat(), ...sheds.tieUp.flat());
  const all = Array.from({ length: shafts }, (_, s) => s + 1);
  return { ...sheds, tieUp: sheds.tieUp.map((lowered) => all.filter((shaft) => !lowered.includes(shaft))) };
}

function pressed(tieUp: readonly Numbers[] | undefined, treadling: readonly Numbers[] | undefined): Sheds {
  if (tieUp === undefined || treadling === undefined) {
    const key = tieUp === undefined ? 'tie-up' : 'treadling';
    throw new Misread(`found no “${key}”; expected tie-up and treadling, or a lift plan`);
  }
  const pick = treadling.findIndex((treadles) => treadles.some((treadle) => treadle > tieUp.length));
  if (pick >= 0) {
    throw new Misread(
      `found treadle ${Math.max(...treadling[pick]!)} at pick ${pick + 1}; expected 1 to ${tieUp.length}, as many as the tie-up has`,
      { within: ['treadling'] },
    );
  }
  return { tieUp, treadling };
}

/** Converts a lift plan to sheds: one treadle for each different lift, in order of first use. */
function lifted(lifts: readonly Numbers[]): Sheds {
  const treadles = new Map<string, number>();
  const tieUp: Numbers[] = [];
  const treadling = lifts.map((lift) => {
    const word = lift.join();
    const treadle = treadles.get(word) ?? tieUp.push(lift);
    treadles.set(word, treadle);
    return [treadle];
  });
  if (tieUp.length > LOOM_TREADLES) {
    throw new Misread(`found ${tieUp.length} different lifts; expected ${LOOM_TREADLES} at most`, {
      within: ['lift plan'],
    });
  }
  return { tieUp, treadling };
}

function strandsOf(given: Given, alphabet: typeof SHAFTS): Numbers[] {
  if (typeof given === 'string') return readElements(textOf(given, alphabet.expected), alphabet);
  if (Array.isArray(given) && given.length > LONGEST_REPEAT) {
    throw new Misread(`found ${given.length} threads; expected ${LONGEST_REPEAT} at most`);
  }
  const strands = eachOf(given, alphabet.expected, (item) =>
    typeof item === 'string' ? readElements(textOf(item, alphabet.expected), alphabet) : [together(item, alphabet)],
  ).flat();
  if (strands.length > LONGEST_REPEAT) {
    throw new Misread(`found ${strands.length} threads; expected ${LONGEST_REPEAT} at most`);
  }
  return strands;
}

/** Shafts that work together: `1 2`, [1, 2], or none (0 or []). */
function liftOf(given: Given): Numbers {
  if (typeof given !== 'string') return Array.isArray(given) && given.length === 0 ? [] : together(given, SHAFTS);
  const text = textOf(given, LIFTS);
  if (text === '0') return [];
  return once(readElements(text, SHAFTS, LOOM_SHAFTS).flat());
}

function together(given: Given, alphabet: typeof SHAFTS): Numbers {
  return once(
    eachOf(given, alphabet.expected, (item) =>
      readElements(textOf(item, alphabet.expected), alphabet, LOOM_SHAFTS),
    ).flat(2),
  );
}

function once(all: Numbers): Numbers {
  const twice = all.find((number, at) => all.indexOf(number) < at);
  if (twice !== undefined) throw new Misread(`found ${twice} twice; expected each number once`);
  return all;
}
