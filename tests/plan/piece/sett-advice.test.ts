import { describe, expect, test } from 'vitest';
import { readPlanOptions } from '../../../src/plan/options/plan-options.js';
import { settWords } from '../../../src/plan/piece/sett-advice.js';
import { planWarps } from '../../../src/plan/piece/warp-plan.js';
import { diametersPerInch } from '../../../src/plan/yarn/sett.js';
import { parseYarnSize } from '../../../src/plan/yarn/yarn-size.js';
import { figures } from '../../../src/sheets/warp-sheet/sheet-figures.js';
import { kept, needsOf } from '../cloths.js';

describe('the sett that a weave bears', () => {
  const advised = (made: Parameters<typeof kept>, flags: Record<string, string>) => {
    const [warp] = planWarps([kept(...made)], readPlanOptions('', 'needs', flags));
    const piece = warp!.pieces[0]!;
    return {
      said: piece.settAdvice && settWords(piece.settAdvice, piece.draft),
      cautions: piece.cautions,
      advice: piece.settAdvice,
    };
  };
  const twill: Parameters<typeof kept> = ['2/2 twill', { warp: 'DDLDL', times: 4 }];

  test('8/2 cotton on 2/2 twill and on plain weave, as the worked example has it (Ashenhurst)', () => {
    expect(advised(twill, { 'yarn size': '8/2 cotton' }).said).toBe(
      '53.3 threads side by side to the inch × 4 ends ÷ (4 + 2 intersections) = 35.6; 80 % of it 28.4 (Ashenhurst’s rule)',
    );
    expect(advised(twill, { 'yarn size': '8/2 cotton', hand: 'drape' }).said).toContain('70 % of it 24.9');
    const plain = advised(['plain weave', { warp: 'DL' }], { 'yarn size': '8/2 cotton' });
    expect(plain.said).toContain('= 26.7; 80 % of it 21.3');
    expect(plain.cautions).toEqual([]);
    // Pattern weft lies on a plain ground.
    const overshot = advised(['overshot', { warp: 'D', weft: 'L' }], { 'yarn size': '8/2 cotton' });
    expect(overshot.advice!.closest).toBeCloseTo(plain.advice!.closest, 9);
  });

  test('stands beside the sett on the sheet', () => {
    const [warp] = planWarps([kept(...twill)], needsOf());
    expect(Object.fromEntries(figures(warp!, warp!.pieces[0]!)).sett).toBe(
      '20 ends, 20 picks per inch; closest 35.6, advised 28.4',
    );
  });

  test('by wraps, in centimetres, of yarns of two sizes', () => {
    expect(advised(twill, { wraps: '30' }).advice).toMatchObject({ diameters: 30, closest: 20, advised: 16 });
    const metric = advised(twill, { wraps: '12', sett: '8/8 per cm', hand: 'drape' });
    expect(metric.said).toBe(
      '12.0 threads side by side to the cm × 4 ends ÷ (4 + 2 intersections) = 8.0; 70 % of it 5.6 (Ashenhurst’s rule)',
    );
    expect(metric.cautions).toEqual([]);
    const sizes = {
      D: diametersPerInch(parseYarnSize('8/2 cotton').tex, 'cotton'),
      L: diametersPerInch(parseYarnSize('16/2 linen').tex, 'linen'),
    };
    expect(advised(twill, { 'yarn size': 'D 8/2 cotton, L 16/2 linen' }).advice!.diameters).toBeCloseTo(
      5 / (3 / sizes.D + 2 / sizes.L),
      9,
    );
  });

  test('is told only where the yarn is known well enough', () => {
    for (const flags of [{}, { 'yarn size': 'D 8/2 cotton' }, { 'yarn size': 'Nm 28/2' }]) {
      expect(advised(twill, flags)).toMatchObject({ said: undefined, advice: undefined });
    }
    expect(advised(twill, { 'yarn size': 'Nm 28/2', fibre: 'worsted' }).said).toContain('= 50.0');
  });

  test('one calm sentence where ends are closer than the closest, or far more open', () => {
    expect(advised(twill, { wraps: '30', sett: '24' }).cautions[0]).toBe(
      'Set at 24, closer than the 20.0 at which the threads fill the inch: try nearer to 16.0.',
    );
    expect(advised(twill, { wraps: '30', sett: '20' }).cautions).toEqual([]);
    expect(advised(twill, { wraps: '30', sett: '9' }).cautions[0]).toBe(
      'Set at 9, far more open than the 16.0 advised: threads may slip; sample before the whole warp.',
    );
  });
});
