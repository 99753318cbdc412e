import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { letters, numbers, readElements, writeNumbers } from '../../src/draft/notation.js';
import { Problem } from '../../src/problem.js';

const shafts = numbers('shaft', 64);
const read = (text: string): string => writeNumbers(readElements(text, shafts));

describe('numbers of shafts and treadles', () => {
  it.each([
    ['1 2 3 4', '1 2 3 4'],
    ['1,2, 3 ,4', '1 2 3 4'],
    ['1-4', '1 2 3 4'],
    ['1-4, 4-1', '1 2 3 4 4 3 2 1'],
    ['(1 2)x3 4', '1 2 1 2 1 2 4'],
    ['(1 2) × 2', '1 2 1 2'],
    ['5-5', '5'],
    // A dash between three and more only joins them: rosepath, STRUCTURES section 4.
    ['1-2-3-4-1-4-3-2', '1 2 3 4 1 4 3 2'],
    ['2x(1 2 3 4)', '1 2 3 4 1 2 3 4'],
    ['2×(1 3x2)', '1 2 2 2 1 2 2 2'],
    ['2x(1 2x(3 4)) 1', '1 3 4 3 4 1 3 4 3 4 1'],
    ['3x1 2', '1 1 1 2'],
    ['1+3 2+4', '1+3 2+4'],
    ['1 + 3 2', '1+3 2'],
  ])('reads %s', (text, expected) => expect(read(text)).toBe(expected));

  it.each([
    ['1 2 x 4', 'found “x”; expected shafts from 1 to 64, as 1 2 3, 1-4 or 4x(1 2)', 4],
    ['1234', 'found shaft 1234; expected shafts from 1 to 64, as 1 2 3, 1-4 or 4x(1 2) (did you mean 1 2 3 4?)', 0],
    ['1 65', 'found shaft 65; expected shafts from 1 to 64, as 1 2 3, 1-4 or 4x(1 2)', 2],
    ['0', 'found shaft 0; expected shafts from 1 to 64, as 1 2 3, 1-4 or 4x(1 2)', 0],
    ['4x(1 2', 'found a bracket that is not closed; expected its partner', 2],
    [
      '1 2)',
      'found a closing bracket without its opening one; expected shafts from 1 to 64, as 1 2 3, 1-4 or 4x(1 2)',
      3,
    ],
    ['0x(1 2)', 'found a count of 0; expected at least 1', 0],
    ['999999999x(1 2)', 'found more than 2000 elements; expected 2000 at most', 10],
    ['1+1', 'found shaft 1 twice in 1+1; expected it once', 0],
    ['1.5', 'found “1.5”; expected shafts from 1 to 64, as 1 2 3, 1-4 or 4x(1 2)', 0],
  ])('refuses %s at its place', (text, message, offset) => {
    expect(() => readElements(text, shafts)).toThrow(
      expect.objectContaining({ message, spot: expect.objectContaining({ offset }) }),
    );
  });

  it('reads a lone 0 as none, where a thread may be on none', () => {
    const ends = numbers('shaft', 64, true);
    expect(readElements('1 0 2x(0 2)', ends)).toEqual([[1], [], [], [2], [], [2]]);
    for (const text of ['0-2', '1+0', '1-0-2']) expect(() => readElements(text, ends)).toThrow('found shaft 0');
  });

  it('stays within its limit however repeats are nested', () => {
    const bomb = `${'9x('.repeat(30)}1${')'.repeat(30)}`;
    expect(() => readElements(bomb, shafts)).toThrow(Problem);
  });

  it('reads back what it writes', () => {
    const strand = fc.uniqueArray(fc.integer({ min: 1, max: 64 }), { minLength: 1, maxLength: 4 });
    fc.assert(
      fc.property(fc.array(strand, { minLength: 1, maxLength: 60 }), (list) => {
        expect(readElements(writeNumbers(list), shafts)).toEqual(list);
      }),
    );
  });
});

describe('letters of yarns', () => {
  const alphabet = letters(['D', 'L']);

  it('reads a repeat in front as well', () => {
    expect(readElements('2x(D L) 3xL', alphabet)).toEqual([0, 1, 0, 1, 1, 1, 1]);
  });

  it('reads a count right before or right after what it counts', () => {
    expect(readElements('4D 4L', alphabet)).toEqual(readElements('D4 L4', alphabet));
    expect(readElements('4(DL)', alphabet)).toEqual(readElements('(DL)4', alphabet));
    expect(readElements('D 4L', alphabet)).toEqual([0, 1, 1, 1, 1]);
    expect(readElements('D4L', alphabet)).toEqual([0, 0, 0, 0, 1]);
    expect(readElements('D4L4', alphabet)).toEqual([0, 0, 0, 0, 1, 1, 1, 1]);
    expect(readElements('(2D L)2 3L', alphabet)).toEqual([0, 0, 1, 0, 0, 1, 1, 1, 1]);
    expect(() => readElements('4D2L', alphabet)).toThrow('found the count 2 after a letter or bracket with a count');
    expect(() => readElements('2(D)2', alphabet)).toThrow('found the count 2 after a letter or bracket with a count');
    expect(() => readElements('0D', alphabet)).toThrow('found a count of 0');
  });

  it('takes an x for a yarn where there is one, and × for a count', () => {
    expect(readElements('d2x2 2×D', letters(['D', 'X']))).toEqual([0, 0, 1, 1, 0, 0]);
    expect(() => readElements('2xD', letters(['D', 'X']))).toThrow('found the count 2 with nothing before it');
  });

  it('refuses other letters', () => {
    expect(() => readElements('D L X', alphabet)).toThrow(
      'found “X”; expected letters of yarns (D L), as D L, D4 L4 or (DL)4',
    );
  });
});
