import { describe, expect, test } from 'vitest';
import { planWarps } from '../../../src/plan/piece/warp-plan.js';
import { figures } from '../../../src/sheets/warp-sheet/sheet-figures.js';
import { kept, needsOf, SETT } from '../cloths.js';

describe('reeds and needs that a person gives', () => {
  const denting = (reed: string, sett = SETT) =>
    planWarps([kept('2/2 twill', { warp: 'DDLDL', sett })], needsOf({ reed }))[0]!;
  const METRIC = { ends: 8, picks: 8, per: 'cm' } as const;

  test('50/10 is 50 dents in 10 cm, 12.7 to the inch, under any sett', () => {
    const warp = denting('50/10');
    expect(warp.denting.named).toBe('50 per 10 cm (12.7 per inch)');
    expect(warp.denting.reed).toBeCloseTo(12.7, 9);
    expect(warp.denting.dents).toEqual([1, 2, 1, 2, 1, 2, 2]);
    expect(warp.widthInReed).toBeCloseTo(warp.dents * 2, 9);
    expect(figures(warp, warp.pieces[0]!).find(([what]) => what === 'reed')![1]).toMatch(
      /^50 per 10 cm \(12\.7 per inch\), 1-2-1-2-1-2-2 in a dent, \d+ dents: /,
    );
    expect(denting('12/10').cautions).toContain('The reed sets 19.8 ends per inch in place of 20.');
    for (const same of ['50/10 cm', '50 / 10', '50 per 10 cm', '5 per cm']) {
      expect(denting(same).denting.dents, same).toEqual(warp.denting.dents);
    }
    const metric = denting('40/10', METRIC);
    expect(metric.denting).toMatchObject({ named: '40 per 10 cm', reed: 4, dents: [2] });
    expect(metric.cautions.filter((caution) => caution.includes('reed'))).toEqual([]);
  });

  test('a number alone is counted as the sett is; with its measure, as it says', () => {
    expect(denting('10').denting).toMatchObject({ named: '10 per inch', reed: 10, dents: [2] });
    expect(denting('10 per inch').denting).toMatchObject({ named: '10 per inch', dents: [2] });
    expect(denting('4', METRIC).denting).toMatchObject({ named: '4 per cm', reed: 4, dents: [2] });
    expect(denting('10 per inch', METRIC).denting).toMatchObject({ named: '10 per inch (3.94 per cm)', dents: [2] });
  });

  test.each(['60', '0.5', '500/10', '60 per inch', '20 per cm', '50/20', '10 to the inch', '1 per inch'])(
    'no reed: %s',
    (reed) => {
      expect(() => needsOf({ reed })).toThrow(
        `--reed: found “${reed}”; expected dents such as 10, 10 per inch or 50/10 (to 10 cm), from 2 to 40 per inch`,
      );
    },
  );

  test('a number that is a reed to the inch and none to the centimetre is refused with the sett', () => {
    expect(() => denting('30', METRIC)).toThrow('reed: found 30 dents per cm; expected 1 to 16');
    expect(() => denting('1')).toThrow('reed: found 1 dents per inch; expected 2 to 40');
  });

  test('setts beyond every usual reed are put through the nearest of them', () => {
    const reed = (ends: number) =>
      planWarps([kept('2/2 twill', { warp: 'D', sett: { ends, picks: 20, per: 'inch' } })], needsOf())[0]!.denting.reed;
    expect([reed(4), reed(90)]).toEqual([5, 15]);
  });
});
