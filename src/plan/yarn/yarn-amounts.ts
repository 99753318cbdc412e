import { upTo } from '../../words/measure.js';

/** Yarn that a plan takes of one yarn. Lengths in millimetres, weights in grams; null where the size is not known. */
export interface YarnAmount {
  /** Letter of the yarn. */
  readonly letter: string;
  readonly warp: number;
  readonly weft: number;
  readonly total: number;
  readonly grams: number | null;
  /** The total with what is kept back. */
  readonly withReserve: number;
  readonly gramsWithReserve: number | null;
}

/** Weft taken in beyond the width in the reed, for waves and turns, and kept back of all yarn (common practice). */
export const WEFT_EXTRA = 0.1;
const RESERVE = 0.1;

/** Grams of a length (mm) of yarn of so many grams per 1000 m. */
export function gramsOf(mm: number, tex: number): number {
  return (mm / 1e6) * tex;
}

/** Picks in a length of cloth, the last one whole. `length` and `picksPer` in the same measure. */
export function picksIn(length: number, picksPer: number): number {
  return upTo(length * picksPer, 1);
}

/** How often each index occurs in the first `count` places of a word that goes on repeating. */
export function tally(word: ArrayLike<number>, count: number, kinds: number): number[] {
  const found = new Array<number>(kinds).fill(0);
  for (let k = 0; k < count; k++) found[word[k % word.length]!]!++;
  return found;
}

/** What is needed of one yarn: warp and weft lengths in mm, tex where known. */
export function yarnAmount(letter: string, warp: number, weft: number, tex: number | undefined): YarnAmount {
  const total = warp + weft;
  const withReserve = total * (1 + RESERVE);
  const weigh = (mm: number): number | null => (tex === undefined ? null : gramsOf(mm, tex));
  return { letter, warp, weft, total, grams: weigh(total), withReserve, gramsWithReserve: weigh(withReserve) };
}
