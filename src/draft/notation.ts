import { describe, Misread } from '../input/misread.js';
import { brief } from '../problem.js';

/** Most ends, and most picks, in one repeat, whether they are written out or come from counts. */
export const LONGEST_REPEAT = 2000;

/** What a list may be made of. */
interface Alphabet<T> {
  /** One element, or several written as one, from the place where the pattern was last set. */
  readonly element: RegExp;
  /** Converts a match to elements. */
  read(match: RegExpExecArray): readonly T[];
  /** Words for an element, for the message if the text holds something else. */
  readonly expected: string;
  /** Signs that may stand between a count and what it counts. Default: x and ×. */
  readonly times?: string;
}

/** Says what is wrong at a place in the text, counted from 0. */
type Refuse = (place: number, found: string, expected: string) => never;

const misread: Refuse = (offset, found, expected) => {
  throw new Misread(`found ${found}; expected ${expected}`, { offset });
};

/**
 * Reads a list in the manner of the trade: elements with spaces or commas between them, brackets, and repeats as
 * `4x(1 2 3 4)`, `(1 2 3 4)x4` or `4x1`. Where elements are letters, a count may also stand right before or after a letter or a
 * bracket: `4D 4L`, `D4 L4`, `4(DL)`, `(DL)4`.
 * Calls `refuse` with the place in the text on anything that is no element, on unmatched brackets, and on more elements
 * than `most`.
 */
export function readElements<T>(
  text: string,
  alphabet: Alphabet<T>,
  most = LONGEST_REPEAT,
  refuse: Refuse = misread,
): T[] {
  const open: { elements: T[]; times: number; at: number }[] = [];
  const ofLetters = !alphabet.element.test('1');
  // Right after a letter or bracket a count belongs to it; elsewhere, right before one, to that one.
  // Before the letter X it could be meant for `2x(…)`, so it is none.
  const lead = ofLetters ? `(?<lead>(?<![\\dA-Za-z)])\\d{1,9}(?=\\(|(?![xX])${alphabet.element.source}))|` : '';
  const other = ofLetters ? '.' : '[^\\s,()]+';
  const tokens = new RegExp(
    `(?<=\\))\\s*[${alphabet.times ?? 'x×'}]\\s*(?<behind>\\d{1,9})(?![\\d.])|[\\s,]+|(?<times>\\d{1,9})[${alphabet.times ?? 'x×'}]\\s*(?=[\\d(A-Za-z])|${lead}(?<element>${alphabet.element.source})|[()]|(?<after>\\d{1,9})(?![\\d.])|${other}`,
    'gu',
  );
  let level: T[] = [];
  let last: readonly T[] | undefined;
  let times = 1;
  /** Whether a count stood before what was laid last. */
  let isCounted = false;
  const fail = (place: number, found: string, expected = alphabet.expected): never => refuse(place, found, expected);
  const lay = (elements: readonly T[], count: number, at: number): void => {
    if (level.length + elements.length * count > most) fail(at, `more than ${most} elements`, `${most} at most`);
    for (let t = 0; t < count; t++) level.push(...elements);
  };
  /** Refuses a count that stands after nothing: what follows it may be no element, or apart from it. */
  const stray = (place: number, count: string): never => {
    const [, space, next] = /^(\s*)(\p{L})/u.exec(text.slice(place + count.length)) ?? [];
    if (next === undefined || (space === '' && alphabet.element.test(next)))
      return fail(place, `the count ${count} with nothing before it`);
    return alphabet.element.test(next)
      ? fail(place, `the count ${count} apart from what it counts`, `no space between, as ${count}${next}`)
      : fail(place + count.length, `${describe(next)} after the count ${count}`);
  };
  for (const token of text.matchAll(tokens)) {
    const at = token.index;
    const { lead: leading, times: marked, element, behind, after = behind } = token.groups!;
    const before = marked ?? leading;
    if (behind === undefined && /^[\s,]/.test(token[0])) continue;
    if (before !== undefined) {
      if (times !== 1) fail(at, `the count ${before} after another count`);
      times = Number(before) || fail(at, 'a count of 0', 'at least 1');
      last = undefined;
    } else if (token[0] === '(') {
      open.push({ elements: level, times, at });
      level = [];
      times = 1;
      last = undefined;
    } else if (token[0] === ')') {
      const bracket = open.pop() ?? fail(at, 'a closing bracket without its opening one');
      if (level.length === 0) fail(at, 'an empty bracket');
      last = level;
      level = bracket.elements;
      lay(last, bracket.times, bracket.at);
      isCounted = bracket.times !== 1;
      times = 1;
    } else if (element !== undefined) {
      const match = new RegExp(alphabet.element.source, 'u').exec(element)!;
      try {
        last = alphabet.read(match);
      } catch (error) {
        throw error instanceof Misread ? new Misread(error.message, { offset: at + (error.spot.offset ?? 0) }) : error;
      }
      lay(last, times, at);
      isCounted = times !== 1;
      times = 1;
    } else if (after !== undefined && (ofLetters || behind !== undefined)) {
      if (last === undefined) return stray(at, after);
      if (isCounted)
        fail(
          at,
          `the count ${after} after a letter or bracket with a count before it`,
          'one of the two; a space may be missing, as in 4D 2L',
        );
      lay(last, (Number(after) || fail(at, 'a count of 0', 'at least 1')) - 1, at);
      last = undefined;
    } else {
      fail(at, describe(token[0]));
    }
  }
  if (open.length > 0) fail(open[0]!.at, 'a bracket that is not closed', 'its partner');
  if (times !== 1) fail(text.length, 'a count with nothing after it');
  if (level.length === 0) fail(0, 'nothing');
  return level;
}

