import { describe, expect, test } from 'vitest';
import { drawdown } from '../../../src/cloth/drawdown.js';
import { floatsOf } from '../../../src/cloth/floats.js';
import { holdsTogether } from '../../../src/cloth/holds-together.js';
import { shaftCount } from '../../../src/draft/draft.js';
import { findStructure, structures, weaveOf } from '../../../src/structure/catalogue/catalogue.js';
import { tabbySheds } from '../../../src/structure/loom/lifts.js';
import { letters, PATTERN_WIDTHS, plainWord, type Structure } from '../../../src/structure/model/structure.js';
import { TABBY } from '../../../src/structure/model/unit.js';

const everyManner = structures.flatMap((structure) =>
  structure.manners.map((manner) => [structure.name, manner.name, structure] as [string, string, Structure]),
);

describe.each(everyManner)('%s, %s', (_, manner, structure) => {
  const weave = weaveOf(structure, structure.profile, { manner });
  const cloth = drawdown(weave);

  test('every strand interlaces and the cloth hangs together', () => {
    const floats = floatsOf(cloth, { ends: 10, picks: 10, per: 'cm' });
    expect(floats.longest).not.toBeNull();
    expect(floats.longest).toBeLessThanOrEqual(7);
    expect(holdsTogether(cloth)).toBe(true);
  });

  test('units add up, kinds are told, only used treadles are tied', () => {
    const sum = (lengths: readonly number[]): number => lengths.reduce((total, length) => total + length, 0);
    expect(sum(weave.endUnits)).toBe(weave.threading.length);
    expect(sum(weave.pickUnits)).toBe(weave.treadling.length);
    expect(weave.pickKinds).toHaveLength(weave.treadling.length);
    expect(new Set(weave.treadling.flat())).toEqual(new Set(weave.tieUp.map((_, index) => index + 1)));
    expect(shaftCount(weave)).toBe(structure.shafts);
  });
});

describe.each(structures.map((it) => [it.name, it] as const))('%s', (name, structure) => {
  test('is found by its names, however they are spelled', () => {
    for (const word of [name, ...structure.aliases, name.toUpperCase()]) expect(findStructure(word)).toBe(structure);
  });

  test('has units for its blocks, and treadles for its units', () => {
    const tied = new Set([...Object.keys(structure.tieUp), TABBY]);
    expect(Object.keys(structure.threading.blocks)).toEqual(structure.blocks);
    for (const manner of structure.manners) {
      expect(Object.keys(manner.blocks)).toEqual(structure.blocks);
      const names = Object.values(manner.blocks).flatMap((unit) => [
        ...unit.lay,
        ...Object.values(unit.after ?? {}).flatMap((it) =>
          it === undefined || 'never' in it ? [] : [it.lay ?? [], it.first ?? []].flat(2),
        ),
      ]);
      expect(names.filter((treadle) => !tied.has(treadle))).toEqual([]);
    }
    for (const treadle of structure.tabby ?? []) expect(structure.tieUp[treadle]).toBeDefined();
    expect(structure.profile.every((block) => structure.blocks.includes(block))).toBe(true);
  });
});

/**
 * The longest floats of a twill that lifts `up` ends of `up + down`, warp and weft, each on face and back: n over n in
 * line, 2n − 1 at a point, n + 1 at most where groups meet the other way, and 2n where threads run in pairs. A single
 * end between two others stays single at a point, and where groups meet (common practice, no source).
 */
function twillFloats(name: string, manner: string): number[] {
  const [up, down] = name.split(/[/ ]/).map(Number) as [number, number];
  const straight = (n: number): number => n;
  const point = (n: number): number => 2 * n - 1;
  const meeting = (n: number): number => (n === 3 ? 4 : n);
  const paired = (n: number): number => 2 * n;
  const threaded = /broken|herringbone/.test(name)
    ? meeting
    : /undulating/.test(name)
      ? paired
      : /point|rosepath/.test(name)
        ? point
        : straight;
  const treadled = manner === 'as drawn in' ? threaded : /point|rosepath/.test(manner) ? point : straight;
  return [treadled(up), treadled(down), threaded(down), threaded(up)];
}

