import { gcd, lcm } from '../../order/necklace.js';
import { Problem } from '../../problem.js';

/** One section of a gamp: its order, and its number of threads. */
export interface Section {
  readonly order: readonly number[];
  readonly threads: number;
}

/** Warp sections, or weft sections, with separators between and outside. */
interface Sections {
  readonly sections: readonly Section[];
  /** Threads in each separator. */
  readonly separator: number;
  /** Palette index of the yarn of the separators. */
  readonly yarn: number;
}

/**
 * Checks that each section holds whole repeats of its order, and that section and separator together hold whole repeats
 * of the weave, so that every section starts in step with it.
 *
 * @param weaveRepeat threads in one repeat of the weave
 * @throws Problem naming the nearest sizes that hold whole repeats
 */
export function checkSections({ sections, separator }: Sections, weaveRepeat: number): void {
  sections.forEach(({ order, threads }, at) => {
    const fits = rightSizes(threads, order.length, separator, weaveRepeat);
    if (fits.includes(threads)) return;
    throw new Problem(
      `section ${at + 1}: found ${threads} threads for an order of ${order.length}; expected whole repeats that ` +
        `start in step with the weave${fits.length === 0 ? ', which no size gives with this separator' : `: ${fits.join(' or ')}`}`,
    );
  });
}

/**
 * The allowed sizes of a section nearest to `threads`: `threads` alone if it is allowed, else the nearest below and
 * above. A size is allowed if it holds whole repeats of the order, and with the separator whole repeats of the weave.
 * Empty if the separator allows no size.
 */
export function rightSizes(threads: number, order: number, separator: number, weaveRepeat: number): number[] {
  if (separator % gcd(order, weaveRepeat) !== 0) return [];
  const fits = (size: number): boolean => size > 0 && size % order === 0 && (size + separator) % weaveRepeat === 0;
  const period = lcm(order, weaveRepeat);
  if (fits(threads)) return [threads];
  const sizes: number[] = [];
  for (let size = threads - 1; size > threads - 1 - period && sizes.length === 0; size--) {
    if (fits(size)) sizes.push(size);
  }
  for (let size = threads + 1; ; size++) if (fits(size)) return [...sizes, size];
}

/** The colours of a whole gamp in one direction: separator, section, separator, … separator. */
export function gampColours({ sections, separator, yarn }: Sections): number[] {
  const between = new Array<number>(separator).fill(yarn);
  const laid = sections.flatMap(({ order, threads }) => [
    ...Array.from({ length: threads }, (_, k) => order[k % order.length]!),
    ...between,
  ]);
  return [...between, ...laid];
}

/** The first thread of each section, counted in threads from the edge. */
export function sectionStarts({ sections, separator }: Sections): number[] {
  let at = 0;
  return sections.map(({ threads }) => {
    const start = at + separator;
    at = start + threads;
    return start;
  });
}

/** The number of a square, from 1: numbers run across the warp sections, then on to the next weft section. */
export function squareNumber(warpSection: number, weftSection: number, warpSections: number): number {
  return weftSection * warpSections + warpSection + 1;
}
