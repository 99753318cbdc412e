// How many pairs of a warp order and a weft order of n threads differ, by Burnside's lemma and by listing (computed
// once by a separate program, brute force agreeing to n = 6): up to shifts; and half turns and mirrors; with the two
// colours exchanged. The space of a question is counted before it is searched; these are its counts.
import { describe, expect, test } from 'vitest';
import type { Sameness } from '../../src/score/symmetry/canonical-cloth.js';
import { spaceOf } from '../../src/search/space/space.js';
import { QUESTION } from '../search/question.js';

const count = (structure: string, length: number, same: readonly Sameness[]): number =>
  spaceOf({ ...QUESTION, structures: [structure], lengths: [length], same }).count;

const SHIFTS: readonly Sameness[] = [];
const MIRRORS: readonly Sameness[] = ['mirror', 'half-turn'];

describe('pairs of orders of n threads both ways', () => {
  test.each([
    ['plain weave', 1, 4, 4, 2, 2],
    ['plain weave', 2, 10, 10, 6, 6],
    ['plain weave', 3, 16, 16, 8, 8],
    ['plain weave', 4, 52, 45, 28, 25],
    ['plain weave', 5, 64, 64, 32, 32],
    ['2/2 twill', 2, 10, 9, 6, 5],
    ['2/2 twill', 3, 16, 16, 8, 8],
    ['2/2 twill', 4, 70, 51, 38, 27],
    ['2/2 twill', 5, 64, 64, 32, 32],
    ['2/2 twill', 6, 296, 212, 152, 108],
  ])('%s, %i threads: %i by shifts, %i with mirrors; exchanged too %i and %i', (structure, n, a, b, ax, bx) => {
    expect(count(structure, n, SHIFTS)).toBe(a);
    expect(count(structure, n, MIRRORS)).toBe(b);
    expect(count(structure, n, ['exchange'])).toBe(ax);
    expect(count(structure, n, [...MIRRORS, 'exchange'])).toBe(bx);
  });

  test.each([
    ['plain weave', 8, 2452, 1341],
    ['plain weave', 10, 21664, 9448],
    ['plain weave', 12, 245008, 86276],
    ['plain weave', 16, 33866452, 9561141],
    ['2/2 twill', 8, 4630, undefined],
    ['2/2 twill', 10, 21664, undefined],
    ['2/2 twill', 12, 473496, undefined],
    ['2/2 twill', 16, 67699990, undefined],
  ])('%s, %i threads: %i by shifts', (structure, n, a, b) => {
    expect(count(structure, n, SHIFTS)).toBe(a);
    if (b !== undefined) expect(count(structure, n, MIRRORS)).toBe(b);
  });
});

test('36 pairs of five-end orders that use both colours: 6 × 6', () => {
  // Of the 64 pairs by shifts, those in which either order is of one colour are left out.
  const space = spaceOf({ ...QUESTION, lengths: [5], same: [] });
  const both = Array.from({ length: space.numbers }, (_, index) => space.at(index)).filter(
    ({ warp, weft }) => warp.length === 5 && weft.length === 5,
  );
  expect(both).toHaveLength(36);
});
