import { describe, expect, test } from 'vitest';
import { readPlanOptions } from '../../../src/plan/options/plan-options.js';
import { planWarps } from '../../../src/plan/piece/warp-plan.js';
import { kept } from '../cloths.js';

const cautionsOf = (cloth: ReturnType<typeof kept>, flags: Record<string, string> = {}): readonly string[] =>
  planWarps([cloth], readPlanOptions('', 'needs', flags))[0]!.pieces[0]!.cautions;

describe('cautions, each from its limit on', () => {
  // A waiting weft is caught from half an inch on and cut from an inch on (common practice, no source).
  test.each([
    [10, []],
    [11, ['Carries up to 0.55 in (14 mm): catch the waiting weft on the way.']],
    [20, ['Carries up to 1 in (2.5 cm): catch the waiting weft on the way.']],
    [21, ['Carries up to 1.05 in (2.7 cm): cut and tuck in rather than carry.']],
  ])('a weft that waits for %d of 20 picks to the inch', (picks, cautions) => {
    const weft = 'D'.repeat(picks) + 'L'.repeat(picks);
    const said = cautionsOf(kept('plain weave', { warp: 'DL', weft }));
    expect(said.filter((caution) => caution.startsWith('Carries'))).toEqual(cautions);
  });

  test.each([
    ['baby', 12, false],
    ['baby', 11.9, true],
    ['towel', 8, false],
    ['towel', 7.9, true],
    ['general', 6, false],
    ['general', 5.9, true],
    ['hanging', 4, false],
    ['hanging', 3.9, true],
  ])('for %s, floats of three at %d threads to the inch: said %s', (purpose, sett, isSaid) => {
    // A quarter, three eighths, a half, three quarters of an inch (common practice, no source).
    const said = cautionsOf(kept('1/3 twill', { warp: 'D', weft: 'L' }), { for: purpose, sett: `${sett}/${sett}` });
    expect(said.some((caution) => caution.startsWith('Longest float'))).toBe(isSaid);
  });

  test('a repeat drawn square is told of from one pick on by which it is not', () => {
    const square = kept('2/2 twill', { warp: 'DDLDL', times: 4 });
    const shape = (sett: string) => cautionsOf(square, { sett }).filter((caution) => caution.includes('comes out'));
    expect(shape('20/20')).toEqual([]);
    expect(shape('20/19')).toEqual([expect.stringContaining('square with 19 picks; it has 20: it comes out longer')]);
    expect(shape('20/21')).toEqual([expect.stringContaining('square with 21 picks; it has 20: it comes out shorter')]);
    expect(shape('40/41')).toEqual([]);
  });

  test('turns that lengthen a float are told of, others not', () => {
    const turned = (mirror: string, name = '2/2 twill') =>
      cautionsOf(kept(name, { warp: 'DDLL' }), { mirror }).filter((caution) => caution.startsWith('The turns'));
    // Doubled, 1-2-3-4-4-3-2-1 brings ends of one shaft side by side: under 3 and 4 the weft floats over four ends.
    expect(turned('doubled')).toEqual(['The turns lengthen the longest float from 2 to 4 threads, 0.2 in (5.1 mm).']);
    expect(turned('single')).toEqual(['The turns lengthen the longest float from 2 to 3 threads, 0.15 in (3.8 mm).']);
    expect(turned('no')).toEqual([]);
    expect(turned('single', 'plain weave')).toEqual([]);
  });

  test('turns of a cloth with a thread that never interlaces lengthen nothing', () => {
    const cloth = kept('2/2 twill', { warp: 'DDLL' });
    const tieUp = cloth.draft.tieUp.map((shafts) => [...new Set([1, ...shafts])]);
    const said = cautionsOf({ ...cloth, draft: { ...cloth.draft, tieUp } }, { mirror: 'doubled' });
    expect(said.filter((caution) => caution.startsWith('The turns'))).toEqual([]);
    expect(said.join()).not.toMatch(/null|NaN/);
  });
});
