import { describe, expect, it } from 'vitest';
import type { Floats } from '../../../src/score/model/figures.js';
import { ofEachLook } from '../../../src/score/parts/look-figures.js';
import type { Scores } from '../../../src/score/parts/scores.js';
import {
  darkInWords,
  type Facts,
  floatInWords,
  inWords,
  lengthInWords,
  readsInWords,
  symmetryInWords,
} from '../../../src/score/words/figure-words.js';

const INCH = { ends: 20, picks: 20, per: 'inch' } as const;

const facts: Facts = {
  yarns: [
    { letter: 'D', name: 'dark', hex: '#1f2a44' },
    { letter: 'L', name: 'light', hex: '#efe6d2' },
  ],
  warp: [0, 1],
  weft: [1, 0],
  sett: INCH,
};

const floats = (warpFace: number | null, warpBack: number, weftFace: number, weftBack: number): Floats => ({
  warpFace,
  warpBack,
  weftFace,
  weftBack,
  longest: warpFace === null ? null : Math.max(warpFace, warpBack, weftFace, weftBack),
  longestMm: warpFace === null ? null : 1.27 * Math.max(warpFace, warpBack, weftFace, weftBack),
});

/** Hound's tooth as SCORES.md works it. */
const HOUND: Scores = {
  score: 0.3826,
  contrast: 0.3207,
  tone: 0.3183,
  line: 0.0385,
  figure: 0.2461,
  darkShare: 0.5,
  ...ofEachLook(() => 0),
  symmetry: 0.25,
  operations: [],
  shiftExchange: true,
  planeGroup: 'p1',
  colourGroup: 'p1/p1',
  nearly: { op: 'half-turn', agreement: 0.875 },
  floats: floats(2, 2, 2, 2),
  reads: { '0.6': 37.07, '2': 24.5, '6': 10.28 },
  easyTo: 2.33,
  goneBy: 17.5,
};

describe('a cloth in words', () => {
  it('says hound’s tooth', () => {
    expect(inWords(HOUND, facts)).toBe(
      'half dark; D and L swap when the pattern is shifted; almost half-turn symmetry (88 % of crossings agree); ' +
        'pattern clear at 2 m, only texture at 6 m; longest float 2 ends = 0.10 in',
    );
  });

  it.each([
    [0, 0.4, 'no dark'],
    [0.25, 0.4, 'a quarter dark'],
    [0.3333, 0.4, 'a third dark'],
    [0.4, 0.4, 'two fifths dark'],
    [0.45, 0.4, '45 % dark'],
    [0.504, 0.4, 'half dark'],
    [0.6, 0.4, 'three fifths dark'],
    [0.6667, 0.4, 'two thirds dark'],
    [0.75, 0.4, 'three quarters dark'],
    [1, 0.4, 'all dark'],
    [0.5, 0.049, 'half dark, a fine texture'],
  ])('a dark share of %d at contrast %d: %s', (darkShare, contrast, words) => {
    expect(darkInWords({ darkShare, contrast })).toBe(words);
  });

  it.each<[string, Pick<Scores, 'operations' | 'shiftExchange'>, string[]]>([
    ['nothing', { operations: [], shiftExchange: false }, ['no symmetry']],
    [
      'a half turn',
      { operations: [{ op: 'half-turn', counterchange: false }], shiftExchange: false },
      ['half-turn symmetry'],
    ],
    [
      'a half turn that exchanges',
      { operations: [{ op: 'half-turn', counterchange: true }], shiftExchange: true },
      ['D and L swap when the pattern is shifted or half-turned'],
    ],
    [
      'quarter turns, which hold half turns',
      {
        operations: [
          { op: 'half-turn', counterchange: false },
          { op: 'quarter-turn', counterchange: false },
          { op: 'quarter-turn-back', counterchange: false },
        ],
        shiftExchange: false,
      },
      ['quarter-turn symmetry'],
    ],
    [
      'mirrors both ways, and diagonals that exchange',
      {
        operations: [
          { op: 'half-turn', counterchange: false },
          { op: 'mirror-left-right', counterchange: false },
          { op: 'mirror-up-down', counterchange: false },
          { op: 'diagonal', counterchange: true },
          { op: 'antidiagonal', counterchange: true },
        ],
        shiftExchange: false,
      },
      [
        'half-turn symmetry',
        'left–right and top–bottom mirror symmetry',
        'D and L swap when the pattern is mirrored about either diagonal',
      ],
    ],
  ])('%s', (_, scores, words) => expect(symmetryInWords(scores, facts)).toEqual(words));

  it('names dark and light where more than two yarns are woven', () => {
    const three = { ...facts, yarns: [...facts.yarns, { letter: 'R', name: 'red', hex: '#aa0000' }], warp: [0, 1, 2] };
    expect(symmetryInWords({ operations: [], shiftExchange: true }, three)).toEqual([
      'dark and light swap when the pattern is shifted',
    ]);
  });

  // SCORES, Contrast: 12 and more reads, 6–12 is texture, below 6 melts.
  it.each([
    [[40, 30, 12], 'pattern clear at 6 m'],
    [[40, 30, 11.9], 'pattern clear at 2 m, only texture at 6 m'],
    [[40, 30, 5.9], 'pattern clear at 2 m, one tone at 6 m'],
    [[40, 8, 3], 'pattern clear at 0.6 m, only texture at 2 m'],
    [[11, 8, 3], 'only texture at 0.6 m'],
    [[5, 2, 1], 'one tone at 0.6 m'],
  ])('reads of %j', ([near, room, wall], words) => {
    const reads = { '0.6': near!, '2': room!, '6': wall! };
    expect(readsInWords({ reads, contrast: 0.3 })).toBe(words);
    // A fine texture is no pattern, but it can be clear.
    expect(readsInWords({ reads, contrast: 0.04 })).toBe(words.replace('pattern', 'texture'));
  });
});

