import { Problem } from '../problem.js';

/** Largest file that is read, in bytes: a lift plan of 20,000 picks on 40 shafts fits. */
export const LARGEST_WIF = 4_000_000;
/** Most shafts, and most treadles, in a file. */
export const MOST_SHAFTS = 256;
export const MOST_TREADLES = 512;
/**
 * Most shafts, and most treadles, of a loom or of a draft that a person writes. A lift plan counts as one treadle for
 * each lift that differs.
 */
export const LOOM_SHAFTS = 64;
export const LOOM_TREADLES = 128;
/** Most ends, and most picks, in a file. */
export const MOST_THREADS = 20_000;
/** Most colours in a file's table. */
export const MOST_COLOURS = 4096;
/** Most ends, and most picks, of a draft that is searched, drawn or recognised. */
export const LONGEST_DRAFT = 2000;

/**
 * Throws if a draft is too large to be searched.
 *
 * @throws Problem with the number of ends or picks found
 */
export function refuseLarge(draft: { readonly threading: readonly unknown[]; readonly treadling: readonly unknown[] }) {
  for (const [count, what] of [
    [draft.threading.length, 'ends'],
    [draft.treadling.length, 'picks'],
  ] as const) {
    if (count > LONGEST_DRAFT) {
      throw new Problem(`found a repeat of ${count} ${what}; expected ${LONGEST_DRAFT} at most`);
    }
  }
}