/** Warp face and back, weft face and back: what the drafting literature and the texts of the structures say. */
const FLOATS: Readonly<Record<string, readonly number[]>> = {
  'plain weave, as drawn in': [1, 1, 1, 1],
  'plain weave on four shafts, as drawn in': [1, 1, 1, 1],
  'basket, in pairs': [2, 2, 2, 2],
  'basket, half basket': [1, 1, 2, 2],
  '3/3 basket, in threes': [3, 3, 3, 3],
  'turned twill, clean cuts': [3, 3, 3, 3],
  'turned twill, broken order': [3, 3, 3, 3],
  'turned twill, same twill direction': [4, 4, 4, 4],
  'turned twill on four shafts, clean cuts': [3, 3, 3, 3],
  'turned twill of three, clean cuts': [2, 2, 2, 2],
  'turned twill of three, same twill direction': [3, 3, 3, 3],
  'turned satin, clean cuts': [4, 4, 4, 4],
  'turned taqueté, as drawn in': [3, 3, 2, 2],
  'turned taqueté, the other ties': [3, 3, 2, 2],
  'turned taqueté by shafts, as drawn in': [3, 3, 2, 2],
  'monk’s belt, as drawn in': [3, 3, 6, 6],
  'overshot, as drawn in': [3, 3, 5, 5],
  'overshot, rose': [3, 3, 5, 5],
  'overshot, on opposites': [3, 3, 4, 4],
  'crackle, overshot manner': [3, 3, 3, 3],
  'crackle, as drawn in': [3, 3, 3, 3],
  'crackle, Italian manner': [5, 5, 3, 3],
  'crackle, summer-and-winter manner': [2, 2, 3, 3],
  'crackle, polychrome': [3, 3, 3, 3],
  'crackle, opposites joined downward, overshot manner': [3, 3, 3, 3],
  'crackle, opposites joined downward, as drawn in': [3, 3, 3, 3],
  'crackle, opposites joined downward, Italian manner': [5, 5, 3, 3],
  'crackle, opposites joined downward, summer-and-winter manner': [2, 2, 3, 3],
  'crackle, opposites joined downward, polychrome': [3, 3, 3, 3],
  'halvdräll, as drawn in': [3, 3, 3, 3],
  'halvdräll with even ties, as drawn in': [3, 3, 3, 3],
  'halvdräll, float of five, as drawn in': [3, 3, 5, 5],
  'halvdräll, float of seven, as drawn in': [3, 3, 7, 7],
  'summer and winter, singles': [2, 3, 3, 3],
  'summer and winter, pairs X': [3, 3, 3, 3],
  'summer and winter, pairs O': [3, 3, 3, 3],
  'summer and winter, columns': [3, 3, 3, 2],
  'huck, texture': [1, 5, 5, 1],
  'huck, warp spots': [5, 1, 1, 5],
  'huck, lace': [5, 5, 5, 5],
  'huck, weft and warp spots': [5, 5, 5, 5],
  'huck, plain weave': [1, 1, 1, 1],
  'huck lace, texture': [1, 5, 5, 1],
  'huck lace, warp spots': [5, 1, 1, 5],
  'huck lace, lace': [5, 5, 5, 5],
  'huck lace, weft and warp spots': [5, 5, 5, 5],
  'huck lace, plain weave': [1, 1, 1, 1],
  'M’s and O’s, as drawn in': [2, 2, 4, 4],
  'M’s and O’s with tabby, as drawn in': [2, 2, 4, 4],
  'huck with M’s and O’s, M’s and O’s': [2, 2, 5, 5],
  'huck with M’s and O’s, huck lace': [5, 5, 5, 5],
  'huck with M’s and O’s, M’s and O’s with spots': [1, 5, 5, 5],
  'spot Bronson, as drawn in': [1, 5, 5, 1],
  'Bronson lace, as drawn in': [1, 5, 5, 1],
  'Swedish lace, as drawn in': [1, 5, 5, 1],
};

test.each(everyManner)('%s, %s: no float is longer than is said, and one is as long', (name, manner, structure) => {
  const cloth = drawdown(weaveOf(structure, structure.profile, { manner }));
  const { warpFace, warpBack, weftFace, weftBack } = floatsOf(cloth, { ends: 10, picks: 10, per: 'cm' });
  expect([warpFace, warpBack, weftFace, weftBack]).toEqual(FLOATS[`${name}, ${manner}`] ?? twillFloats(name, manner));
});

