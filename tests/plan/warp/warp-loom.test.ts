import { describe, expect, test } from 'vitest';
import { tiedUp } from '../../../src/plan/warp/warp-loom.js';
import { kept } from '../cloths.js';

const towel = () => kept('2/2 twill', { warp: 'DDLDL', times: 4 });

describe('looms', () => {
  test('a tie-up for each kind: what sinks is the rest of what rises', () => {
    const { draft } = towel();
    const rising = tiedUp(draft, { kind: 'rising' });
    expect(rising.treadles[0]).toEqual({ rise: [1, 2], sink: [] });
    expect(tiedUp(draft, { kind: 'sinking' }).treadles[0]).toEqual({ rise: [], sink: [3, 4] });
    expect(tiedUp(draft, { kind: 'countermarch' }).treadles[0]).toEqual({ rise: [1, 2], sink: [3, 4] });
    expect(tiedUp(draft, { kind: 'table' }).manner).toBe('lift plan');
  });
});
