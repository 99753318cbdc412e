import { describe, expect, test } from 'vitest';
import { UNWEIGHED } from '../../../src/score/parts/parts.js';
import { PRESET_NAMES, PRESETS, presetOf, rankWritten, weightsOf } from '../../../src/score/rank/presets.js';
import { scoreDraft } from '../../../src/score/score.js';
import { draftWith, PLAIN, TWILL } from '../../gallery/trial.js';
import { runs } from '../../long.js';

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
    expect(first('fine')).toEqual(['fine']);
    expect(first('easy')).toEqual(['ease']);
  });
});

describe('among all pairs of orders of two to six', () => {
  const orders = [2, 3, 4, 5, 6]
    .flatMap((length) => Array.from({ length: 2 ** length - 2 }, (_, n) => (n + 1).toString(2).padStart(length, '0')))
    .map((word) => word.replaceAll('0', 'D').replaceAll('1', 'L'));
  const ranking = { weights: PRESETS.fine, floatLimit: { threads: 7 }, classics: [] };
  const score = (lifts: readonly (readonly number[])[], warp: string, weft: string): number =>
    scoreDraft(draftWith(lifts, warp.repeat(lifts.length), weft.repeat(lifts.length)), ranking).scores.score;

  test.each([
    ['hairline', PLAIN, 'DL', 'LD'],
    ['lines across', PLAIN, 'DL', 'DL'],
    ['pinwheel', PLAIN, 'DDLL', 'DDLL'],
    ['bars of three', PLAIN, 'DLL', 'DLL'],
    ['step', TWILL, 'DL', 'DL'],
  ])('%s stands in the finest tenth', (_, lifts, warp, weft) => {
    const classic = score(lifts, warp, weft);
    const count = runs(200);
    const others = Array.from({ length: count }, (_, n) =>
      score(lifts, orders[(n * 37) % orders.length]!, orders[(n * 53 + 11) % orders.length]!),
    );
    expect(others.filter((other) => other > classic + 1e-9).length).toBeLessThan(count / 10);
  });
});
