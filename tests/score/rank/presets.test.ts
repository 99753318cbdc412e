import { describe, expect, test } from 'vitest';
import { PRESET_NAMES, PRESETS, presetOf } from '../../../src/score/rank/presets.js';

describe('the ways of looking', () => {
  test('each is told by its weights', () => {
    for (const view of PRESET_NAMES) expect(presetOf(PRESETS[view])).toBe(view);
    expect(presetOf({ ...PRESETS.calm, symmetry: 5 })).toBeUndefined();
  });
});
