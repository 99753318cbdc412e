import * as v from 'valibot';
import type { Yarn } from '../colour/yarn.js';
import { DENSEST, type Draft, EVEN_WIDTHS } from '../draft/draft.js';
import { LONGEST_DRAFT, MOST_SHAFTS } from '../draft/limits.js';
import { formatOrder } from '../order/order.js';
import { quote } from '../problem.js';

/** Most threads in a repeat, and so most treadles, of a gallery's draft: larger numbers mean damage. */
const MOST_THREADS = LONGEST_DRAFT;

const numbersTo = (most: number) => {
  const place = v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(most));
  return { place, places: v.pipe(v.array(place), v.maxLength(most)) };
};
const shaft = numbersTo(MOST_SHAFTS);
const treadle = numbersTo(MOST_THREADS);
const threadsOn = ({ place, places }: typeof shaft) =>
  v.pipe(v.array(v.union([place, places], 'a number or a list of numbers')), v.minLength(1), v.maxLength(MOST_THREADS));
const letters = v.pipe(v.string(), v.minLength(1), v.maxLength(MOST_THREADS));
const units = v.pipe(v.array(v.pipe(v.number(), v.integer(), v.minValue(1))), v.maxLength(MOST_THREADS));
/** Schema of a number of threads per inch or centimetre. */
export const density = v.pipe(v.number(), v.gtValue(0), v.maxValue(DENSEST));
const positive = v.pipe(v.number(), v.gtValue(0), v.maxValue(1e6));

/** Schema of a complete draft: one whole repeat, its yarns and its sett. */
export const storedDraftSchema = v.object({
  threading: threadsOn(shaft),
  tieUp: v.pipe(v.array(shaft.places), v.maxLength(MOST_THREADS)),
  treadling: threadsOn(treadle),
  pickKinds: v.pipe(v.array(v.picklist(['ground', 'pattern', 'tabby'])), v.maxLength(MOST_THREADS)),
  warp: letters,
  weft: letters,
  endUnits: v.optional(units),
  pickUnits: v.optional(units),
  widths: v.optional(v.object({ warp: positive, ground: positive, pattern: positive, tabby: positive })),
  yarns: v.pipe(
    v.array(
      v.object({
        letter: v.pipe(v.string(), v.regex(/^[A-Z]$/, 'a capital letter')),
        name: v.pipe(v.string(), v.maxLength(200)),
        hex: v.pipe(v.string(), v.regex(/^#[0-9a-f]{6}$/, 'a colour such as #1f2a44')),
        tex: v.optional(positive),
      }),
    ),
    v.minLength(1),
  ),
  sett: v.object({ ends: density, picks: density, per: v.picklist(['inch', 'cm']) }),
});

type StoredDraft = v.InferOutput<typeof storedDraftSchema>;

/** Converts a draft to its JSON form. */
export function storedDraft(draft: Draft): StoredDraft {
  const plain = (on: readonly number[]): number | number[] => (on.length === 1 ? on[0]! : [...on]);
  const { widths } = draft;
  return {
    threading: draft.threading.map(plain),
    tieUp: draft.tieUp.map((shafts) => [...shafts]),
    treadling: draft.treadling.map(plain),
    pickKinds: [...draft.pickKinds],
    warp: formatOrder(draft.warp, draft.yarns),
    weft: formatOrder(draft.weft, draft.yarns),
    ...(draft.endUnits.some((unit) => unit !== 1) && { endUnits: [...draft.endUnits] }),
    ...(draft.pickUnits.some((unit) => unit !== 1) && { pickUnits: [...draft.pickUnits] }),
    ...(Object.values(widths).some((width) => width !== 1) && { widths }),
    yarns: draft.yarns.map((yarn) => ({ ...yarn })),
    sett: { ...draft.sett },
  };
}

/** Converts the JSON form back to a draft. {@link faultOf} must have returned undefined. */
export function restoredDraft(stored: StoredDraft): Draft {
  const listed = (on: number | number[]): number[] => (typeof on === 'number' ? [on] : on);
  const index = new Map(stored.yarns.map((yarn, at) => [yarn.letter, at]));
  const colours = (word: string): number[] => Array.from(word, (letter) => index.get(letter)!);
  return {
    threading: stored.threading.map(listed),
    tieUp: stored.tieUp,
    treadling: stored.treadling.map(listed),
    pickKinds: stored.pickKinds,
    endUnits: stored.endUnits ?? stored.threading.map(() => 1),
    pickUnits: stored.pickUnits ?? stored.treadling.map(() => 1),
    widths: stored.widths ?? EVEN_WIDTHS,
    yarns: stored.yarns.map(({ tex, ...yarn }): Yarn => (tex === undefined ? yarn : { ...yarn, tex })),
    warp: colours(stored.warp),
    weft: colours(stored.weft),
    sett: stored.sett,
  };
}

/** The first contradiction between the fields of a stored draft, with place, found and expected; undefined if none. */
export function faultOf(stored: StoredDraft): string | undefined {
  const known = stored.yarns.map((yarn) => yarn.letter);
  if (new Set(known).size < known.length) return 'yarns: found a letter twice; expected each once';
  const sum = (lengths: readonly number[]): number => lengths.reduce((total, length) => total + length, 0);
  const ends = stored.threading.length;
  const picks = stored.treadling.length;
  const lengths: readonly (readonly [string, number, number])[] = [
    ['warp', stored.warp.length, ends],
    ['weft', stored.weft.length, picks],
    ['pickKinds', stored.pickKinds.length, picks],
    ['endUnits', stored.endUnits === undefined ? ends : sum(stored.endUnits), ends],
    ['pickUnits', stored.pickUnits === undefined ? picks : sum(stored.pickUnits), picks],
  ];
  for (const [where, found, expected] of lengths) {
    if (found !== expected) return `${where}: found ${found} threads; expected the repeat’s ${expected}`;
  }
  for (const where of ['warp', 'weft'] as const) {
    const stranger = Array.from(stored[where]).find((letter) => !known.includes(letter));
    if (stranger !== undefined)
      return `${where}: found ${quote(stranger)}; expected letters of the yarns (${known.join(' ')})`;
  }
  const treadle = stored.treadling.flat().reduce((most, each) => Math.max(most, each), 0);
  return treadle > stored.tieUp.length
    ? `treadling: found treadle ${treadle}; expected at most ${stored.tieUp.length}, the treadles tied up`
    : undefined;
}
