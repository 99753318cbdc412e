import { distinctOrdersOf, gcd, leastRotation } from './necklace.js';
import { type Order, smallestPeriod } from './order.js';

/** Which words count as one: always rotations, and what is said here. */
export interface WordSameness {
  /** Words read backward. */
  readonly reversed: boolean;
  /** Words whose letters change places. */
  readonly renamed: boolean;
}

/** Which words are wanted. */
export interface Wanted extends WordSameness {
  readonly letters: number;
  /** Only words that, begun somewhere, read the same backward. */
  readonly mirrored: boolean;
}

/** The word that sorts first among all that count as the same. */
export function firstOfSame(word: Order, same: WordSameness): Order {
  return turnsOf(word, same).reduce((a, b) => (compared(a, b) <= 0 ? a : b), word);
}

/** Whether a word, begun somewhere, reads the same backward. */
function isMirrored(word: Order): boolean {
  return compared(leastRotation(word), leastRotation(word.toReversed())) === 0;
}

/**
 * The different words of the given lengths, each once: of a word that repeats a shorter one, the shorter one. The first
 * of each class is listed.
 */
export function distinctWords(lengths: readonly number[], wanted: Wanted): Order[] {
  const { letters, mirrored, renamed } = wanted;
  const all = renamed
    ? roots(lengths).flatMap((length) => wordsInOrder(length, letters))
    : distinctOrdersOf(lengths, letters);
  return all.filter(
    (word) => smallestPeriod(word) === word.length && (!mirrored || isMirrored(word)) && isFirst(word, wanted),
  );
}

/**
 * How many there are, without a list. Burnside's lemma counts the classes of all words of a length; of mirrored words
 * there are as many as a reflection leaves as they are, in the mean, and renaming is not counted for them, so that they
 * are fewer. Words without a shorter repeat are what is left without the classes of shorter words.
 */
export function countDistinctWords(lengths: readonly number[], wanted: Wanted): number {
  const known = new Map<number, number>();
  const aperiodic = (length: number): number => {
    const shorter = divisors(length).filter((root) => root < length);
    const count =
      known.get(length) ?? classes(length, wanted) - shorter.reduce((sum, root) => sum + aperiodic(root), 0);
    known.set(length, count);
    return count;
  };
  return roots(lengths).reduce((sum, length) => sum + aperiodic(length), 0);
}

/** Classes of all words of one length, those with a shorter repeat included. */
function classes(length: number, { letters, reversed, renamed, mirrored }: Wanted): number {
  const namings = renamed && !mirrored ? namingsOf(letters) : [{ cycles: new Map([[1, letters]]), share: 1 }];
  const rotations = (fixed: (cycle: number) => number): number => {
    let sum = 0;
    for (let by = 1; by <= length; by++) sum += fixed(length / gcd(by, length)) ** gcd(by, length);
    return sum;
  };
  /** Words left as they are by reflections: threads on the axis meet themselves, the others meet in pairs. */
  const reflections = (fixed: (cycle: number) => number): number =>
    Array.from({ length }, (_, axis) => {
      const still = length % 2 === 1 ? 1 : axis % 2 === 0 ? 0 : 2;
      return fixed(1) ** still * fixed(2) ** ((length - still) / 2);
    }).reduce((a, b) => a + b, 0);
  const sum = namings.reduce((all, { cycles, share }) => {
    // Letters that so many renamings in a row bring back.
    const fixed = (cycle: number): number =>
      [...cycles].reduce((all, [size, count]) => all + (cycle % size === 0 ? size * count : 0), 0);
    const turned = rotations(fixed);
    const read = reflections(fixed);
    if (mirrored) return all + (share * read) / length;
    return all + (share * (reversed ? turned + read : turned)) / (reversed ? 2 * length : length);
  }, 0);
  // The shares of renamings are fractions.
  return Math.round(sum);
}

/** The cycle types of all renamings of letters, each with its share of them. */
function namingsOf(letters: number): { readonly cycles: ReadonlyMap<number, number>; readonly share: number }[] {
  const found: { cycles: Map<number, number>; share: number }[] = [];
  const part = (left: number, most: number, cycles: ReadonlyMap<number, number>): void => {
    if (left === 0) {
      const share = [...cycles].reduce((each, [size, count]) => each / (size ** count * factorial(count)), 1);
      found.push({ cycles: new Map(cycles), share });
      return;
    }
    for (let size = Math.min(left, most); size > 0; size--) {
      part(left - size, size, new Map(cycles).set(size, (cycles.get(size) ?? 0) + 1));
    }
  };
  part(letters, letters, new Map());
  return found;
}

/** Words in which each letter comes first after all that sort before it. */
function wordsInOrder(length: number, letters: number): Order[] {
  const words: number[][] = [];
  const lay = (word: number[], used: number): void => {
    if (word.length === length) {
      words.push(word);
      return;
    }
    for (let letter = 0; letter < Math.min(used + 1, letters); letter++) {
      lay([...word, letter], Math.max(used, letter + 1));
    }
  };
  lay([], 0);
  return words;
}

/** All words that count as the same, the word itself among them. */
function turnsOf(word: Order, { reversed, renamed }: WordSameness): Order[] {
  const ways = reversed ? [word, word.toReversed()] : [word];
  return ways.flatMap((way) =>
    way.map((_, from) => {
      const turned = [...way.slice(from), ...way.slice(0, from)];
      return renamed ? inOrder(turned) : turned;
    }),
  );
}

/** Whether no word that counts as the same sorts before this one. */
function isFirst(word: Order, { reversed, renamed }: WordSameness): boolean {
  const n = word.length;
  for (const step of reversed ? [1, n - 1] : [1]) {
    for (let from = 0; from < n; from++) {
      const names = new Map<number, number>();
      for (let place = 0; place < n; place++) {
        let letter = word[(from + step * place) % n]!;
        if (renamed) {
          if (!names.has(letter)) names.set(letter, names.size);
          letter = names.get(letter)!;
        }
        if (letter < word[place]!) return false;
        if (letter > word[place]!) break;
      }
    }
  }
  return true;
}

/** Renames letters in the order in which they come. */
function inOrder(word: Order): Order {
  const names = new Map<number, number>();
  return word.map((letter) => {
    if (!names.has(letter)) names.set(letter, names.size);
    return names.get(letter)!;
  });
}

function compared(a: Order, b: Order): number {
  const at = a.findIndex((letter, place) => letter !== b[place]);
  return at < 0 ? 0 : a[at]! - b[at]!;
}

/** The lengths of words without a shorter repeat that stand for words of these lengths. */
function roots(lengths: readonly number[]): number[] {
  return [...new Set(lengths.flatMap(divisors))].sort((a, b) => a - b);
}

const divisors = (n: number): number[] => Array.from({ length: n }, (_, k) => k + 1).filter((k) => n % k === 0);
const factorial = (n: number): number => (n <= 1 ? 1 : n * factorial(n - 1));
