import { expect, test } from 'vitest';
import { andList, capital, counted, grouped, orList } from '../../src/words/counts.js';

test('a number has its thousands apart, and a huge one is rounded', () => {
  expect([0, 999, 1000, 67_108_864].map(grouped)).toEqual(['0', '999', '1,000', '67,108,864']);
  expect(grouped(2 ** 60)).toBe('1.153e+18');
});

test('one is one, and every other count is more', () => {
  expect([0, 1, 2].map((count) => counted(count, 'unit'))).toEqual(['0 units', '1 unit', '2 units']);
  expect(counted(2, 'end in the warp', 'ends in the warp')).toBe('2 ends in the warp');
});

test('a list ends in a word', () => {
  const words = ['a', 'b', 'c'];
  expect([0, 1, 2, 3].map((count) => andList(words.slice(0, count)))).toEqual(['', 'a', 'a and b', 'a, b and c']);
  expect(orList(words)).toBe('a, b or c');
});

test('a sentence begins with a capital', () => {
  expect(capital('dark and light swap')).toBe('Dark and light swap');
});
