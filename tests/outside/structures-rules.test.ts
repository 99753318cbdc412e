// Rules of the drafting literature, tried on whole families of profiles. Crackle's incidental ends: Tidball and Frey
// by way of published notes. Overshot as a walk from shaft to shaft: van der Hoogt (pair view); parity computed.
// Monk's belt over 2n: Walterstorff 1940, Bress. Summer and winter, Swedish and Bronson lace, M's and O's, turned
// twill: articles on block and lace weaves. Heddle counts and lengths: worked examples of common practice, no source.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawdown } from '../../src/cloth/drawdown.js';
import { floatsOf, weftFloatsByKind } from '../../src/cloth/floats.js';
import { holdsTogether } from '../../src/cloth/holds-together.js';
import type { Sett, Weave } from '../../src/draft/draft.js';
import {
  drawn,
  findStructure,
  parseProfile,
  type WeaveOptions,
  weaveOf,
} from '../../src/structure/catalogue/catalogue.js';
import { heddles, tabbySheds } from '../../src/structure/loom/lifts.js';
import { runs } from '../long.js';

const SETT: Sett = { ends: 20, picks: 20, per: 'inch' };

const weave = (name: string, profile: string, options: WeaveOptions = {}): Weave => {
  const structure = findStructure(name);
  return weaveOf(structure, parseProfile(profile, withLetters(structure.blocks)), options);
};
const withLetters = (blocks: readonly string[]): string[] => [...new Set([...blocks, ...'ABCD'])];

/** Warp face and back, weft face and back. */
const floats = (it: Weave): (number | null)[] => {
  const { warpFace, warpBack, weftFace, weftBack } = floatsOf(drawdown(it), SETT);
  return [warpFace, warpBack, weftFace, weftBack];
};
const patternFloat = (it: Weave): (number | null)[] => {
  const { pattern } = weftFloatsByKind(drawdown(it), it.pickKinds);
  return [pattern!.face, pattern!.back];
};
const shaftsOf = (it: Weave): number[] => it.threading.flat();

/** All words of that length over the letters. */
const words = (letters: string, length: number): string[] =>
  length === 0 ? [''] : words(letters, length - 1).flatMap((word) => [...letters].map((letter) => word + letter));
const upTo = (letters: string, length: number): string[] =>
  Array.from({ length }, (_, n) => words(letters, n + 1)).flat();
const mixed = (word: string): boolean => new Set(word).size > 1;

/** Lengths of the runs of a cyclic word that holds at least two letters. */
const runsOf = (word: string): { letter: string; length: number }[] => {
  const from = [...word].findIndex((letter, i) => letter !== word.at(i - 1));
  const turned = word.slice(from) + word.slice(0, from);
  return (turned.match(/(.)\1*/g) ?? []).map((run) => ({ letter: run[0]!, length: run.length }));
};
const longestRun = (word: string): number => Math.max(...runsOf(word).map((run) => run.length));

const alternatesParity = (shafts: readonly number[]): boolean =>
  shafts.length % 2 === 0 && shafts.every((shaft, i) => (shaft + shafts.at(i - 1)!) % 2 === 1);

describe('crackle', () => {
  const MANNERS = ['overshot manner', 'as drawn in', 'Italian manner', 'summer-and-winter manner', 'polychrome'];
  const pairs = words('ABCD', 2).flatMap((pair) =>
    [1, 2, 3].flatMap((left) => [1, 2, 3].map((right) => `${pair[0]}${left} ${pair[1]}${right}`)),
  );

  test.each([0, 1])(
    'every pair of blocks, one to three units each, choice %i: float 3, parity alternates',
    (choice) => {
      for (const profile of pairs) {
        const it = weave('crackle', profile, { alternative: choice, treadled: [...'ABCD'] });
        expect(alternatesParity(shaftsOf(it)), profile).toBe(true);
        expect(patternFloat(it), profile).toEqual([3, 3]);
        expect(floats(it), profile).toEqual([3, 3, 3, 3]);
      }
    },
  );

  test('the twelve joins, as in the table', () => {
    const table: Record<string, string> = {
      AB: '1',
      AC: '1-2',
      AD: '1',
      BA: '2',
      BC: '2',
      BD: '2-3',
      CA: '3-4',
      CB: '3',
      CD: '3',
      DA: '4',
      DB: '4-1',
      DC: '4',
    };
    const others: Record<string, string> = { AC: '1-4', CA: '3-2', BD: '2-1', DB: '4-3' };
    const { blocks } = findStructure('crackle');
    const between = (pair: string, alternative: number): string =>
      drawn(findStructure('crackle'), parseProfile(pair, blocks), { alternative })
        .ends.filter((end) => end.unit === 0 && end.incidental)
        .map((end) => end.name)
        .join('-');
    for (const pair of words('ABCD', 2).filter(mixed)) {
      expect(between(pair, 0), pair).toBe(table[pair]);
      expect(between(pair, 1), pair).toBe(others[pair] ?? table[pair]);
    }
  });

  test.each(MANNERS)('%s: no weft over more than 3, whatever the profile', (manner) => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...'ABCD'), { minLength: 1, maxLength: 10 }), (profile) => {
        const it = weaveOf(findStructure('crackle'), profile, { manner });
        const [warpFace, warpBack, weftFace, weftBack] = floats(it);
        expect(Math.max(weftFace!, weftBack!)).toBeLessThanOrEqual(3);
        expect(Math.max(warpFace!, warpBack!)).toBeLessThanOrEqual(manner === 'Italian manner' ? 5 : 3);
        expect(holdsTogether(drawdown(it))).toBe(true);
      }),
      { numRuns: runs(60) },
    );
  });
});

