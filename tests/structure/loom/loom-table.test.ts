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
