import { describe, expect, test } from 'vitest';
import { NICHES, nicheOf } from '../../../src/search/evaluate/niche.js';

describe('a niche', () => {
  test.each([
    [
      { ends: 1, picks: 1, darkShare: 0, symmetry: 0 },
      { size: 0, dark: 0, symmetry: 0 },
    ],
    [
      { ends: 4, picks: 3, darkShare: 0.3, symmetry: 0.25 },
      { size: 2, dark: 3, symmetry: 1 },
    ],
    [
      { ends: 5, picks: 8, darkShare: 0.1 + 0.2, symmetry: 0.5 },
      { size: 3, dark: 3, symmetry: 2 },
    ],
    [
      { ends: 400, picks: 80, darkShare: 1, symmetry: 1 },
      { size: 9, dark: 9, symmetry: 4 },
    ],
  ])('%j', (traits, niche) => {
    const { size, dark, symmetry } = niche;
    expect(nicheOf(traits, false)).toBe((10 * size + dark) * 5 + symmetry);
    expect(nicheOf(traits, false)).toBeLessThan(NICHES);
  });

  test('is the same whichever colour is dark, where they may change places', () => {
    const traits = { ends: 8, picks: 8, symmetry: 0.25 };
    expect(nicheOf({ ...traits, darkShare: 0.3 }, true)).toBe(nicheOf({ ...traits, darkShare: 0.7 }, true));
    expect(nicheOf({ ...traits, darkShare: 0.3 }, false)).not.toBe(nicheOf({ ...traits, darkShare: 0.7 }, false));
  });
});
