import { expect, test } from 'vitest';
import { nicheAt, nicheInWords, nicheOf } from '../../../src/search/evaluate/niche.js';

test('a kind in words', () => {
  const number = nicheOf({ ends: 20, picks: 12, darkShare: 0.35, symmetry: 0.5 }, false);
  expect(nicheAt(number)).toEqual({ size: 5, dark: 3, symmetry: 2 });
  expect(nicheInWords(number, false)).toBe('motif of 17 to 32 threads, 30 to 40 % dark, symmetry 0.5');
  expect(nicheInWords(number, true)).toBe('motif of 17 to 32 threads, 30 to 40 % dark (or light), symmetry 0.5');
  const half = nicheOf({ ends: 1, picks: 1, darkShare: 0.5, symmetry: 0 }, true);
  expect(nicheInWords(half, true)).toBe('motif of 1 thread, half dark, symmetry 0');
});
