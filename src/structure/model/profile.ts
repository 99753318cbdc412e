import { Problem, quote } from '../../problem.js';

/** Most elements of a profile; guards against `999999999A`. */
const LONGEST_PROFILE = 4096;

/**
 * Reads a profile: letters of blocks, spaces allowed, a count before or after a letter, or after a bracket.
 * `A A B A B`, `AABAB`, `4A 2B`, `A4 B2` and `(AB)3` are all profiles.
 *
 * @param blocks the letters that there are
 * @throws Problem on an unknown block (naming the blocks that there are), counts on both sides of a letter, a bracket
 * without its fellow, or an empty profile
 */
export function parseProfile(text: string, blocks: readonly string[]): string[] {
  const fail = (found: string): never => {
    throw new Problem(
      `profile ${quote(text)}: found ${found}; expected blocks ${blocks.join(', ')}, counts or brackets`,
    );
  };
  const levels: string[][] = [[]];
  const lay = (elements: readonly string[], count: string): void => {
    const level = levels.at(-1)!;
    const times = Number(count) || fail('a count of 0');
    if (level.length + elements.length * times > LONGEST_PROFILE) {
      throw new Problem(`profile ${quote(text)}: longer than ${LONGEST_PROFILE} elements`);
    }
    for (let t = 0; t < times; t++) level.push(...elements);
  };
  for (const token of text.matchAll(/\s+|(\d+)?([A-Za-z])(\d+)?|\(|\)(\d+)?|\d+|[\s\S]/g)) {
    const [sign, before, letter, after, times] = token;
    if (letter !== undefined) {
      const block = letter.toUpperCase();
      if (!blocks.includes(block)) fail(quote(letter));
      if (before !== undefined && after !== undefined) fail(`${quote(sign)}, which may need a space (4A 2B)`);
      lay([block], before ?? after ?? '1');
    } else if (sign === '(') {
      levels.push([]);
    } else if (sign.startsWith(')')) {
      const inside = levels.pop()!;
      if (levels.length === 0) fail('a closing bracket without its opening one');
      if (inside.length === 0) fail('an empty bracket');
      lay(inside, times ?? '1');
    } else if (sign.trim() !== '') {
      fail(quote(sign));
    }
  }
  if (levels.length > 1) throw new Problem(`profile ${quote(text)}: a bracket is not closed`);
  if (levels[0]!.length === 0) throw new Problem(`a profile is empty; expected blocks ${blocks.join(', ')}`);
  return levels[0]!;
}
