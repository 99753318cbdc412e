import { describe, expect, test } from 'vitest';
import { LOOM_KIND } from '../../../src/structure/loom/loom-table.js';

describe('a loom in one text', () => {
  test.each([
    ['rising', { kind: 'rising' }],
    ['jack, 4 shafts, 6 treadles', { kind: 'rising', shafts: 4, treadles: 6 }],
    ['counterbalance, 4 shafts', { kind: 'sinking', shafts: 4 }],
    ['8 shafts, countermarch, 10 treadles, 32 in', { kind: 'countermarch', shafts: 8, treadles: 10, width: 812.8 }],
    ['table, 60 cm wide, 1 shuttle', { kind: 'table', width: 600, shuttles: 1 }],
    ['heddles 120 120 120 70, 400 ends', { kind: 'rising', heddles: [120, 120, 120, 70], ends: 400 }],
    ['120 120 120 70 heddles', { kind: 'rising', heddles: [120, 120, 120, 70] }],
    ['4 shafts, 120 heddles a shaft', { kind: 'rising', shafts: 4, heddles: [120, 120, 120, 120] }],
  ])('%s', (text, loom) => expect(LOOM_KIND.read(text)).toEqual(loom));

  test('the same as keys', () => {
    const keys = { kind: 'counterbalance', shafts: '4', heddles: ['120', '120', '120', '70'], width: '32 in' };
    expect(LOOM_KIND.read(keys)).toEqual(LOOM_KIND.read('counterbalance, 4 shafts, heddles 120 120 120 70, 32 in'));
  });

  test.each([
    ['4 shaft looms', 'found “4 shaft looms”; expected a loom such as “rising, 4 shafts'],
    ['rising, 400 shafts', 'found “400”; expected shafts from 1 to 64'],
    ['rising, 0 in', 'found “0 in”; expected a length of more than nothing'],
    ['', 'found nothing; expected kind, shafts, treadles'],
  ])('refuses %j', (text, said) => expect(() => LOOM_KIND.read(text)).toThrow(said));
});

describe('the numbers of a loom', () => {
  test.each([
    ['shafts', 1, 64],
    ['treadles', 1, 128],
    ['heddles', 0, 100_000],
    ['ends', 1, 100_000],
    ['shuttles', 1, 26],
  ])('%s are from %d to %d', (key, least, most) => {
    const shafts = key === 'shafts' ? {} : { shafts: '1' };
    const read = (count: number): unknown => LOOM_KIND.read({ ...shafts, [key]: String(count) })[key as 'shafts'];
    for (const count of [least, most]) expect(read(count)).toEqual(key === 'heddles' ? [count] : count);
    for (const count of [least - 1, most + 1]) expect(() => read(count)).toThrow('expected');
  });

  test('the width is more than nothing and at most five metres', () => {
    expect(LOOM_KIND.read({ width: '5 m' }).width).toBe(5000);
    expect(LOOM_KIND.read({ width: '1 mm' }).width).toBe(1);
    expect(() => LOOM_KIND.read({ width: '5.01 m' })).toThrow('expected');
  });

  test('one number of heddles is for every shaft, and for 64 where the shafts are not told', () => {
    expect(LOOM_KIND.read('3 shafts, 80 heddles').heddles).toEqual([80, 80, 80]);
    expect(LOOM_KIND.read('80 heddles').heddles).toEqual(new Array(64).fill(80));
  });
});
