import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { valueGroups, valueWarnings } from '../../../src/colour/lightness.js';
import { type Crossings, chooseSections, clothsOf } from '../../../src/plan/gamp/gamp-sections.js';
import { gampColours, rightSizes } from '../../../src/plan/gamp/gamp-windows.js';
import { dentingOf, dentsFilled, dentsOf } from '../../../src/plan/warp/denting.js';
import { balanceOf, mirrored, nearestFillings } from '../../../src/plan/warp/fill-width.js';
import { changesIn, windInOrder, windingOf } from '../../../src/plan/warp/winding.js';
import { picksIn, tally } from '../../../src/plan/yarn/yarn-amounts.js';
import { parseYarnSize } from '../../../src/plan/yarn/yarn-size.js';
import { parseLength, parseShare, sayLength, sayLong, upTo } from '../../../src/words/measure.js';
import { field } from '../cloths.js';

const order = fc.array(fc.nat(2), { minLength: 1, maxLength: 12 });

describe('measures', () => {
  test('lengths and shares as they are written', () => {
    expect(parseLength('20 in')).toBe(508);
    expect(parseLength('2.5m')).toBe(2500);
    expect(parseLength('3 yd')).toBeCloseTo(2743.2, 9);
    expect(() => parseLength('20')).toThrow('found “20”; expected a length such as 20 in, 50 cm, 3 yd or 2.5 m');
    expect(parseShare('8 %')).toBe(0.08);
    expect(() => parseShare('95 %')).toThrow('expected per cent below 90');
    expect(sayLength(513.08, 'inch')).toBe('20.2 in (51.3 cm)');
    expect(sayLong(2743.2, 'cm')).toBe('2.74 m (3 yd)');
  });

  test('rounding up leaves a whole number of steps alone', () => {
    fc.assert(
      fc.property(fc.nat(10_000), fc.constantFrom(0.1, 0.25, 1, 228.6), (count, step) => {
        expect(upTo(count * step, step)).toBeCloseTo(count * step, 6);
        expect(upTo((count + 0.5) * step, step)).toBeCloseTo((count + 1) * step, 6);
      }),
    );
  });
});

test('no text breaks the reading of yarn sizes; it is a size or one sentence', () => {
  const label = fc.oneof(
    fc.string({ maxLength: 20 }),
    fc
      .tuple(
        fc.nat(99),
        fc.constantFrom('/', ' x ', '', ' '),
        fc.nat(9),
        fc.constantFrom('cotton', 'tex', 'silk', 'Nm', 'lea'),
      )
      .map(([a, sign, b, system]) => `${a}${sign}${b} ${system}`),
  );
  let read = 0;
  fc.assert(
    fc.property(label, (text) => {
      try {
        expect(parseYarnSize(text).tex).toBeGreaterThan(0);
        read++;
      } catch (error) {
        expect((error as Error).name).toBe('Problem');
      }
    }),
  );
  expect(read).toBeGreaterThan(5);
});

describe('winding', () => {
  test('the list in order adds up to the warp, and its runs to its changes', () => {
    fc.assert(
      fc.property(order, fc.integer({ min: 1, max: 200 }), (repeat, ends) => {
        const warp = field(repeat, ends);
        const list = windInOrder(warp, 10);
        expect(list.at(-1)!.running).toBe(ends);
        expect(list.length - 1).toBe(changesIn(warp));
        for (const line of list) expect(line.peg).toBe(line.running % 2 === 0 ? 1 : 2);
        expect(list.flatMap((run) => new Array<number>(run.ends).fill(run.yarn))).toEqual(warp);
      }),
    );
  });

  test('chains hold every end once, and every counting tie is whole repeats of that colour', () => {
    fc.assert(
      fc.property(order, fc.integer({ min: 1, max: 200 }), (repeat, ends) => {
        const warp = field(repeat, ends);
        const { chains, ways } = windingOf(warp, repeat.length);
        const counts = tally(warp, ends, 3);
        for (const chain of chains) {
          expect(chain.ends).toBe(counts[chain.yarn]);
          expect(chain.rounds * 2 + (chain.oneMore ? 1 : 0)).toBe(chain.ends);
          expect(chain.ties.at(-1)).toBe(chain.ends);
        }
        expect(chains.reduce((sum, chain) => sum + chain.ends, 0)).toBe(ends);
        expect(ways.map((way) => way.knots)).toEqual(ways.map((way) => way.knots).sort((a, b) => a - b));
      }),
    );
  });

  test('of a repeat too long for one counting tie every run is listed', () => {
    const order = [160, 80, 80, 80].flatMap((ends, at) => new Array<number>(ends).fill(at % 2));
    const { stretch, tieEvery } = windingOf([...order, ...order], 400);
    expect(stretch.map(({ ends, running }) => [ends, running])).toEqual([
      [160, 160],
      [80, 240],
      [80, 320],
      [80, 400],
    ]);
    expect(tieEvery).toBe(20);
  });
});