describe('overshot', () => {
  const CLOSING_UP = 'ABCD';
  /** A closed walk on the ring of shafts, from shaft 1, as the blocks of its steps. */
  const walks = fc.array(fc.boolean(), { minLength: 4, maxLength: 30 }).map((steps) => {
    const up = steps.filter(Boolean).length;
    const open = (((2 * up - steps.length) % 4) + 4) % 4;
    const closed = [...steps, ...new Array<boolean>((4 - open) % 4).fill(true)];
    let shaft = 0;
    return closed
      .map((rises) => {
        const block = CLOSING_UP[rises ? shaft : (shaft + 3) % 4]!;
        shaft = (shaft + (rises ? 1 : 3)) % 4;
        return block;
      })
      .join('');
  });

  test('a closed walk needs no incidental end; every end is one step from the last', () => {
    fc.assert(
      fc.property(walks, (walk) => {
        const { ends, weave: it } = drawn(findStructure('overshot'), [...walk]);
        const shafts = shaftsOf(it);
        expect(ends.some((end) => end.incidental)).toBe(false);
        expect(shafts.length).toBe(walk.length);
        expect(shafts.every((shaft, i) => [1, 3].includes((shaft - shafts.at(i - 1)! + 4) % 4))).toBe(true);
      }),
    );
  });

  test('a block passed through has an even number of ends, a turning block an odd one', () => {
    fc.assert(
      fc.property(walks.filter(mixed), (walk) => {
        const shafts = shaftsOf(weave('overshot', walk));
        for (const pair of ['12', '23', '34', '41']) {
          const inside = shafts.map((shaft) => pair.includes(String(shaft)));
          inside.forEach((is, first) => {
            if (!is || inside.at(first - 1)!) return;
            let ends = 1;
            while (inside[(first + ends) % shafts.length]) ends++;
            const turning = shafts.at(first - 1) === shafts[(first + ends) % shafts.length];
            expect(ends % 2).toBe(turning ? 1 : 0);
          });
        }
      }),
    );
  });

  test('a pattern float covers one end more than its block has steps, for each shed and for the whole', () => {
    fc.assert(
      fc.property(walks.filter(mixed), (walk) => {
        for (const block of new Set(walk)) {
          const steps = Math.max(
            ...runsOf(walk)
              .filter((run) => run.letter === block)
              .map((run) => run.length),
          );
          expect(patternFloat(weave('overshot', walk, { treadled: [block] }))[0]).toBe(steps + 1);
        }
        const all = weave('overshot', walk, { treadled: [...'ABCD'] });
        expect(patternFloat(all)).toEqual([longestRun(walk) + 1, longestRun(walk) + 1]);
        expect(Math.max(...floats(all).slice(0, 2).map(Number))).toBeLessThanOrEqual(3);
        expect(alternatesParity(shaftsOf(all))).toBe(true);
      }),
    );
  });

  test('blocks A and C alone are monk’s belt', () => {
    const opposite = weave('overshot', '3A 3C');
    const belt = weave('monk’s belt', 'AABB');
    expect(necklace(shaftsOf(opposite))).toBe(necklace(shaftsOf(belt)));
    expect(patternFloat(opposite)).toEqual(patternFloat(belt));
  });
});

/** The smallest of a word's rotations: equal for two words that are one ring. */
const necklace = (word: readonly number[]): string =>
  word.map((_, i) => [...word.slice(i), ...word.slice(0, i)].join('-')).sort()[0]!;

