import { describe, expect, test } from 'vitest';
import { PRESET_NAMES, PRESETS } from '../../../src/score/rank/presets.js';
import { PARTS } from '../../../src/score/rank/rank.js';
import { spaceOf } from '../../../src/search/space/space.js';
import { QUESTION } from '../question.js';

describe('a way of looking', async () => {
  test('that no bound is known for is never searched by bounds', () => {
    const lengths = [2, 3, 4, 5, 6, 7, 8, 9, 10];
    expect(spaceOf({ ...QUESTION, lengths }).way).toBe('bounded');
    for (const view of PRESET_NAMES) {
      const loose = PARTS.some((part) => !['contrast', 'symmetry', 'float'].includes(part) && PRESETS[view][part] > 0);
      expect(spaceOf({ ...QUESTION, lengths, rank: PRESETS[view] }).way).toBe(loose ? 'scored' : 'bounded');
    }
    expect(spaceOf({ ...QUESTION, lengths, oneOfEachKind: true }).way).toBe('scored');
  });
});
