import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawdown } from '../../../src/cloth/drawdown.js';
import { explore } from '../../../src/search/explore.js';
import type { Question } from '../../../src/search/question/question.js';
import { readQuestion } from '../../../src/search/question/read-question.js';
import { draftOf } from '../../../src/search/space/candidate.js';
import { familiesOf } from '../../../src/search/space/families.js';
import type { Family } from '../../../src/search/space/family.js';
import { candidateOf, genomeOf } from '../../../src/search/space/genome.js';
import { countFamilies, familyWith, listFamilies } from '../../../src/search/space/profile-search.js';
import { spaceOf } from '../../../src/search/space/space.js';
import { runs } from '../../long.js';

const asked = (flags: Record<string, string>): Question =>
  readQuestion({ flags }, () => {
    throw new Error('no draft is asked for');
  });
const families = (flags: Record<string, string>): readonly Family[] =>
  familiesOf(asked(flags)).flatMap((f) => listFamilies(f)!);

/** Every word of these lengths over some letters. */
const words = (letters: string, lengths: readonly number[]): string[] =>
  lengths.flatMap((length) =>
    Array.from({ length: letters.length ** length }, (_, n) =>
      Array.from({ length }, (__, at) => letters[Math.floor(n / letters.length ** at) % letters.length]).join(''),
    ),
  );

/**
 * The figure of blocks as one word, for all shifts across and down and the half turn or mirrors that are asked for: the
 * first of all. The cell of a unit of ends and a unit of picks says whether the block shows.
 */
function figure(threaded: string, treadled: string, flips: readonly (readonly [boolean, boolean])[]): string {
  const root = (word: string): string => /^(.+?)\1*$/.exec(word)![1]!;
  const [across, down] = [root(threaded), root(treadled)];
  let first: string | undefined;
  for (const [flipAcross, flipDown] of flips) {
    const ends = flipAcross ? [...across].reverse().join('') : across;
    const picks = flipDown ? [...down].reverse().join('') : down;
    for (let x = 0; x < ends.length; x++) {
      for (let y = 0; y < picks.length; y++) {
        const rows = [...picks].map((_, j) =>
          [...ends]
            .map((__, i) => (ends[(i + x) % ends.length] === picks[(j + y) % picks.length] ? '#' : '.'))
            .join(''),
        );
        const word = rows.join('/');
        if (first === undefined || word < first) first = word;
      }
    }
  }
  return first!;
}

const mixed = (word: string): boolean => new Set(word).size > 1;
const HALF_TURN = [
  [false, false],
  [true, true],
] as const;

