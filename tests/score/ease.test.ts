import { describe, expect, test } from 'vitest';
import { type Draft, EVEN_WIDTHS } from '../../src/draft/draft.js';
import { easeOf } from '../../src/score/ease.js';
import { easePart } from '../../src/score/parts/records/ease-part.js';
import type { Measured } from '../../src/score/parts/records/score-part.js';

const draft = (warp: string, weft: string, kinds?: Draft['pickKinds']): Draft => ({
  threading: [...warp].map((_, i) => [(i % 4) + 1]),
  tieUp: [[1, 2]],
  treadling: [...weft].map(() => [1]),
  pickKinds: kinds ?? [...weft].map(() => 'ground' as const),
  endUnits: [warp.length],
  pickUnits: [weft.length],
  widths: EVEN_WIDTHS,
  yarns: ['D', 'L'].map((letter) => ({ letter, name: letter, hex: letter === 'D' ? '#000000' : '#ffffff' })),
  warp: [...warp].map((l) => 'DL'.indexOf(l)),
  weft: [...weft].map((l) => 'DL'.indexOf(l)),
  sett: { ends: 20, picks: 20, per: 'inch' },
});
const stretched = (word: string, times: number): string => [...word].map((l) => l.repeat(times)).join('');

// DLDDL with two shuttles, both starting on the left: worked example of common practice, no source.
describe('what DLDDL costs at each size', () => {
  test.each([
    [1, 2, false],
    [2, 4, true],
    [4, 8, true],
    [8, 16, true],
    [16, 32, true],
  ])('stretched ×%d: longest carry %d picks, same side %s', (times, carry, sameSide) => {
    const word = stretched('DLDDL', times);
    const ease = easeOf(draft(word, word));
    expect(ease.longestCarry).toBe(carry);
    expect(ease.sameSide).toBe(sameSide);
    expect(ease.warpChanges).toBe(4);
    expect(ease.weftChanges).toBe(4);
    expect(ease.ends).toEqual({ D: 3 * times, L: 2 * times });
    expect(ease.shuttles).toBe(2);
  });
});

test('two one-colour warps make no knots, in order there is one at every change', () => {
  const winding = easeOf(draft('DLDDL', 'D')).winding;
  expect(winding).toEqual([
    { way: 'a separate chain per colour', knots: 0 },
    { way: 'several ends together', knots: 0 },
    { way: 'in order, changing at the pegs', knots: 4 },
  ]);
});

test('one colour and one shuttle cost nothing', () => {
  const ease = easeOf(draft('DDDD', 'LLLL'));
  expect(ease).toMatchObject({ warpChanges: 0, weftChanges: 0, shuttles: 1, longestCarry: 0, sameSide: true });
  expect(easePart.of({ ease, ends: 4, picks: 4 } as unknown as Measured)).toBe(1);
});

test('tabby and pattern weft of one yarn are two shuttles', () => {
  const ease = easeOf(draft('L', 'LL', ['pattern', 'tabby']));
  expect(ease.shuttles).toBe(2);
  expect(ease.longestCarry).toBe(1);
});
