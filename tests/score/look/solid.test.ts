import { expect, test } from 'vitest';
import { solidShare, solidShares } from '../../../src/score/look/solid.js';
import { lightOf } from '../../faces.js';

// Clearly dark is below 0.15, clearly light above 0.85.
test('half-tones begin at the limits themselves', () => {
  expect(solidShares(lightOf([0.15, 0.85, 0.5, 0.3], 2))).toEqual({ dark: 0, light: 0 });
  expect(solidShares(lightOf([0.149, 0.851, 0, 0], 2))).toEqual({ dark: 0.75, light: 0.25 });
});

test('what counts is twice the smaller share', () => {
  expect(solidShare(lightOf([0, 0, 0, 1], 2))).toBe(0.5);
  expect(solidShare(lightOf([0, 0, 1, 1], 2))).toBe(1);
  expect(solidShare(lightOf([0, 0.5, 1, 1], 2))).toBe(0.5);
  expect(solidShare(lightOf([0, 0, 0, 0], 2))).toBe(0);
});
