import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { countDistinctWords, distinctWords, firstOfSame, type Wanted } from '../../src/order/bracelet.js';
import { runs } from '../long.js';

const ANY = { reversed: true, renamed: false, mirrored: false };

/** Every word, as text; and all words that count as the same as one, by trying every turn and every renaming. */
const words = (length: number, letters: number): string[] =>
  length === 0 ? [''] : words(length - 1, letters).flatMap((w) => [...'ABCDEFGH'.slice(0, letters)].map((l) => w + l));
const renamings = (letters: string): string[] =>
  letters === '' ? [''] : [...letters].flatMap((l) => renamings(letters.replace(l, '')).map((rest) => l + rest));

function classOf(word: string, { letters, reversed, renamed }: Wanted): string[] {
  const backward = [...word].reverse().join('');
  const ways = (reversed ? [word, backward] : [word]).flatMap((way) =>
    [...way].map((_, from) => way.slice(from) + way.slice(0, from)),
  );
  if (!renamed) return ways;
  const names = renamings('ABCDEFGH'.slice(0, letters));
  return ways.flatMap((way) => names.map((name) => way.replace(/./g, (l) => name[l.charCodeAt(0) - 65]!)));
}

/** The classes of all words of these lengths, each by its first word; shorter repeats stand for longer ones. */
function plainWords(lengths: readonly number[], wanted: Wanted): string[] {
  const found = new Set<string>();
  for (const length of lengths) {
    for (const word of words(length, wanted.letters)) {
      const [root] = /^(.+?)\1*$/.exec(word)!.slice(1);
      const backward = [...root!].reverse().join('');
      if (wanted.mirrored && !(root! + root!).includes(backward)) continue;
      found.add(classOf(root!, wanted).sort()[0]!);
    }
  }
  return [...found].sort();
}

const written = (word: readonly number[]): string => word.map((letter) => 'ABCDEFGH'[letter]).join('');

describe('profiles, each once', () => {
  const asked = fc.record({
    letters: fc.integer({ min: 1, max: 4 }),
    reversed: fc.boolean(),
    renamed: fc.boolean(),
    mirrored: fc.boolean(),
  });
  const lengths = fc.uniqueArray(fc.integer({ min: 1, max: 6 }), { minLength: 1, maxLength: 3 });

  test('are those that trying every word, turn and renaming finds', () => {
    fc.assert(
      fc.property(lengths, asked, (some, wanted) => {
        const list = distinctWords(some, wanted).map(written).sort();
        expect(list).toEqual(plainWords(some, wanted));
        const count = countDistinctWords(some, wanted);
        if (wanted.mirrored && wanted.renamed) expect(count).toBeGreaterThanOrEqual(list.length);
        else expect(count).toBe(list.length);
      }),
      { numRuns: runs(60) },
    );
  });

  test('the first word of a class is the same for all of it, and is the one in the list', () => {
    fc.assert(
      fc.property(fc.array(fc.nat(3), { minLength: 1, maxLength: 8 }), fc.nat(7), asked, (word, by, wanted) => {
        const turned = [...word.slice(by % word.length), ...word.slice(0, by % word.length)];
        const first = firstOfSame(word, wanted);
        expect(firstOfSame(turned, wanted)).toEqual(first);
        if (wanted.reversed) expect(firstOfSame(turned.toReversed(), wanted)).toEqual(first);
        if (wanted.renamed)
          expect(
            firstOfSame(
              word.map((letter) => 3 - letter),
              wanted,
            ),
          ).toEqual(first);
      }),
      { numRuns: runs(100) },
    );
  });
});

// OEIS, from memory: A001371, A032294 and A032295 (primitive bracelets of two, three and four colours), A000046
// (primitive bracelets of two colours that may change places).
describe('their numbers are published', () => {
  const counts = (letters: number, change: Partial<Wanted>, most: number): number[] =>
    Array.from({ length: most }, (_, n) => {
      const wanted = { ...ANY, ...change, letters };
      const shorter = (length: number): number => countDistinctWords([length], wanted);
      // Words of one length alone: without those of its divisors.
      const own = (length: number): number =>
        distinctWords([length], wanted).filter((word) => word.length === length).length;
      expect(shorter(n + 1)).toBe(distinctWords([n + 1], wanted).length);
      return own(n + 1);
    });
  test('two letters', () => expect(counts(2, {}, 12)).toEqual([2, 1, 2, 3, 6, 8, 16, 24, 42, 69, 124, 208]));
  test('three letters', () => expect(counts(3, {}, 7)).toEqual([3, 3, 7, 15, 36, 79, 195]));
  test('four letters', () => expect(counts(4, {}, 5)).toEqual([4, 6, 16, 45, 132]));
  test('two letters that change places', () =>
    expect(counts(2, { renamed: true }, 12)).toEqual([1, 1, 1, 2, 3, 5, 8, 14, 21, 39, 62, 112]));
});
