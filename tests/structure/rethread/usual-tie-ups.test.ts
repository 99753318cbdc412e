import { describe, expect, test } from 'vitest';
import { everyTieUp, regularTieUps } from '../../../src/structure/rethread/usual-tie-ups.js';

/** All words of 0 and 1 of a length. */
const words = (length: number): string[] =>
  Array.from({ length: 2 ** length }, (_, word) => word.toString(2).padStart(length, '0'));
const turns = (word: string): string[] => [...word].map((_, at) => word.slice(at) + word.slice(0, at));
/** The ends that a treadle raises, as 1 and 0. */
const shed = (shafts: number, lift: readonly number[]): string =>
  Array.from({ length: shafts }, (_, at) => +lift.includes(at + 1)).join('');
const runLengths = (word: string): number[] => (word.match(/(.)\1*/g) ?? []).map((run) => run.length);

describe('regular twills', () => {
  test.each([
    [2, ['1/1']],
    [3, ['1/2', '2/1']],
    [4, ['2/2', '1/3', '3/1', '1/1']],
  ])('on %d shafts: %j', (shafts, names) => expect(regularTieUps(shafts).map(({ name }) => name)).toEqual(names));

  test.each([2, 3, 4, 5, 6, 7, 8, 9, 10, 12, 16])(
    'on %d shafts are all that a plain search finds, each once',
    (shafts) => {
      const first = (word: string): string => turns(word).sort()[0]!;
      const expected = new Set<string>();
      // One rise to a repeat that divides the shafts, in runs of at most seven.
      for (let repeat = 2; repeat <= shafts; repeat++) {
        if (shafts % repeat !== 0) continue;
        for (let up = 1; up < repeat; up++) {
          if (up > 7 || repeat - up > 7) continue;
          expected.add(first(('1'.repeat(up) + '0'.repeat(repeat - up)).repeat(shafts / repeat)));
        }
      }
      // On five to eight shafts two different rises, in runs of at most three.
      if (shafts >= 5 && shafts <= 8) {
        for (const word of words(shafts)) {
          const begun = turns(word).find((turn) => turn.startsWith('1') && turn.endsWith('0'));
          const lengths = begun === undefined ? [] : runLengths(begun);
          const halves = word.slice(0, shafts / 2) === word.slice(shafts / 2);
          if (lengths.length === 4 && Math.max(...lengths) <= 3 && !halves) expected.add(first(word));
        }
      }
      const found = regularTieUps(shafts);
      const sheds = found.map(({ lifts }) => first(shed(shafts, lifts[0]!)));
      expect(new Set(sheds).size).toBe(sheds.length);
      expect(new Set(sheds)).toEqual(expected);
      for (const { name, lifts, runs } of found) {
        expect(name).toBe(runs.join('/'));
        expect(shafts % lifts.length).toBe(0);
        // Each treadle raises the shafts of the one before, moved on by one.
        lifts.forEach((lift, treadle) => {
          const moved = lifts[0]!.map((shaft) => ((shaft - 1 + treadle) % shafts) + 1).sort((a, b) => a - b);
          expect(lift).toEqual(moved);
        });
      }
    },
  );

  test('the longest repeat comes first, in it the most balanced', () => {
    expect(
      regularTieUps(6)
        .map(({ name }) => name)
        .slice(0, 5),
    ).toEqual(['3/3', '2/4', '4/2', '1/5', '5/1']);
    expect(regularTieUps(9).map(({ name }) => name)).toEqual([
      ...['4/5', '5/4', '3/6', '6/3', '2/7', '7/2'],
      ...['1/2', '2/1'],
    ]);
  });
});

test.each([2, 3])('every tie-up of %d shafts that weaves, of those that differ in the first treadle one', (shafts) => {
  const sheds = words(shafts);
  const lists = (length: number): string[][] =>
    length === 0 ? [[]] : lists(length - 1).flatMap((list) => sheds.map((each) => [...list, each]));
  const weaves = (list: readonly string[]): boolean =>
    list.every((each) => each.includes('0') && each.includes('1')) &&
    Array.from({ length: shafts }, (_, s) => new Set(list.map((each) => each[s])).size).every((kinds) => kinds === 2);
  const ring = (list: readonly string[]): string =>
    list.map((_, at) => [...list.slice(at), ...list.slice(0, at)].join(' ')).sort()[0]!;
  const found = everyTieUp(shafts).map((lifts) => ring(lifts.map((lift) => shed(shafts, lift))));
  expect(new Set(found).size).toBe(found.length);
  expect([...found].sort()).toEqual([...new Set(lists(shafts).filter(weaves).map(ring))].sort());
});
