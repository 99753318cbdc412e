import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { planWarps } from '../../../src/plan/piece/warp-plan.js';
import { balanceOf, evenBorders, evenFillings, mirrored, nearestFillings } from '../../../src/plan/warp/fill-width.js';
import { tally } from '../../../src/plan/yarn/yarn-amounts.js';
import { figures } from '../../../src/sheets/warp-sheet/sheet-figures.js';
import { field, needsOf, towel } from '../cloths.js';

describe('borders and mirrors', () => {
  const planned = (flags: Record<string, string>, cloth = towel()) => planWarps([cloth], needsOf(flags))[0]!;

  test('single turns and even borders: 38 ends, 10 repeats and borders of 9 are 399 of 400, D 231 and L 150 inside', () => {
    const warp = planned({ mirror: 'single', border: 'even D', floating: 'no' });
    expect(warp).toMatchObject({ wanted: 400, repeat: 38, balance: 1, repeats: 10, border: 9 });
    expect(warp.ends).toHaveLength(399);
    const field = warp.ends.slice(9, -9);
    expect(
      tally(
        field.map(({ yarn }) => yarn),
        381,
        2,
      ),
    ).toEqual([231, 150]);
    expect(warp.ends).toEqual(warp.ends.toReversed());
    expect(warp.wound).toEqual([
      { letter: 'D', ends: 249 },
      { letter: 'L', ends: 150 },
    ]);
    const said = Object.fromEntries(figures(warp, warp.pieces[0]!));
    expect(said.ends).toBe('399 = 10 × 38 + 1 to balance + borders 2 × 9');
    expect(said['to fill']).toBe(
      '400 ends are the width asked for; nearest 10 repeats, borders 9: 399 (−1); 9 repeats, borders 28: 399 (−1); 8 repeats, borders 47: 399 (−1)',
    );
  });

  test('borders as they are given: 10 repeats of 38 are 405, 9 are 367', () => {
    const warp = planned({ mirror: 'single', border: '12 D' });
    expect(warp.fillings.slice(0, 2)).toEqual([
      { repeats: 10, ends: 405, over: 5 },
      { repeats: 9, ends: 367, over: -33 },
    ]);
  });

  test('doubled turns: 9 repeats of 40 and even borders of 20 are 400', () => {
    const warp = planned({ mirror: 'doubled', border: 'even L' });
    expect(warp).toMatchObject({ repeat: 40, balance: 0, repeats: 9, border: 20 });
    expect(warp.ends).toHaveLength(400);
  });

  test('one repeat is woven where no more fit; what is no border or no turn is refused', () => {
    expect(planned({ border: 'even D', width: '1.2 in' })).toMatchObject({ repeats: 1, border: 4 });
    expect(() => planned({ border: 'evenly D' })).toThrow(
      '--border: found “evenly D”; expected ends and a letter, such as 8 D',
    );
    expect(() => planned({ mirror: 'twice' })).toThrow('--mirror: found “twice”; expected no, single or doubled');
  });
});

const order = fc.array(fc.nat(2), { minLength: 1, maxLength: 12 });

describe('fitting', () => {
  test('the three nearest fillings are the nearest of all', () => {
    const sizes = [fc.integer({ min: 10, max: 800 }), fc.integer({ min: 2, max: 90 }), fc.nat(60)] as const;
    fc.assert(
      fc.property(...sizes, (wanted, repeat, around) => {
        const all = Array.from({ length: 900 }, (_, k) => Math.abs((k + 1) * repeat + around - wanted));
        const nearest = all.sort((a, b) => a - b).slice(0, 3);
        expect(nearestFillings(wanted, repeat, around).map(({ over }) => Math.abs(over))).toEqual(nearest);
      }),
    );
  });

  test('a mirrored order with its balance reads the same from both sides', () => {
    fc.assert(
      fc.property(
        order,
        fc.constantFrom('single' as const, 'doubled' as const),
        fc.integer({ min: 1, max: 4 }),
        (word, turn, times) => {
          const { order: whole, balance } = mirrored(word, turn);
          const ends = field(whole, whole.length * times + balance);
          expect(ends).toEqual(ends.toReversed());
        },
      ),
    );
  });

  test('balance makes whole repeats read the same from both sides, with the fewest threads that do', () => {
    fc.assert(
      fc.property(order, (word) => {
        const same = (balance: number): boolean => {
          const ends = field(word, word.length * 2 + balance);
          return ends.every((end, i) => end === ends.at(-1 - i));
        };
        const fewest = word.findIndex((_, balance) => same(balance));
        expect(balanceOf(word)).toBe(fewest < 0 ? undefined : fewest);
      }),
    );
  });
});

test('the nearest three fillings are those of a plain search, ties to the narrower', () => {
  const size = fc.integer({ min: 1, max: 60 });
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 400 }), size, fc.nat(30), (wanted, repeat, around) => {
      const all = Array.from({ length: 500 }, (_, k) => (k + 1) * repeat + around - wanted);
      const nearest = all.sort((a, b) => Math.abs(a) - Math.abs(b) || a - b).slice(0, 3);
      const found = nearestFillings(wanted, repeat, around);
      expect(found.map(({ over }) => over)).toEqual(nearest);
      for (const { repeats, ends, over } of found) {
        expect(ends).toBe(repeats * repeat + around);
        expect(ends - wanted).toBe(over);
      }
    }),
  );
});

// A border has four ends at least (common practice, no source).
test('even borders take what whole repeats leave, and are four ends wide at least', () => {
  expect(evenFillings(100, 20, 0).map(({ repeats, border, ends }) => [repeats, border, ends])).toEqual([
    [4, 10, 100],
    [3, 20, 100],
    [2, 30, 100],
  ]);
  expect(evenFillings(88, 20, 0)[0]).toEqual({ repeats: 4, border: 4, ends: 88, over: 0 });
  expect(evenFillings(87, 20, 0)[0]).toEqual({ repeats: 3, border: 13, ends: 86, over: -1 });
  expect(evenFillings(101, 20, 2)[0]).toMatchObject({ repeats: 4, border: 9, ends: 100, over: -1 });
  expect(evenFillings(20, 20, 0)).toEqual([{ repeats: 1, border: 4, ends: 28, over: 8 }]);
  expect(evenBorders(10, 20, 0, 1)).toBe(0);
});
