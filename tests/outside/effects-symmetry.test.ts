// Classic colour-and-weave effects: cells and groups computed once by two separate programs; the recipes are those of
// the handbooks (J. T. Taylor 1909 and T. F. Bell, Jacquard Weaving and Designing, read; W. Watson, R. Beaumont, H.
// Nisbet and E. A. Posselt from memory). How many relative positions differ, and the near-symmetry of hound's tooth:
// likewise.
import { describe, expect, test } from 'vitest';
import { colourAt, colourFace, type Face } from '../../src/cloth/face.js';
import { floatsOf } from '../../src/cloth/floats.js';
import { analyse } from '../../src/score/symmetry/analysis.js';
import { clothKey, type Sameness } from '../../src/score/symmetry/canonical-cloth.js';
import { ISOMETRIES } from '../../src/score/symmetry/isometry.js';
import { bestAgreements, nearlyOf } from '../../src/score/symmetry/near-symmetry.js';
import { symmetryOf } from '../../src/score/symmetry/symmetry.js';
import { colourOf, rowsOf, weaveOf } from './blocks.js';
import data from './data/effects-symmetry.json' with { type: 'json' };

const lcm = (a: number, b: number): number => {
  let multiple = a;
  while (multiple % b !== 0) multiple += a;
  return multiple;
};

/** `2D1L` as palette indices. */
const orderOf = (runs: string): number[] =>
  Array.from(runs.matchAll(/(\d+)([A-Z])/g), ([, count, letter]) =>
    new Array<number>(Number(count)).fill(colourOf(letter!)),
  ).flat();

const rotated = (order: readonly number[], by: number): number[] => [...order.slice(by), ...order.slice(0, by)];

function laid(weave: string, warp: readonly number[], weft: readonly number[]): Face {
  const cloth = weaveOf(data.weaves.find((known) => known.weave === weave)!.block);
  const whole = (order: readonly number[], threads: number): number[] =>
    Array.from({ length: lcm(order.length, threads) }, (_, at) => order[at % order.length]!);
  return colourFace(cloth, whole(warp, cloth.ends), whole(weft, cloth.picks));
}

describe('effects', () => {
  test.each(data.effects)('$name', (effect) => {
    const face = laid(effect.weave, orderOf(effect.warp), orderOf(effect.weft));
    const rows = rowsOf(effect.block);
    for (let j = 0; j < face.picks; j++) {
      for (let i = 0; i < face.ends; i++) {
        expect(colourAt(face, j, i)).toBe(colourOf(rows[j % rows.length]![i % rows[0]!.length]!));
      }
    }
    const { rows: down, columns: across, lattice } = analyse(face);
    expect([down.length, across.length]).toEqual([rows.length, rows[0]!.length]);
    expect(lattice.width * lattice.height).toBe(effect.cells);
    const { planeGroup, colourGroup } = symmetryOf(face, true);
    expect([planeGroup, colourGroup]).toEqual([effect.square, effect.colourGroup]);
    expect(symmetryOf(face, false).planeGroup).toBe(effect.rectangular);

    const cloth = weaveOf(data.weaves.find(({ weave }) => weave === effect.weave)!.block);
    const floats = floatsOf(cloth, { ends: 8, picks: 8, per: 'cm' });
    expect(Math.max(floats.warpFace!, floats.warpBack!)).toBe(effect.warpFloat);
    expect(Math.max(floats.weftFace!, floats.weftBack!)).toBe(effect.weftFloat);
  });
});

describe('hound’s tooth has no symmetry but its shift exchange', () => {
  const face = laid('twill 2/2', orderOf('4D4L'), orderOf('4D4L'));
  const symmetry = symmetryOf(face, true);

  test('exactly', () => {
    expect(symmetry).toEqual({
      symmetry: 0.25,
      operations: [],
      shiftExchange: true,
      planeGroup: 'p1',
      colourGroup: 'p1/p1',
    });
  });

  test('nearly: half-turn and falling diagonal 0.875, all others 0.75', () => {
    expect(nearlyOf(face, true, symmetry)).toEqual({ op: 'half-turn', agreement: 0.875 });
    const agreements = bestAgreements(analyse(face), Object.values(ISOMETRIES));
    expect(Object.fromEntries(Object.keys(ISOMETRIES).map((op, at) => [op, agreements[at]]))).toEqual({
      'half-turn': 0.875,
      'mirror-left-right': 0.75,
      'mirror-up-down': 0.75,
      'quarter-turn': 0.75,
      'quarter-turn-back': 0.75,
      diagonal: 0.875,
      antidiagonal: 0.75,
    });
  });
});

describe('how many relative positions of one order both ways differ', () => {
  test.each(data.positions)('$weave, $order', ({ weave, order, shifts, mirrors, turns }) => {
    const word = orderOf(order);
    const count = (same: readonly Sameness[]): number => {
      const keys = new Set<string>();
      word.forEach((_, a) => {
        word.forEach((__, b) => {
          keys.add(clothKey(laid(weave, rotated(word, a), rotated(word, b)), same, 2).join(' '));
        });
      });
      return keys.size;
    };
    expect(count([])).toBe(shifts);
    expect(count(['mirror', 'half-turn'])).toBe(mirrors);
    expect(count(['mirror', 'half-turn', 'quarter-turn'])).toBe(turns);
  });
});

describe('pictures of all orders up to sliding', () => {
  const words = (n: number): number[][] =>
    Array.from({ length: 2 ** n }, (_, bits) => Array.from({ length: n }, (__, at) => (bits >> at) & 1));
  const count = (weave: string, ends: number, picks: number, same: readonly Sameness[]): number =>
    new Set(
      words(ends).flatMap((warp) => words(picks).map((weft) => clothKey(laid(weave, warp, weft), same, 2).join(' '))),
    ).size;

  test.each([
    ['plain', 1, 1, 3],
    ['plain', 1, 2, 5],
    ['plain', 2, 2, 7],
    ['plain', 2, 3, 11],
    ['plain', 2, 4, 19],
    ['plain', 2, 6, 49],
    ['plain', 3, 3, 15],
    ['plain', 3, 4, 23],
    ['plain', 3, 5, 31],
    ['plain', 4, 4, 49],
    ['twill 2/2', 2, 2, 8],
    ['twill 2/2', 2, 4, 20],
    ['twill 2/2', 3, 3, 15],
    ['twill 2/2', 4, 2, 20],
    ['twill 2/2', 4, 4, 68],
  ])('%s, %d ends and %d picks: %d', (weave, ends, picks, pictures) => {
    expect(count(weave, ends, picks, [])).toBe(pictures);
  });

  test('2/2 twill, orders of five, mirrors, half turn and exchange merged: 32 cloths, flat ones included', () => {
    expect(count('twill 2/2', 5, 5, ['mirror', 'half-turn', 'exchange'])).toBe(32);
  });
});
