import { upTo } from '../../words/measure.js';

/** The amount of one yarn in a plan. Lengths in millimetres, weights in grams; null if the size is unknown. */
export interface YarnAmount {
  /** Letter of the yarn. */
  readonly letter: string;
  /** Set if the amount is for pattern wefts alone, which are thicker than other threads under this letter. */
  readonly use?: 'pattern weft';
  /** Grams per 1000 m; null if the size is unknown. */
  readonly tex: number | null;
  readonly warp: number;
  readonly weft: number;
  readonly total: number;
  readonly grams: number | null;
  /** The total plus the reserve. */
  readonly withReserve: number;
  readonly gramsWithReserve: number | null;
}

/**
 * Extra weft beyond the width in the reed, for waves and turns, and the reserve of all yarn, as shares (common
 * practice).
 */
export const WEFT_EXTRA = 0.1;
const RESERVE = 0.1;

/** Weight in grams of `mm` millimetres of yarn of `tex` grams per 1000 m. */
export function gramsOf(mm: number, tex: number): number {
  return (mm / 1e6) * tex;
}

/** Whole picks that cover a length of cloth. `length` and `picksPer` are in the same measure. */
export function picksIn(length: number, picksPer: number): number {
  return upTo(length * picksPer, 1);
}

/** Counts each index in the first `count` places of a repeated word; indices are below `kinds`. */
export function tally(word: ArrayLike<number>, count: number, kinds: number): number[] {
  const found = new Array<number>(kinds).fill(0);
  for (let k = 0; k < count; k++) found[word[k % word.length]!]!++;
  return found;
}

/** `D`, or `D pattern weft`. */
export function yarnName({ letter, use }: { readonly letter: string; readonly use?: string | undefined }): string {
  return use === undefined ? letter : `${letter} ${use}`;
}

/** Computes the amount of one yarn from warp and weft lengths in millimetres, and its tex if known. */
export function yarnAmount(
  letter: string,
  warp: number,
  weft: number,
  tex: number | undefined,
  use?: YarnAmount['use'],
): YarnAmount {
  const total = warp + weft;
  const withReserve = total * (1 + RESERVE);
  const weigh = (mm: number): number | null => (tex === undefined ? null : gramsOf(mm, tex));
  return {
    letter,
    ...(use !== undefined && { use }),
    tex: tex ?? null,
    warp,
    weft,
    total,
    grams: weigh(total),
    withReserve,
    gramsWithReserve: weigh(withReserve),
  };
}
