import { describe, expect, test } from 'vitest';
import { highlights, measured } from '../../../src/plan/piece/highlights.js';
import { kept } from '../cloths.js';

const { draft } = kept('2/2 twill', { warp: 'DDLDL' });
const real = measured(draft);
const none = Object.fromEntries(Object.keys(real.parts).map((part) => [part, 0])) as typeof real.parts;

/** First clauses of as many cloths, each with less contrast than the one before and alike in all else. */
function said(count: number, contrastOf = (k: number): number => 1 - k / count): string[] {
  const cloths = Array.from({ length: count }, (_, k) => ({
    draft,
    scored: { ...real, parts: { ...none, contrast: contrastOf(k) } },
  }));
  return highlights(cloths).map(([first]) => first!);
}

describe('places in a list', () => {
  test('are named for the first quarter, rounded up, as they are spoken', () => {
    const first = said(104);
    expect(first.slice(0, 26).map((words) => words.replace(' in contrast', ''))).toEqual([
      ...['1st', '2nd', '3rd', '4th', '5th', '6th', '7th', '8th', '9th', '10th'],
      ...['11th', '12th', '13th', '14th', '15th', '16th', '17th', '18th', '19th', '20th'],
      ...['21st', '22nd', '23rd', '24th', '25th', '26th'],
    ]);
    expect(first[26]).toMatch(/dark$/);
    expect(said(450).slice(110, 113)).toEqual(['111th in contrast', '112th in contrast', '113th in contrast']);
    expect(said(450)[100]).toBe('101st in contrast');
  });

  test('are named in lists of four and more', () => {
    expect(said(4)).toEqual(['1st in contrast', ...new Array<unknown>(3).fill(expect.stringMatching(/dark$/))]);
    expect(said(5).slice(1, 3)).toEqual(['2nd in contrast', expect.stringMatching(/dark$/)]);
    expect(said(3)[0]).toMatch(/dark$/);
  });

  test('are the lowest that is shared where cloths tie, rounding errors apart', () => {
    expect(said(8, (k) => (k < 2 ? 1 - k * 1e-12 : 0)).slice(0, 3)).toEqual([
      '2nd in contrast',
      '2nd in contrast',
      expect.stringMatching(/dark$/),
    ]);
    expect(said(8, (k) => (k < 2 ? 1 - k * 1e-6 : 0)).slice(0, 2)).toEqual(['1st in contrast', '2nd in contrast']);
  });
});

test('of two best places the part that is told first is named', () => {
  const cloths = [0, 1, 2, 3].map((k) => ({
    draft,
    scored: { ...real, parts: { ...none, contrast: 1 - k / 4, ease: 1 - k / 4 } },
  }));
  expect(highlights(cloths)[0]![0]).toBe('1st in contrast');
});

test('a cloth without any symmetry has none told of it', () => {
  const scored = { ...real, scores: { ...real.scores, operations: [], shiftExchange: false } };
  expect(highlights([{ draft, scored }])).toEqual([[expect.stringMatching(/dark$/)]]);
});
