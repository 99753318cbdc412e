import { describe, expect, test } from 'vitest';
import { isBeyond, weaveWithin } from '../../../src/search/evaluate/weave-limits.js';
import { explore } from '../../../src/search/explore.js';
import type { Question } from '../../../src/search/question/question.js';
import { readQuestion } from '../../../src/search/question/read-question.js';
import { findStructure, weaveOf } from '../../../src/structure/catalogue/catalogue.js';
import type { Loom } from '../../../src/structure/loom/loom-fit.js';

const ask = (loom: string) =>
  readQuestion({ text: `structure: [turned twill, 2/2 twill]\nlengths: 2\nloom: ${loom}\n`, flags: {} }, () => {
    throw new Error('no draft');
  });

test('a search sets aside what the loom cannot weave, and counts it', async () => {
  const free = await explore(ask('{ kind: rising }'));
  const four = await explore(ask('{ shafts: 4, treadles: 6 }'));
  expect(free.found.some(({ structure }) => structure === 'turned twill')).toBe(true);
  expect(four.found.every(({ structure }) => structure === '2/2 twill')).toBe(true);
  expect(four.counts.setAside.limits).toBeGreaterThan(0);
  expect(four.counts.examined).toBe(free.counts.examined);
  const oneShuttle = await explore(ask('{ shuttles: 1 }'));
  expect(oneShuttle.found.every(({ ease }) => ease.shuttles === 1)).toBe(true);
});

describe('a limit itself is allowed, one more is not', () => {
  const { limits, sett } = ask('rising');
  const ease = { warpChanges: 6, weftChanges: 4, shuttles: 3 };

  test('of a cloth: its repeat, its changes of colour, its shuttles', () => {
    const isAllowed = (own: Partial<Question['limits']>, loom?: Loom): boolean =>
      !isBeyond({ limits: { ...limits, ...own }, ...(loom && { loom }) }, 40, ease);
    expect(isAllowed({})).toBe(true);
    expect([isAllowed({ repeat: 40 }), isAllowed({ repeat: 39 })]).toEqual([true, false]);
    expect([isAllowed({ warpChanges: 6 }), isAllowed({ warpChanges: 5 })]).toEqual([true, false]);
    expect([isAllowed({ weftChanges: 4 }), isAllowed({ weftChanges: 3 })]).toEqual([true, false]);
    expect([isAllowed({ shuttles: 3 }), isAllowed({ shuttles: 2 })]).toEqual([true, false]);
    const loom = (shuttles: number): Loom => ({ kind: 'rising', shuttles });
    expect([isAllowed({}, loom(3)), isAllowed({}, loom(2))]).toEqual([true, false]);
    expect([isAllowed({ shuttles: 2 }, loom(3)), isAllowed({ shuttles: 3 }, loom(2))]).toEqual([false, false]);
  });

  test('of a weave: its floats, its treadles, its shafts', () => {
    const twill = weaveOf(findStructure('3/1 twill'), ['A']);
    const fault = (own: Partial<Question['limits']>, loom?: Loom) => {
      const woven = weaveWithin({ limits: { ...limits, ...own }, sett, ...(loom && { loom }) }, twill);
      return 'fault' in woven ? woven.fault : undefined;
    };
    expect([fault({ float: { threads: 3 } }), fault({ float: { threads: 2 } })]).toEqual([undefined, 'float']);
    expect([fault({ treadles: 4 }), fault({ treadles: 3 })]).toEqual([undefined, 'limits']);
    expect([fault({ shafts: 4 }), fault({ shafts: 3 })]).toEqual([undefined, 'limits']);
    const loom = (shafts: number): Loom => ({ kind: 'rising', shafts });
    expect([fault({}, loom(4)), fault({}, loom(3))]).toEqual([undefined, 'limits']);
  });
});
