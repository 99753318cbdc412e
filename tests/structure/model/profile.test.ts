import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseProfile } from '../../../src/structure/catalogue/catalogue.js';

const BLOCKS = ['A', 'B', 'C'];
const read = (text: string): string => parseProfile(text, BLOCKS).join('');

describe('reading a profile', () => {
  test.each([
    ['A A B A B', 'AABAB'],
    ['AABAB', 'AABAB'],
    ['aabab', 'AABAB'],
    ['4A 2B', 'AAAABB'],
    ['A4 B2', 'AAAABB'],
    ['A4B2', 'AAAABB'],
    ['(AB)3', 'ABABAB'],
    ['(A)', 'A'],
    ['((AB)2 C)2 3A', 'ABABCABABCAAA'],
    ['12C', 'CCCCCCCCCCCC'],
    ['2(A B)', 'ABAB'],
    ['2x(A 2B)', 'ABBABB'],
  ])('%s', (text, blocks) => expect(read(text)).toBe(blocks));

  test('letters with counts come back as they were written', () => {
    const runs = fc.array(fc.tuple(fc.constantFrom(...BLOCKS), fc.integer({ min: 1, max: 12 })), { minLength: 1 });
    fc.assert(
      fc.property(runs, (list) => {
        const long = list.map(([block, times]) => block.repeat(times)).join('');
        expect(read(list.map(([block, times]) => `${times}${block}`).join(' '))).toBe(long);
        expect(read(list.map(([block, times]) => `${block}${times}`).join(''))).toBe(long);
      }),
    );
  });

  test.each([
    ['A D', 'found “D”; expected blocks A, B, C'],
    ['4A2B', 'found the count 2 after a letter or bracket with a count before it; expected one of the two'],
    ['A0', 'a count of 0'],
    ['3 A', 'found the count 3 apart from what it counts; expected no space between, as 3A'],
    ['(A', 'found a bracket that is not closed; expected its partner'],
    ['A)', 'a closing bracket without its opening one'],
    ['()', 'an empty bracket'],
    ['', 'a profile is empty'],
    ['A-B', 'found “-”'],
    ['99999A', 'found more than 4096 elements; expected 4096 at most'],
  ])('refuses “%s”', (text, message) => expect(() => read(text)).toThrow(message));
});
