import { describe, expect, test } from 'vitest';
import { loomObstacles, tiedUpOn } from '../../../src/plan/warp/warp-loom.js';
import { towel } from '../cloths.js';

describe('looms', () => {
  test('a tie-up for each kind: what sinks is the rest of what rises', () => {
    const { draft } = towel();
    const rising = tiedUpOn(draft, { kind: 'rising' });
    expect(rising.treadles[0]).toEqual({ rise: [1, 2], sink: [] });
    expect(tiedUpOn(draft, { kind: 'sinking' }).treadles[0]).toEqual({ rise: [], sink: [3, 4] });
    expect(tiedUpOn(draft, { kind: 'countermarch' }).treadles[0]).toEqual({ rise: [1, 2], sink: [3, 4] });
    expect(tiedUpOn(draft, { kind: 'table' }).manner).toBe('lift plan');
    expect(tiedUpOn(draft, { kind: 'rising', treadles: 4 }).manner).toBe('one foot');
    expect(tiedUpOn(draft, { kind: 'rising', treadles: 3 }).manner).toBe('lift plan');
  });
});

describe('what a loom must have for a warp', () => {
  const demand = { draft: towel().draft, heddles: [10, 10, 10, 12], width: 300, shuttles: 2 };
  const all = {
    kind: 'countermarch',
    shafts: 4,
    treadles: 4,
    heddles: [10, 10, 10, 12],
    width: 300,
    shuttles: 2,
  } as const;

  test('a loom that has exactly what is needed will do, and a width is not refused for machine rounding', () => {
    expect(loomObstacles(demand, all, 'cm')).toEqual([]);
    expect(loomObstacles({ ...demand, width: 300 + 1e-6 }, all, 'cm')).toEqual([]);
    expect(loomObstacles(demand, { kind: 'rising' }, 'cm')).toEqual([]);
    expect(loomObstacles(demand, { ...all, heddles: [10] }, 'cm')).toEqual([]);
  });

  test.each([
    [{ shafts: 3 }, 'needs 4 shafts, the loom has 3'],
    [{ width: 299.4 }, 'needs 30 cm (11.811 in) in the reed, the loom has 29.9 cm (11.787 in)'],
    [{ shuttles: 1 }, 'needs 2 shuttles, the weaver has 1'],
    [{ heddles: [10, 10, 10, 11] }, 'needs 12 heddles on shaft 4, the loom has 11'],
    [{ heddles: [9] }, 'needs 10 heddles on shaft 1, the loom has 9'],
    [{ treadles: 3 }, 'needs 4 treadles, the loom has 3'],
    [{ kind: 'rising', treadles: 3 }, 'needs 4 treadles, the loom has 3, and two feet will not do it'],
  ] as const)('a loom that has a little less is refused, and why: %j', (less, why) => {
    expect(loomObstacles(demand, { ...all, ...less }, 'cm')).toEqual([why]);
  });
});