describe('block orders that are searched', () => {
  test.each([
    ['2', '2-6'],
    ['3', '2-6'],
    ['4', '3-5'],
  ])('as drawn in, %s blocks, lengths %s: every figure there is, each once', (blocks, lengths) => {
    const listed = families({ structure: 'turned twill', blocks, profile: 'search', 'profile lengths': lengths });
    const [from, to] = lengths.split('-').map(Number) as [number, number];
    const all = words(
      'ABCD'.slice(0, Number(blocks)),
      Array.from({ length: to - from + 1 }, (_, n) => from + n),
    );
    const figures = new Set(all.filter(mixed).map((word) => figure(word, word, HALF_TURN)));
    const found = listed.map(({ profile }) => figure(profile.join(''), profile.join(''), HALF_TURN));
    expect(new Set(found)).toEqual(figures);
    expect(found).toHaveLength(figures.size);
    const [family] = familiesOf(
      asked({ structure: 'turned twill', blocks, profile: 'search', 'profile lengths': lengths }),
    );
    expect(countFamilies(family!)).toBe(figures.size);
  });

  test('treadled by others: every pair of a block order and another, once up to mirrors', () => {
    const listed = families({ structure: 'crackle', profile: 'A B C D', treadled: 'search', 'profile lengths': '2-4' });
    const bracelet = (word: string): string =>
      [word, [...word].reverse().join('')]
        .flatMap((way) => [...way].map((_, from) => way.slice(from) + way.slice(0, from)))
        .sort()[0]!;
    const roots = words('ABCD', [2, 3, 4]).map((word) => bracelet(/^(.+?)\1*$/.exec(word)![1]!));
    expect(listed.map(({ treadled }) => treadled!.join('')).sort()).toEqual([...new Set(roots)].sort());
  });

  test('treadled by others: a block that is not threaded is not treadled, where it would show nothing', () => {
    const of = (structure: string) =>
      families({ structure, blocks: '3', profile: 'search', treadled: 'search', 'profile lengths': '2-3' });
    const idle = (list: readonly Family[]) =>
      list.filter(({ profile, treadled }) => treadled!.some((block) => !profile.includes(block)));
    expect(idle(of('summer and winter'))).toEqual([]);
    // AB AC BC, AAB ABB AAC ACC BBC BCC, ABC: every threading of two blocks or three is still there.
    expect(new Set(of('summer and winter').map(({ profile }) => profile.join(''))).size).toBe(10);
    // Blocks of crackle share their shafts: one that is not threaded shows all the same.
    expect(idle(of('crackle')).length).toBeGreaterThan(0);
  });

  test('eight blocks: as many as a plain count of words that rotations, reversals and renamings carry to each other', () => {
    const [family] = familiesOf(
      asked({ structure: 'summer and winter', blocks: '8', profile: 'search', 'profile lengths': '2-5' }),
    );
    const renamed = (word: string): string => {
      const order = [...new Set(word)];
      return [...word].map((letter) => 'ABCDEFGH'[order.indexOf(letter)]).join('');
    };
    const first = (word: string): string => {
      const root = /^(.+?)\1*$/.exec(word)![1]!;
      return [root, [...root].reverse().join('')]
        .flatMap((way) => [...way].map((_, from) => renamed(way.slice(from) + way.slice(0, from))))
        .sort()[0]!;
    };
    const classes = new Set(words('ABCDEFGH', [2, 3, 4, 5]).filter(mixed).map(first));
    expect(countFamilies(family!)).toBe(classes.size);
    expect(listFamilies(family!)).toHaveLength(classes.size);
  });

  test('mirrored: those that read the same backward, and all of them', () => {
    const listed = families({
      structure: 'overshot',
      profile: 'search, mirrored',
      'profile lengths': '6',
      blocks: '4',
    }).map(({ profile }) => profile.join(''));
    expect(listed.length).toBeGreaterThan(20);
    for (const word of listed) expect((word + word).includes([...word].reverse().join(''))).toBe(true);
    const all = families({ structure: 'overshot', profile: 'search', 'profile lengths': '6', blocks: '4' })
      .map(({ profile }) => profile.join(''))
      .filter((word) => (word + word).includes([...word].reverse().join('')));
    expect(listed.sort()).toEqual(all.sort());
  });

  test('together: every set of blocks is an element, none among them', () => {
    const listed = families({ structure: 'summer and winter', treadled: 'search, together', 'profile lengths': '1' });
    expect(listed.map(({ treadled }) => treadled!.join(' '))).toEqual(['.', 'A', 'B', 'A+B']);
  });

  test('where mirror images are told apart, words read backward are too', () => {
    const count = (same: string): number =>
      families({ structure: 'turned twill', blocks: '3', treadled: 'search', 'profile lengths': '6', same }).length;
    expect(count('shift')).toBeGreaterThan(count('mirror'));
  });

  test('lengths that no block order can have, and too many sets, are said', () => {
    const threes = asked({ structure: 'huck', blocks: '4', profile: 'search', 'profile lengths': '3' });
    expect(() => spaceOf(threes)).toThrow(
      'profile: found no block order of these lengths that the structure can weave',
    );
    const sets = { structure: 'summer and winter', blocks: '11', treadled: 'search, together' };
    expect(() => asked(sets)).toThrow('found together with 11 blocks; expected 10 blocks at most');
  });

  test('blocks that may not be neighbours are left out', () => {
    const listed = families({ structure: 'huck', blocks: '4', profile: 'search', 'profile lengths': '2, 4' });
    expect(listed.length).toBeGreaterThan(4);
    for (const { profile } of listed) {
      profile.forEach((block, at) => {
        expect((block.charCodeAt(0) + profile.at(at - 1)!.charCodeAt(0)) % 2).toBe(1);
      });
    }
  });
});

