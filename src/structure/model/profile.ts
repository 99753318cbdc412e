import { letters, readElements } from '../../draft/notation.js';
import { Problem, quote } from '../../problem.js';

/** Most elements of a profile; guards against `999999999A`. */
const LONGEST_PROFILE = 4096;

/**
 * Reads a profile, the letters of blocks: `A A B A B`, `AABAB`, `4A 2B`, `A4 B2` and `(AB)3` are all profiles.
 *
 * @param blocks the letters that there are
 * @throws Problem on an unknown block (naming the blocks that there are), a count that cannot be read, a bracket without
 *   its fellow, or an empty profile
 */
export function parseProfile(text: string, blocks: readonly string[]): string[] {
  const expected = `blocks ${blocks.join(', ')}, counts or brackets`;
  if (text.trim() === '') throw new Problem(`a profile is empty; expected ${expected}`);
  const refuse = (_: number, found: string, instead: string): never => {
    throw new Problem(`profile ${quote(text)}: found ${found}; expected ${instead}`);
  };
  return readElements(text, { ...letters(blocks), expected }, LONGEST_PROFILE, refuse).map((at) => blocks[at]!);
}