// Every profile of up to three units, with every other for its treadling: floats of STRUCTURES, section 14; C computed.
test.each([
  ['M’s and O’s', ['A', 'B'], [2, 4]],
  ['M’s and O’s', ['A', 'B', 'C'], [2, 5]],
  ['halvdräll', ['A', 'B'], [3, 3]],
  ['halvdräll, float of five', ['A', 'B'], [3, 5]],
  ['huck with M’s and O’s', ['X', 'Y'], [2, 5]],
] as const)('%s in blocks %j: the longest floats, warp and weft', (name, blocks, most) => {
  const longer = (list: readonly string[][]): string[][] => list.flatMap((each) => blocks.map((b) => [...each, b]));
  const profiles = [longer([[]]), longer(longer([[]])), longer(longer(longer([[]])))].flat();
  const floats = profiles.flatMap((profile) =>
    profiles.map((treadled) =>
      floatsOf(drawdown(weaveOf(findStructure(name), profile, { treadled })), { ends: 10, picks: 10, per: 'cm' }),
    ),
  );
  const warp = floats.map(({ warpFace, warpBack }) => Math.max(warpFace!, warpBack!));
  const weft = floats.map(({ weftFace, weftBack }) => Math.max(weftFace!, weftBack!));
  expect([Math.max(...warp), Math.max(...weft)]).toEqual(most);
});

test.each(structures.map((it) => [it.name, it] as const))(
  '%s: treadles raise shafts that there are, and the tabby treadles are its plain weave',
  (_, structure) => {
    for (const raised of Object.values(structure.tieUp)) {
      expect(raised.every((shaft) => shaft >= 1 && shaft <= structure.shafts)).toBe(true);
      expect(new Set(raised).size).toBe(raised.length);
    }
    const sheds = tabbySheds(weaveOf(structure, structure.profile).threading);
    const treadles = structure.tabby?.map((treadle) => structure.tieUp[treadle]!);
    const inOrder = (each: readonly (readonly number[])[] | undefined) => each?.map((shed) => shed.join(' ')).sort();
    if (treadles !== undefined) expect(inOrder(treadles)).toEqual(inOrder(sheds));
  },
);

test('a pattern weft is twice as thick as warp, ground and tabby (common practice, no source)', () => {
  expect(PATTERN_WIDTHS).toEqual({ warp: 1, ground: 1, pattern: 2, tabby: 1 });
  const thick = structures.filter(({ widths }) => widths.pattern === 2 * widths.warp).map(({ name }) => name);
  for (const name of ['monk’s belt', 'overshot', 'crackle', 'halvdräll', 'summer and winter']) {
    expect(thick).toContain(name);
  }
  expect(letters(3)).toEqual(['A', 'B', 'C']);
  // Taqueté has a fine weft, which hardly shows.
  expect(findStructure('turned taqueté').widths).toEqual({ warp: 1, ground: 1 / 3, pattern: 1 / 3, tabby: 1 / 3 });
});

describe('finding', () => {
  test('no name stands for two structures', () => {
    const words = structures.flatMap((it) => [it.name, ...it.aliases]).map(plainWord);
    expect(words.filter((word, index) => words.indexOf(word) !== index)).toEqual([]);
  });
  test.each([
    ['Monks Belt', 'monk’s belt'],
    ["MONK'S BELT", 'monk’s belt'],
    ['Ms & Os', 'M’s and O’s'],
    ['summer & winter', 'summer and winter'],
    ['turned taquete', 'turned taqueté'],
    ['halvdrall', 'halvdräll'],
    ['hopsack', 'basket'],
    ['herringbone', '2/2 herringbone'],
  ])('“%s” is %s', (word, name) => expect(findStructure(word).name).toBe(name));
  test('a name that is not known gets the three nearest', () => {
    expect(() => findStructure('turned twil')).toThrow('no structure “turned twil”; the nearest are “turned twill”, ');
    expect(() => findStructure('velvet')).toThrow('(“shedlight structures” lists all)');
  });
});