describe('a searched family', () => {
  const question = asked({ structure: 'monks belt', blocks: '3', profile: 'search', treadled: 'search' });
  const bases = familiesOf(question);

  test('is written in a line and read back with its block orders', () => {
    const word = fc.array(fc.nat(2), { minLength: 2, maxLength: 6 });
    fc.assert(
      fc.property(word, word, (threaded, treadled) => {
        const family = familyWith(bases[0]!, { threaded, treadled });
        if (family === undefined) {
          const idle = treadled.some((block) => !threaded.includes(block));
          expect(new Set(threaded).size === 1 || idle).toBe(true);
          return;
        }
        const candidate = { family, warp: [1], weft: [0], start: [0, 0] as const };
        const again = candidateOf(genomeOf(candidate, bases), bases);
        expect(again.family.profile).toEqual(family.profile);
        expect(draftOf(again, question)).toEqual(draftOf(candidate, question));
      }),
      { numRuns: runs(30) },
    );
  });

  test('begins a block’s colour with the block, whatever its length', () => {
    const { by } = { by: 'block' };
    const flags = { structure: 'turned twill', profile: 'A A B A B B', by, orders: 'DLDDL', weft: 'same' };
    const [family] = familiesOf(asked(flags));
    const draft = draftOf(
      { family: family!, warp: [0, 1, 0, 0, 1], weft: [0, 1, 0, 0, 1], start: [0, 0] },
      asked(flags),
    );
    const colours = draft.warp.map((yarn) => 'DL'[yarn]).join('');
    // Four blocks of 2, 1, 1 and 2 units, five colours: it comes back after twenty blocks.
    const sizes = [8, 4, 4, 8];
    const blocks = Array.from({ length: 20 }, (_, at) => 'DLDDL'[at % 5]!.repeat(sizes[at % 4]!));
    expect(colours).toBe(blocks.join(''));
    expect(draft.weft).toEqual(draft.warp);
  });
});

test('a search of block orders finds the cloths of every one, and the same with any number of workers', async () => {
  const question = asked({
    structure: 'turned twill',
    profile: 'search',
    treadled: 'search',
    'profile lengths': '2-4',
    orders: 'DL, DLDDL',
    by: 'unit, block',
    fill: 'solid, alternate, nest',
    show: '40',
  });
  expect(spaceOf(question).way).toBe('scored');
  const one = await explore(question, { workers: 1 });
  const three = await explore(question, { workers: 3 });
  expect(three).toEqual(one);
  const { counts } = one;
  // Two lists of block orders (renamed ones are told apart where the treadling is another), ways and orders, one start
  // by block and more by unit.
  const bases = familiesOf(question);
  expect(bases).toHaveLength(6);
  expect(counts.examined).toBeGreaterThan(6 * 2 * countFamilies(bases[0]!));
  expect(counts.exhaustive).toBe(true);
});

test('block orders alone are woven in the lightest yarn, with the darkest in the weft', async () => {
  const question = asked({ structure: 'summer and winter', blocks: '3', profile: 'search', 'profile lengths': '4' });
  expect([question.orders, question.weft, question.lengths]).toEqual([[[1]], { rule: 'fixed', order: [0] }, []]);
  expect(question.rank.figure).toBe(3);
  const { counts, found } = await explore(question, { workers: 1 });
  // AB, AAAB, AABB, AABC, ABAC of three letters that may change places.
  expect(counts.examined).toBe(5);
  expect(found).toHaveLength(5);
  const { draft } = found[0]!;
  expect(drawdown(draft).ends).toBe(draft.warp.length);
});
