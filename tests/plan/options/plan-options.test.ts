import { describe, expect, test } from 'vitest';
import { readPlanOptions } from '../../../src/plan/options/plan-options.js';
import { needsOf } from '../cloths.js';

describe('reeds and needs that a person gives', () => {
  test.each(['width', 'piece'])('%s of nothing', (key) => {
    expect(() => needsOf({ [key]: '0 in' })).toThrow(
      `--${key}: found “0 in”; expected a length of more than nothing, such as 20 in`,
    );
  });
});

describe('needs', () => {
  test('a file and flags; flags win; every fault has its place', () => {
    const text =
      'width: 50 cm\nloom: countermarch, heddles 120 120 120 70\nyarn size: { D: 8/2 cotton, L: 16/2 linen }\n';
    const options = readPlanOptions(text, 'loom.yaml', { width: '20 in' });
    expect(options.width).toBe(508);
    expect(options.loom).toMatchObject({ kind: 'countermarch', heddles: [120, 120, 120, 70] });
    const more = readPlanOptions(text, 'loom.yaml', { loom: '8 shafts, 32 in' });
    expect(more.loom).toEqual({ kind: 'countermarch', heddles: [120, 120, 120, 70], shafts: 8, width: 812.8 });
    expect(() => readPlanOptions('shafts: 4\n', 'loom.yaml')).toThrow(
      'loom.yaml:1:1: found the former key “shafts”; expected loom: rising, 4 shafts',
    );
    expect(options.yarns.L!.tex).toBeCloseTo(206.689, 3);
    expect(() => readPlanOptions('widht: 20 in\n', 'loom.yaml')).toThrow(
      /^loom.yaml:1:1: found the unknown key “widht”; expected a key; the nearest is “width” /,
    );
    expect(() => readPlanOptions('width: 20\n', 'loom.yaml')).toThrow(
      'loom.yaml:1:8: found “20”; expected a length such as',
    );
    expect(() => readPlanOptions('', 'needs', { shrinkage: '12' })).toThrow(
      '--shrinkage: found “12”; expected per cent',
    );
    expect(() => readPlanOptions('yarn size: { D: 60/2 silk }\n', 'loom.yaml')).toThrow(
      /loom.yaml:1:17: “60\/2 silk” can mean/,
    );
  });
});
