import { describe, expect, test } from 'vitest';
import { dealOut, needsFor, warpFor } from '../../src/plan/deal.js';
import { gampOf } from '../../src/plan/gamp-plan.js';
import { readNeeds } from '../../src/plan/needs.js';
import { readWeavers } from '../../src/plan/weavers.js';
import { kept } from './cloths.js';

const needsOf = (flags: Record<string, string> = {}) => readNeeds('', 'needs', { floating: 'no', ...flags });

describe('a weaver with too few heddles', () => {
  const cloth = (profile: string) => kept('summer and winter', { warp: 'D', weft: 'L', profile });
  const cloths = [cloth('A A B A B'), cloth('A A A A B')];
  const weavers = (width: string) =>
    readWeavers(`weavers:\n  - { name: G }\n  - { name: H, ${width}heddles: 120 120 120 70 }\n`, 'group.yaml');

  test('is told the width that would do, and with it gets a cloth', () => {
    const asked = () => dealOut(cloths, weavers(''), needsOf());
    expect(asked).toThrow(`${cloths[0]!.code} would fit on 340 ends: give H the width 17 in`);
    const group = weavers('width: 17 in, ');
    const { shares } = dealOut(cloths, group, needsOf());
    expect(shares.map(({ cloth: { code } }) => code)).toEqual([cloths[1]!.code, cloths[0]!.code]);
    const [whole, narrow] = shares.map(({ cloth: own, weaver }) =>
      warpFor(own, needsFor(weaver, needsOf()), weaver.loom),
    );
    expect(whole!.ends).toHaveLength(400);
    expect([narrow!.ends.length, narrow!.heddles]).toEqual([340, [85, 85, 102, 68]]);
  });

  test('in centimetres where the sett is so counted', () => {
    const metric = cloths.map((own) => ({
      ...own,
      draft: { ...own.draft, sett: { ends: 8, picks: 8, per: 'cm' } as const },
    }));
    expect(() => dealOut(metric, weavers(''), needsOf({ width: '50 cm' }))).toThrow(
      '340 ends: give H the width 42.5 cm',
    );
  });
});

describe('sections of a gamp of one size', () => {
  const shortlist = ['DDLDL', 'DDDDLLLL'].map((warp) => kept('2/2 twill', { warp }));

  test('a 4-and-4 order is refused at 60 ends, 56 and 64 are offered', () => {
    expect(() => gampOf(shortlist, needsOf(), { separator: 4, section: 60 })).toThrow(
      'section 2: found 60 threads for an order of 8; expected whole repeats that start in step with the weave: 56 or 64',
    );
  });

  test('what holds whole repeats of all orders is taken; what the width has no room for is not', () => {
    const gamp = gampOf(shortlist, needsOf(), { separator: 4, section: 80 });
    expect(gamp.warps.map(({ from, threads }) => [from, threads])).toEqual([
      [5, 80],
      [89, 80],
    ]);
    expect(() => gampOf(shortlist, needsOf({ width: '8 in' }), { separator: 4, section: 80 })).toThrow(
      'found room for 74 ends in each of 2 warp sections; expected room for 80',
    );
  });
});