describe('floats in words', () => {
  // PRACTICE, WE5: monk's belt AABAB at 20 ends an inch; 8 ends are 0.40 in, 16 are 0.80 in.
  it.each([
    [floats(3, 3, 8, 8), 'longest float 8 ends = 0.40 in'],
    [floats(3, 3, 16, 16), 'longest float 16 ends = 0.80 in'],
    [floats(5, 3, 2, 2), 'longest float 5 picks = 0.25 in'],
    [floats(1, 1, 1, 1), 'longest float 1 end = 0.05 in'],
    [floats(null, 3, 2, 2), 'a thread never interlaces'],
  ])('%#', (given, words) => expect(floatInWords({ floats: given }, { sett: INCH })).toBe(words));

  it('says the longest in length too, where it is another one', () => {
    const sett = { ends: 24, picks: 12, per: 'inch' } as const;
    expect(floatInWords({ floats: floats(3, 3, 4, 4) }, { sett })).toBe(
      'longest float 4 ends = 0.17 in, longest in length 3 picks = 0.25 in',
    );
  });

  it('is in millimetres where the sett is in centimetres', () => {
    expect(floatInWords({ floats: floats(3, 3, 4, 4) }, { sett: { ends: 8, picks: 8, per: 'cm' } })).toBe(
      'longest float 4 ends = 5.0 mm',
    );
    expect(lengthInWords(12.7, { per: 'inch' })).toBe('0.50 in');
  });

  it('says which limit is broken', () => {
    const say = (limit: Facts['floatLimit']): string =>
      floatInWords({ floats: floats(3, 3, 8, 8) }, { sett: INCH, ...(limit && { floatLimit: limit }) });
    expect(say({ threads: 7 })).toBe('longest float 8 ends = 0.40 in, over the limit of 7 threads');
    expect(say({ mm: 9.525 })).toBe('longest float 8 ends = 0.40 in, over the limit of 0.375 in');
    expect(say({ threads: 8 })).toBe('longest float 8 ends = 0.40 in');
    expect(floatInWords({ floats: floats(null, 1, 1, 1) }, { sett: INCH, floatLimit: { threads: 7 } })).toBe(
      'a thread never interlaces, over the limit of 7 threads',
    );
  });
});
