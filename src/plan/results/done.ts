import type { KeptCloth } from '../../formats/shortlist.js';
import { Problem } from '../../problem.js';
import { isFilledIn, type Result } from './results-form.js';

/** What one file says: its name, and what is in it. */
interface Of<T> {
  readonly file: string;
  readonly items: readonly T[];
}

/**
 * The cloths that are already woven, by file. A results file counts for the cloths for which something was filled in; a
 * list that holds their codes only identifies them. Every other list counts as woven completely.
 *
 * @throws Problem if a result's code is in none of the lists
 */
export function doneCloths(results: readonly Of<Result>[], lists: readonly Of<KeptCloth>[]): Of<KeptCloth>[] {
  const cloths = new Map(lists.flatMap(({ items }) => items.map((cloth) => [cloth.code, cloth] as const)));
  const codes = new Set(results.flatMap(({ items }) => items.map(({ code }) => code)));
  const woven = results.map(({ file, items }) => ({
    file,
    // A gamp is no cloth that a search could find; its squares are listed for themselves.
    items: items
      .filter((item) => isFilledIn(item) && item.squares === undefined)
      .map(({ code }) => {
        const cloth = cloths.get(code);
        if (cloth === undefined) {
          throw new Problem(
            `${file}: found ${code}, which no list given with it has; expected the shortlist or gallery that it is from as well`,
          );
        }
        return cloth;
      }),
  }));
  return [...woven, ...lists.filter(({ items }) => !items.some(({ code }) => codes.has(code)))];
}
