import { describe, expect, test } from 'vitest';
import { parseShortlist, shortlistText } from '../../../src/formats/shortlist.js';
import { gampNeeds, gampOf } from '../../../src/plan/gamp/gamp-plan.js';
import { planWarps } from '../../../src/plan/piece/warp-plan.js';
import { codeOf } from '../../../src/score/symmetry/cloth-code.js';
import { kept, needsOf, towel } from '../cloths.js';

describe('a gamp of a shortlist', () => {
  const orders = ['DDLDL', 'DDDLL', 'DL', 'DDLL', 'LLDLD'];
  const five = orders.map((warp) => kept('2/2 twill', { warp }));

  test('separators are the fewest threads from four on with which every section starts in step', () => {
    const widthOf = (warp: string, needs: { separator?: number }) =>
      gampOf([kept('2/2 twill', { warp, by: 'thread' })], needsOf(), needs).warps[0]!.from - 1;
    expect(widthOf('DDL', {})).toBe(4);
    const eight = kept('turned twill', { warp: 'DDDLLL', by: 'unit', times: 4 });
    expect(gampOf([eight], needsOf(), {}).warps[0]!.from - 1).toBe(8);
    expect(() => gampOf([eight], needsOf(), { separator: 4 })).toThrow(
      'separator: found 4 threads, with which some sections never start in step with the weave; expected 8, or another multiple of 8',
    );
  });

  test('five orders, 324 ends in 16.2 in: whole repeats, all in step, S in the separators', () => {
    const options = needsOf({ width: '16.2 in' });
    const gamp = gampOf(five, options, { separator: 4 });
    expect(gamp.warps.map(({ from, threads }) => [from, threads])).toEqual(
      [5, 69, 133, 197, 261].map((from) => [from, 60]),
    );
    const [warp] = planWarps([gamp.cloth], gampNeeds(gamp, options));
    expect(warp!.ends).toHaveLength(324);
    expect(warp!.heddles).toEqual([81, 81, 81, 81]);
    expect(warp!.wound.find(({ letter }) => letter === 'S')!.ends).toBeGreaterThanOrEqual(24);
    expect(gamp.squares).toHaveLength(25);
    expect(gamp.choice.exact).toBe(true);
  });

  test('a square weaves what its two orders weave', () => {
    const gamp = gampOf(five, needsOf({ width: '16.2 in' }), { separator: 4 });
    const { draft } = gamp.cloth;
    for (const { warp, weft } of gamp.squares) {
      const [i, j] = [gamp.warps[warp - 1]!.from - 1, gamp.wefts[weft - 1]!.from - 1];
      expect([i % 4, j % 4]).toEqual([0, 0]);
      const letters = (word: readonly number[], from: number) =>
        word
          .slice(from, from + 60)
          .map((yarn) => 'DLS'[yarn])
          .join('');
      expect(letters(draft.warp, i)).toBe(orders[warp - 1]!.repeat(60).slice(0, 60));
      expect(letters(draft.weft, j)).toBe(orders[weft - 1]!.repeat(60).slice(0, 60));
    }
  });

  test('a square is a cloth with a code of its own: that of the shortlist, where its orders are of one cloth', () => {
    const options = needsOf({ width: '16.2 in' });
    const { squares } = gampOf(five, options, { separator: 4 });
    for (const { warp, weft, kept: square } of squares) {
      expect(codeOf(square.draft)).toBe(square.code);
      expect(square.recipe).toMatch(/^2\/2 twill, warp [DL 0-9]+, weft [DL 0-9]+$/);
      if (warp === weft) expect(square.code).toBe(five[warp - 1]!.code);
      expect(planWarps([square], options)[0]!.pieces[0]!.cloth.code).toBe(square.code);
    }
    const list = parseShortlist(shortlistText(squares.map((each) => each.kept)), 'squares.json');
    expect(list.map(({ code }) => code)).toEqual(squares.map((each) => each.kept.code));
  });

  test('of very many orders the first hundred each way are crossed, which is told, and the choice has its bound', () => {
    const many = Array.from({ length: 130 }, (_, at) => {
      const order = [...(at + 256).toString(2)].map((bit) => 'DL'[Number(bit)]!).join('');
      return kept('plain weave', { warp: order, weft: 'DL' });
    });
    const told: [number, number][] = [];
    const gamp = gampOf(many, needsOf({ width: '30 in' }), { warps: 3, wefts: 1 }, (done, of) => told.push([done, of]));
    expect(told.at(-1)).toEqual([100, 100]);
    expect([gamp.choice.cloths, gamp.choice.atMost, gamp.choice.exact]).toEqual([3, 3, true]);
  });

  test('fewer sections: those that weave the most different cloths', () => {
    const gamp = gampOf(five, needsOf(), { warps: 2, wefts: 2, separator: 4 });
    expect(gamp.squares).toHaveLength(4);
    expect(gamp.choice.cloths).toBe(4);
  });

  test('refuses mixed weaves, and a width too small', () => {
    expect(() => gampOf([towel(), kept('plain weave', { warp: 'DL' })], needsOf(), { separator: 4 })).toThrow(
      /found another weave, or other yarns, than in \w+; expected one weave for a gamp/,
    );
    expect(() => gampOf(five, needsOf({ width: '8 in' }), { separator: 4 })).toThrow(
      'fewer sections (--gamp) or more width',
    );
  });
});

test('a crossing that shows no pattern is no cloth of a gamp', () => {
  const both = ['D', 'DDDDLLLL'].map((warp) => kept('2/2 twill', { warp }));
  // D on D is one colour; stripes one way, stripes the other, and both on both are cloths.
  expect(gampOf(both, needsOf(), { separator: 4 }).choice.cloths).toBe(3);
});