/**
 * Numbers of shafts or treadles. Two with a dash are a run, `1-4` or `4-1`; three and more with dashes are just these,
 * `1-2-3-2`, as threadings are commonly written; `1+3` is both at once, as for two feet; with
 * `orNone`, `0` by itself is a thread on none.
 */
export function numbers(what: 'shaft' | 'treadle', most: number, orNone = false): Alphabet<readonly number[]> {
  const expected = `${what}s from 1 to ${most}, as 1 2 3, 1-4 or 4x(1 2)`;
  const one = (text: string, offset: number): number => {
    const number = Number(text);
    if (number < 1 || number > most) {
      const apart = text.length > 2 && !text.includes('0') ? ` (did you mean ${[...text].join(' ')}?)` : '';
      throw new Misread(`found ${what} ${text}; expected ${expected}${apart}`, { offset });
    }
    return number;
  };
  return {
    element: /\d{1,9}(?:(?:\s*\+\s*\d{1,9})+|(?:-\d{1,9})+)?(?![\w.])/,
    expected,
    read([text]) {
      if (orNone && text === '0') return [[]];
      const all = [...text.matchAll(/\d+/g)].map((match) => one(match[0], match.index));
      if (text.includes('+')) {
        const twice = all.find((number, n) => all.indexOf(number) < n);
        if (twice !== undefined) throw new Misread(`found ${what} ${twice} twice in ${brief(text)}; expected it once`);
        return [all];
      }
      if (all.length !== 2) return all.map((number) => [number]);
      const [from, to] = all as [number, number];
      const step = from <= to ? 1 : -1;
      return Array.from({ length: Math.abs(to - from) + 1 }, (_, n) => [from + step * n]);
    },
  };
}

/** Letters of yarns, read as palette indices. If one yarn has the letter X, only × may follow a count. */
export function letters(known: readonly string[]): Alphabet<number> {
  return {
    element: new RegExp(`[${known.join('')}${known.join('').toLowerCase()}]`),
    expected: `letters of yarns (${known.join(' ')}), as D L, D4 L4 or (DL)4`,
    ...(known.includes('X') && { times: '×' }),
    read: ([letter]) => [known.indexOf(letter.toUpperCase())],
  };
}

/** Writes numbers as {@link numbers} reads them, `1 2 1+3 0`. */
export function writeNumbers(list: readonly (readonly number[])[]): string {
  return list.map((numbers) => numbers.join('+') || '0').join(' ');
}
