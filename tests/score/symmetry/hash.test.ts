import { expect, test } from 'vitest';
import { hashWords } from '../../../src/score/symmetry/hash.js';

function hashOf(words: readonly number[]): string {
  const hash = new Uint32Array(4);
  hashWords(Int32Array.from(words), hash);
  return [...hash].map((word) => word.toString(16).padStart(8, '0')).join(' ');
}

// Computed with mmh3 5.3.0 for Python: `mmh3_x86_128_digest`, seed 0, of the words as little-endian bytes.
test.each([
  [[], '00000000 00000000 00000000 00000000'],
  [[0, 0, 0, 0], '5a4075d6 6b2d3d27 d3926c2f eb228a07'],
  [[1, 0, 0, 0], 'a31379a3 e45d6f9e 6b4ad580 91ca4982'],
  [[1, 2, 3, 4], '37d6ee17 3d4a429d 3dbb9c17 5b64b81d'],
  [[-1, 7, -2147483648, 2147483647, 5, 0, -9, 123456789], '7e4023f3 91f325b4 9e40c91e d729f6a1'],
  [[0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11], '0295878c b931780a 8a41db77 baadc241'],
])('%j has the published hash', (words, hash) => {
  expect(hashOf(words)).toBe(hash);
});

// The hash of the filled list by mmh3, its last step undone, the list's own length put in, and the last step done again.
test.each([
  [[1], '36d9a19c cdc390ef 0159e2b5 65c935d2'],
  [[1, 2], '29c7c0ff 204ace43 3ae8d941 138f3200'],
  [[1, 2, 3], 'd718430e a767de00 dcf0a700 6f021213'],
  [[1, 2, 3, 4, 5], '713e13b9 1a30b3ab 6976854b 30743396'],
])('%j is filled up with zeros, but its own length counts', (words, hash) => {
  expect(hashOf(words)).toBe(hash);
});
