import { describe, expect, test } from 'vitest';
import { preferenceOf, TRAITS } from '../../../src/page/store/preference.js';
import { foundOf, HOUNDS_TOOTH } from '../../gallery/trial.js';

describe('what the stars say', () => {
  const found = Array.from({ length: 12 }, (_, at) => {
    const each = foundOf(HOUNDS_TOOTH, at + 1);
    return { ...each, code: `c${at}`, scores: { ...each.scores, darkShare: at / 12, figure: (at % 3) / 3 } };
  });

  test('nothing of fewer than three cloths', () => {
    expect(
      preferenceOf(found, [
        [found[0]!, 5],
        [found[1]!, 1],
      ]),
    ).toBeUndefined();
  });

  test('finds the one figure that the stars follow', () => {
    const starred = found.map((each, at) => [each, Math.round(at / 2.4)] as const);
    const preference = preferenceOf(found, starred)!;
    const dark = TRAITS.findIndex(({ more }) => more === 'dark');
    const largest = Math.max(...preference.weights.map(Math.abs));
    expect(preference.weights[dark]).toBe(largest);
    expect(preference.stars(found[11]!)).toBeGreaterThan(preference.stars(found[0]!) + 2);
  });

  // For one figure that varies, ridge regression is Σxy / (Σx² + λ), here with λ = 2.
  test('is the textbook’s value for a single figure', () => {
    const plain = found.map((each) => ({ ...each, scores: { ...each.scores, figure: 0 } }));
    const starred = [
      [plain[0]!, 1],
      [plain[6]!, 2],
      [plain[11]!, 5],
    ] as const;
    const spread = Math.sqrt(143 / 12) / 12;
    const x = [0, 6, 11].map((at) => (at - 17 / 3) / 12 / spread);
    const y = [1, 2, 5].map((stars) => stars - 8 / 3);
    const expected =
      x.reduce((sum, value, n) => sum + value * y[n]!, 0) / (x.reduce((sum, value) => sum + value * value, 0) + 2);
    const dark = TRAITS.findIndex(({ more }) => more === 'dark');
    expect(preferenceOf(plain, starred)!.weights[dark]).toBeCloseTo(expected, 9);
  });
});
