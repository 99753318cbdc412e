import { describe, expect, test } from 'vitest';
import { UNWEIGHED } from '../../../src/score/parts/parts.js';
import { PRESET_NAMES, PRESETS, presetOf, rankWritten, weightsOf } from '../../../src/score/rank/presets.js';

describe('the ways of looking', () => {
  test('each is told by its weights', () => {
    for (const view of PRESET_NAMES) expect(presetOf(PRESETS[view])).toBe(view);
    expect(presetOf({ ...PRESETS.calm, symmetry: 5 })).toBeUndefined();
  });

  test('each is written by its name, and other weights by those that count', () => {
    for (const view of PRESET_NAMES) {
      expect(rankWritten(PRESETS[view])).toBe(view);
      expect(weightsOf(view)).toBe(PRESETS[view]);
    }
    const weights = { ...UNWEIGHED, contrast: 2, ease: 0.5 };
    expect(Object.entries(rankWritten(weights))).toEqual([
      ['contrast', 2],
      ['ease', 0.5],
    ]);
    expect(weightsOf(rankWritten(weights))).toEqual(weights);
    expect(rankWritten(UNWEIGHED)).toEqual({});
  });

  test('each weighs most what it is named for', () => {
    const first = (view: keyof typeof PRESETS): string[] => {
      const most = Math.max(...Object.values(PRESETS[view]));
      return Object.entries(PRESETS[view]).flatMap(([part, weight]) => (weight === most ? [part] : []));
    };
    expect(first('clear')).toEqual(['contrast']);
    expect(first('balanced').sort()).toEqual(['balance', 'contrast', 'symmetry']);
    expect(first('calm')).toEqual(['calm']);
    expect(first('lively')).toEqual(['lively']);
    expect(first('unexpected').sort()).toEqual(['figured', 'newness']);
    expect(first('easy')).toEqual(['ease']);
  });
});