describe('denting', () => {
  test('dents hold just the sett, none more than one end apart', () => {
    fc.assert(
      fc.property(fc.integer({ min: 4, max: 60 }), fc.integer({ min: 4, max: 20 }), (sett, reed) => {
        const dents = dentsOf(sett, reed);
        expect((dents.reduce((a, b) => a + b, 0) * reed) / dents.length).toBeCloseTo(sett, 9);
        expect(Math.max(...dents) - Math.min(...dents)).toBeLessThanOrEqual(1);
        const denting = dentingOf(sett, { dents: reed }, 'inch', 5);
        expect(dentsFilled(sett * 10, denting, 2)).toBe(reed * 10 + 2);
      }),
    );
  });
});

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

describe('gamp', () => {
  test('right sizes are those of a plain search, nearest first below then above', () => {
    const size = fc.integer({ min: 1, max: 90 });
    fc.assert(
      fc.property(
        size,
        fc.integer({ min: 1, max: 12 }),
        fc.nat(9),
        fc.integer({ min: 2, max: 8 }),
        (wanted, n, gap, weave) => {
          const fits = (threads: number): boolean => threads % n === 0 && (threads + gap) % weave === 0;
          const all = Array.from({ length: 400 }, (_, k) => k + 1).filter(fits);
          const expected = fits(wanted)
            ? [wanted]
            : [all.filter((threads) => threads < wanted).at(-1), all.find((threads) => threads > wanted)];
          expect(rightSizes(wanted, n, gap, weave)).toEqual(expected.filter((threads) => threads !== undefined));
        },
      ),
    );
  });

  test('colours of a gamp: sections between separators', () => {
    const sections = [
      { order: [0, 1], threads: 4 },
      { order: [0], threads: 2 },
    ];
    expect(gampColours({ sections, separator: 2, yarn: 2 }).join('')).toBe('220101220022');
  });
});

describe('choosing sections', () => {
  const table = (rows: number, columns: number): fc.Arbitrary<Crossings> => {
    const cell = fc.option(fc.constantFrom(...'abcdefghij'), { nil: null });
    const row = fc.array(cell, { minLength: columns, maxLength: columns });
    return fc.array(row, { minLength: rows, maxLength: rows });
  };
  const pairs = [
    [0, 1],
    [0, 2],
    [0, 3],
    [1, 2],
    [1, 3],
    [2, 3],
  ];

  test('small cases are exact', () => {
    fc.assert(
      fc.property(table(4, 4), (crossings) => {
        const best = Math.max(...pairs.flatMap((w) => pairs.map((f) => clothsOf(crossings, w, f))));
        const choice = chooseSections(crossings, 2, 2);
        expect(choice).toMatchObject({ cloths: best, atMost: best, exact: true });
        expect(clothsOf(crossings, choice.warps, choice.wefts)).toBe(best);
      }),
    );
  });

  test('large cases say what they reach and what cannot be passed', () => {
    const rows = 40;
    const crossings: Crossings = Array.from({ length: rows }, (_, w) =>
      Array.from({ length: rows }, (_, f) => ((w * f) % 7 === 0 ? null : `cloth ${(w * 31 + f * 17) % 97}`)),
    );
    const choice = chooseSections(crossings, 5, 6);
    expect(choice.warps).toHaveLength(5);
    expect(choice.wefts).toHaveLength(6);
    expect(choice.cloths).toBe(clothsOf(crossings, choice.warps, choice.wefts));
    expect(choice.atMost).toBeLessThanOrEqual(30);
    expect(choice.cloths).toBeGreaterThan((1 - 1 / Math.E) * choice.atMost);
    expect(choice.cloths).toBeLessThanOrEqual(choice.atMost);
  });

  test('greedy never passes its own bound, nor does the best', () => {
    // Thirty weft orders with nothing to give put the case beyond what is tried one by one.
    fc.assert(
      fc.property(table(4, 4), (small) => {
        const wide = small.map((row) => [...row, ...new Array<null>(600).fill(null)]);
        const best = Math.max(...pairs.flatMap((w) => pairs.map((f) => clothsOf(small, w, f))));
        const choice = chooseSections(wide, 2, 2);
        expect(choice.cloths).toBeLessThanOrEqual(best);
        expect(choice.atMost).toBeGreaterThanOrEqual(best);
      }),
      { numRuns: 30 },
    );
  });
});

test('yarns part into a dark and a light group at the widest gap', () => {
  const yarn = (letter: string, hex: string) => ({ letter, name: letter, hex });
  const groups = valueGroups([yarn('A', '#ffffff'), yarn('B', '#000000'), yarn('C', '#eeeeee'), yarn('E', '#222222')]);
  expect(groups.dark.map((y) => y.letter)).toEqual(['B', 'E']);
  expect(groups.light.map((y) => y.letter)).toEqual(['C', 'A']);
  expect(groups.gap).toBeGreaterThan(70);
  const greys = [yarn('A', '#707070'), yarn('B', '#888888'), yarn('C', '#9c9c9c')];
  expect(valueWarnings(greys)).toContainEqual(
    expect.stringMatching(/^no step in lightness parts .*: the widest is 9\.\d L\*$/),
  );
  expect(valueWarnings([...greys.slice(0, 2), yarn('C', '#f4f4f4')]).join()).not.toContain('no step');
});

test('picks in a length: the last one whole, machine rounding aside', () => {
  expect(picksIn(56.666_666, 20)).toBe(1134);
  expect(picksIn(0.1 * 3, 10)).toBe(3);
});
