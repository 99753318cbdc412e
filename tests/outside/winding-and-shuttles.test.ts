// Worked examples of planning; their sources are named in worked-plans.ts.
import { describe, expect, test } from 'vitest';
import { dentingOf, dentsOf, rankReeds } from '../../src/plan/warp/denting.js';
import { caughtEnds, pickList, restingSides, shuttlesOf, startingSides } from '../../src/plan/warp/pick-list.js';
import { windingOf } from '../../src/plan/warp/winding.js';
import { INCH } from '../../src/words/measure.js';
import { field } from '../plan/cloths.js';
import { planned, twill, word } from './worked-plans.js';

describe('winding', () => {
  test.each([
    [1, [2, 1, 1, 1], false],
    [2, [4, 2, 2, 2], true],
    [4, [8, 4, 4, 4], true],
    [8, [16, 8, 8, 8], true],
    [16, [32, 16, 16, 16], true],
  ])('DDLDL ×%i: runs %j, all even: %s', (times, runs, even) => {
    const warp = field(word('DDLDL', times), 400);
    const winding = windingOf(warp, 5 * times);
    expect(winding.even).toBe(even);
    expect(
      winding.parts.map(({ what, times: often, runs: own }) => [what, often, own.map(({ ends }) => ends)]),
    ).toEqual([['repeats', 80 / times, runs]]);
    const rounds = winding.chains.map((chain) => chain.rounds);
    expect(rounds).toEqual([120, 80]);
  });

  test('five ends together: 80 passes and no knots; in order, 319', () => {
    const { ways } = windingOf(field(word('DDLDL'), 400), 5);
    expect(ways.map(({ way, knots }) => [way, knots])).toEqual([
      ['a separate chain per colour', 0],
      ['several ends together', 0],
      ['in order, changing at the pegs', 319],
    ]);
    expect(ways[1]!.passes).toBe(80);
  });
});

describe('shuttles', () => {
  test('DDLDL in single picks, both from the left: D comes to rest right, L left; carries of 2 picks on both sides', () => {
    const draft = twill(word('DDLDL'), word('DDLDL'));
    expect(restingSides(draft, 5, ['left', 'left'])).toEqual(['right', 'left']);
    const list = pickList(draft, 40, ['left', 'left']);
    expect(Math.max(...list.map((thrown) => thrown.carry))).toBe(2);
    expect(new Set(list.filter((t) => t.carry > 0).map((t) => t.from)).size).toBe(2);
    const [piece] = planned('2/2 twill', { warp: 'DDLDL' }).pieces;
    expect(piece!.carry).toEqual({ picks: 2, mm: expect.closeTo(0.1 * INCH, 9) });
  });

  test.each([
    [2, 4, 0.2],
    [4, 8, 0.4],
    [8, 16, 0.8],
    [16, 32, 1.6],
  ])('DDLDL ×%i: both rest left, carries on the left only, longest %i picks = %f in', (times, longest, length) => {
    const draft = twill(word('DDLDL', times), word('DDLDL', times));
    expect(restingSides(draft, 5 * times, ['left', 'left'])).toEqual(['left', 'left']);
    const list = pickList(draft, 20 * times, ['left', 'left']);
    expect(Math.max(...list.map((thrown) => thrown.carry))).toBe(longest);
    expect(list.filter((t) => t.carry > 0).every((t) => t.from === 'left')).toBe(true);
    const [piece] = planned('2/2 twill', { warp: 'DDLDL', times }).pieces;
    expect(piece!.carry).toEqual({ picks: longest, mm: expect.closeTo(length * INCH, 9) });
  });

  test('caught edges of 2/2 twill, 400 ends: from the right always, from the left never', () => {
    const draft = twill([0], [0]);
    expect(caughtEnds(draft, 80, ['right'], 0, 3)).toEqual({
      left: { turns: 40, caught: 40 },
      right: { turns: 39, caught: 39 },
    });
    const left = caughtEnds(draft, 80, ['left'], 0, 3);
    expect(left.left.caught + left.right.caught).toBe(0);
    expect(startingSides(draft, 400)).toMatchObject({ sides: ['right'], allCaught: true });
  });

  test('DDLDL ×4 in the weft, both from the right: 160 of 160 and 158 of 158; one each: some', () => {
    const draft = twill(word('DDLDL', 4), word('DDLDL', 4));
    expect(caughtEnds(draft, 320, ['right', 'right'], 0, 19)).toEqual({
      left: { turns: 160, caught: 160 },
      right: { turns: 158, caught: 158 },
    });
    const left = caughtEnds(draft, 320, ['left', 'left'], 0, 19);
    expect(left.left.caught + left.right.caught).toBe(0);
    const mixed = caughtEnds(draft, 320, ['left', 'right'], 0, 19);
    expect(mixed.left.caught).toBeGreaterThan(0);
    expect(mixed.left.caught).toBeLessThan(mixed.left.turns);
    expect(shuttlesOf(draft).map((shuttle) => shuttle.name)).toEqual(['D', 'L']);
  });
});

describe('denting', () => {
  test.each([
    [20, 8, '2-3'],
    [20, 10, '2'],
    [20, 12, '1-2-2'],
    [20, 15, '1-1-2'],
    [24, 10, '2-2-3-2-3'],
    [28, 12, '2-2-3'],
    [16, 12, '1-1-2'],
  ])('%i ends in %i dents: %s', (sett, reed, dents) => {
    expect(dentsOf(sett, reed).join('-')).toBe(dents);
    // Ends in the group × dents per inch = ends per inch × dents in the group.
    const group = dentsOf(sett, reed);
    expect(group.reduce((a, b) => a + b, 0) * reed).toBe(sett * group.length);
  });

  test('a five-end order in step with 1-2-2 every 5 ends, with 1-1-2 every 20, with 24 in 10 every 60', () => {
    expect(dentingOf(20, { dents: 12 }, 'inch', 5)).toMatchObject({ meets: 5, inStep: true });
    expect(dentingOf(20, { dents: 8 }, 'inch', 5)).toMatchObject({ meets: 5, inStep: true });
    expect(dentingOf(20, { dents: 15 }, 'inch', 5)).toMatchObject({ meets: 20, inStep: false });
    expect(dentingOf(24, { dents: 10 }, 'inch', 5)).toMatchObject({ meets: 60, inStep: false });
    expect(rankReeds(20, [8, 10, 12, 15], 'inch', 5).map(({ reed }) => reed)).toEqual([10, 15, 8, 12]);
  });
});
