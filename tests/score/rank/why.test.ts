import { describe, expect, it } from 'vitest';
import { UNWEIGHED } from '../../../src/score/parts/parts.js';
import { PRESETS } from '../../../src/score/rank/presets.js';
import { nearestInWords, whyInWords } from '../../../src/score/rank/why.js';

const PARTS = {
  ...UNWEIGHED,
  contrast: 0.32,
  symmetry: 0.5,
  float: 0.83,
  novelty: 0.12,
  figure: 0.45,
  figured: 0.45,
  balance: 1,
};

describe('why a cloth stands where it does', () => {
  it('names what its score comes from, the strongest first', () => {
    expect(whyInWords(PARTS, { ...UNWEIGHED, contrast: 3, symmetry: 2, float: 1 })).toBe(
      'ranked here for: symmetry 0.50, contrast 0.32 and short floats 0.83',
    );
  });
  it('leaves out what brings little', () => {
    expect(whyInWords(PARTS, { ...UNWEIGHED, balance: 5, float: 1 })).toBe(
      'ranked here for: balance of dark and light 1.00',
    );
  });
  it('names the way of looking', () => {
    expect(whyInWords(PARTS, PRESETS.unexpected)).toBe(
      'ranked here among the unexpected for: balance of dark and light 1.00, good share of figure 0.45 and symmetry 0.50',
    );
  });
  it('says so where nothing counts', () => {
    expect(whyInWords(UNWEIGHED, PRESETS.easy)).toBe('ranked here for nothing: no part of the score has a weight');
  });
});

describe('the nearest classic', () => {
  it('is named with the difference', () => {
    expect(nearestInWords({ novelty: 0.1234, nearest: 'log cabin' })).toBe('nearest classic: log cabin, 0.12 away');
  });
  it('may be the cloth itself', () => {
    expect(nearestInWords({ novelty: 1e-12, nearest: 'step' })).toBe('measures the same as step');
  });
  it('is not said where none was looked for', () => {
    expect(nearestInWords({})).toBeUndefined();
  });
});
