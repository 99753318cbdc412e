import { describe, expect, test } from 'vitest';
import { drawdown } from '../../../src/cloth/drawdown.js';
import { floatsOf } from '../../../src/cloth/floats.js';
import { hangsTogether } from '../../../src/cloth/holds-together.js';
import { shaftCount } from '../../../src/draft/draft.js';
import { findStructure, structures, weaveOf } from '../../../src/structure/catalogue/catalogue.js';
import { plainWord, type Structure } from '../../../src/structure/model/structure.js';
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
    expect(hangsTogether(cloth)).toBe(true);
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
