import { describe, expect, test } from 'vitest';
import { readPlanOptions } from '../../../src/plan/options/plan-options.js';
import { repeatsAcross } from '../../../src/plan/piece/repeats-across.js';
import { kept } from '../cloths.js';

const ACROSS = 25.4 / 20;
const { draft } = kept('2/2 twill', { warp: 'DDDL' });
const needs = readPlanOptions('', 'needs', {});
const filled = (ends: number, more: Partial<typeof needs> = {}, own = draft) =>
  repeatsAcross(own, { ...needs, balance: 'no', width: ends * ACROSS, ...more });
const bordered = (ends: number) => ({ border: { ends, letter: 'D' } });

describe('repeats across a width', () => {
  test('the width is rounded to whole ends, halves up, whatever the machine makes of a half', () => {
    for (const ends of [400.5, 37.5, 100.5, 1000.5]) expect(filled(ends).wanted).toBe(ends + 0.5);
    expect(filled(400.49).wanted).toBe(400);
  });

  test('10,000 ends are the most', () => {
    expect(filled(10_000).count).toBe(10_000);
    expect(() => filled(10_001)).toThrow('found room for 10001 ends in the width; expected 10000 at most');
  });

  test('two borders leave at least an end', () => {
    expect(filled(101, bordered(50)).border).toBe(50);
    expect(() => filled(100, bordered(50))).toThrow('border: found two of 50 ends; expected fewer ends than the 100');
    expect(filled(100).border).toBe(0);
    expect(filled(100, bordered(10))).toMatchObject({ border: 10, repeats: 20, count: 100 });
  });

  test('of the three nearest, the nearest for which the loom has room, with two ends beside each edge', () => {
    const loom = (ends: number) => ({ loom: { kind: 'rising', width: ends * ACROSS } }) as const;
    expect(filled(100).count).toBe(100);
    expect(filled(100, loom(104)).count).toBe(100);
    expect(filled(100, loom(103)).count).toBe(96);
    expect(filled(100, loom(99)).count).toBe(100);
    expect(filled(100, loom(1000 / 3)).count).toBe(100);
  });

  test('ends that balance are added from themselves up to a quarter of a repeat, or where they are asked for', () => {
    const balanced = (warp: string, balance: 'auto' | 'yes' | 'no', mirror = {}) =>
      filled(100, { balance, mirror }, kept('plain weave', { warp }).draft).balance;
    // Three D after the L, of a repeat of four; one D of four.
    expect(['auto', 'yes', 'no'].map((asked) => balanced('DDDL', asked as 'auto'))).toEqual([0, 3, 0]);
    expect(balanced('DLLL', 'auto')).toBe(1);
    expect(balanced('DLL', 'auto')).toBe(1);
    expect(balanced('DDDL', 'auto', { warp: 'single' })).toBe(3);
  });
});