describe('weaves whose float does not depend on the profile', () => {
  const same = (name: string, profiles: string[], expected: number[], options: WeaveOptions = {}): void => {
    for (const profile of profiles) expect(floats(weave(name, profile, options)), profile).toEqual(expected);
  };
  test('summer and winter, all 256 orders of four blocks: 3', () => {
    expect(words('ABCD', 4)).toHaveLength(256);
    for (const manner of ['singles', 'pairs X', 'pairs O', 'columns']) {
      same('summer and winter', words('ABCD', 4), [3, 3, 3, 3], { manner, treadled: [...'ABCD'] });
    }
  });
  test.each([
    ['halvdräll', 3],
    ['halvdräll with even ties', 3],
    ['halvdräll, float of five', 5],
    ['halvdräll, float of seven', 7],
  ])('%s, all profiles to six units: pattern weft %i', (name, float) => {
    for (const profile of upTo('AB', 6)) {
      expect(patternFloat(weave(name, profile, { treadled: ['A', 'B'] })), profile).toEqual([float, float]);
    }
  });
  test('turned twill, all profiles to five units: 3 with clean cuts, 4 with the same twill direction', () => {
    const profiles = upTo('AB', 5).filter(mixed);
    same('turned twill', profiles, [3, 3, 3, 3]);
    same('turned twill', profiles, [3, 3, 3, 3], { manner: 'broken order' });
    same('turned twill', profiles, [4, 4, 4, 4], { manner: 'same twill direction' });
  });
  test('turned twill on four shafts, all profiles to five units: 3 with clean cuts', () => {
    same('turned twill on four shafts', upTo('AB', 5).filter(mixed), [3, 3, 3, 3]);
  });
  test('turned taqueté, all profiles to five units: warp 3, weft 2', () => {
    same('turned taqueté', upTo('AB', 5).filter(mixed), [3, 3, 2, 2]);
  });
  test('M’s and O’s, all profiles to five units: weft 4, warp 2', () => {
    same('M’s and O’s', upTo('AB', 5).filter(mixed), [2, 2, 4, 4]);
  });
  test('Swedish and Bronson lace, all profiles to five units: weft 5 on the face, warp 5 on the back', () => {
    same('Swedish lace', upTo('AB', 5), [1, 5, 5, 1]);
    same('Bronson lace', upTo('ABC', 5), [1, 5, 5, 1]);
    for (const profile of upTo('AB', 5)) {
      expect(alternatesParity(shaftsOf(weave('swedish lace', profile))), profile).toBe(true);
    }
  });
  test('huck with M’s and O’s, all 64 orders of six groups: weft 5; warp 2 as M’s and O’s, 5 as huck', () => {
    const orders = words('XY', 6);
    expect(orders).toHaveLength(64);
    const both = [...'XXXYYY'];
    same('huck with M’s and O’s', orders, [2, 2, 5, 5], { treadled: both });
    same('huck with M’s and O’s', orders, [5, 5, 5, 5], { treadled: both, manner: 'huck lace' });
    for (const order of orders) {
      const sheds = tabbySheds(weave('huck with M’s and O’s', order).threading);
      expect(sheds === undefined, order).toBe(mixed(order));
    }
  });
  test('huck: texture 5 in the weft face and warp back, warp spots the reverse, lace everywhere', () => {
    same('huck', ['AB', 'ABAB'], [1, 5, 5, 1]);
    same('huck', ['AB'], [5, 1, 1, 5], { manner: 'warp spots' });
    same('huck lace', ['AB'], [5, 5, 5, 5]);
  });
});

describe('weaves whose float grows with the block', () => {
  test('monk’s belt: 2n for n neighbouring units, all profiles to seven units', () => {
    for (const profile of upTo('AB', 7).filter(mixed)) {
      const n = longestRun(profile);
      expect(patternFloat(weave('monk’s belt', profile)), profile).toEqual([2 * n, 2 * n]);
    }
  });
  test('spot Bronson: weft 2r + 1 on the face, warp 2m + 1 on the back', () => {
    for (const profile of upTo('ABC', 5).filter(mixed)) {
      const long = 2 * longestRun(profile) + 1;
      expect(floats(weave('spot Bronson', profile)), profile).toEqual([1, long, long, 1]);
    }
  });
  test('monk’s belt AABAB at 20 ends an inch: 0.4, 0.8 and 1.6 inch for motifs of 20, 40 and 80 ends', () => {
    const inches = [2, 4, 8].map((k) => {
      const it = weave('monk’s belt', [...'AABAB'].map((block) => `${k}${block}`).join(' '));
      return [it.threading.length, patternFloat(it)[0]! / 20];
    });
    expect(inches).toEqual([
      [20, 0.4],
      [40, 0.8],
      [80, 1.6],
    ]);
  });
});

describe('heddles for the order AABAB on 400 ends', () => {
  test.each([
    ['2/2 twill', '100A', [100, 100, 100, 100]],
    ['summer and winter', '(AABAB)20', [100, 100, 120, 80]],
    ['monk’s belt', '(AABAB)40', [120, 120, 80, 80]],
    ['M’s and O’s', '(AABAB)10', [100, 100, 100, 100]],
    ['huck', '(AB)40', [120, 80, 80, 120]],
  ])('%s', (name, profile, expected) => {
    const it = weave(name, profile);
    expect(it.threading).toHaveLength(400);
    expect(heddles(it)).toEqual(expected);
  });
  test('crackle AABAB is 24 ends round the loop, not 20', () => {
    const it = weave('crackle', 'AABAB');
    expect(shaftsOf(it).join('')).toBe('123212321234321232123432');
    expect(heddles(it)).toEqual([5, 10, 7, 2]);
  });
});
