import { describe, expect, test } from 'vitest';
import { dealOut, narrower, needsFor, warpFor, weaverLetters } from '../../../src/plan/deal/deal.js';
import { readWeavers } from '../../../src/plan/deal/weavers.js';
import { gampOf } from '../../../src/plan/gamp/gamp-plan.js';
import { readPlanOptions } from '../../../src/plan/options/plan-options.js';
import { clothDistance, descriptorOf } from '../../../src/score/likeness/descriptor.js';
import { INCH } from '../../../src/words/measure.js';
import { kept, towel, twelve } from '../cloths.js';

const needsOf = (flags: Record<string, string> = {}) => readPlanOptions('', 'needs', { floating: 'no', ...flags });

describe('a weaver with too few heddles', () => {
  const cloth = (profile: string) => kept('summer and winter', { warp: 'D', weft: 'L', profile });
  const cloths = [cloth('A A B A B'), cloth('A A A A B')];
  const weavers = (width: string) =>
    readWeavers(`weavers:\n  - { name: G }\n  - { name: H, ${width}loom: heddles 120 120 120 70 }\n`, 'group.yaml');

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

describe('a group with looms of its own', () => {
  const cloths = [kept('2/2 twill', { warp: 'DDLDL' }), kept('2/2 twill', { warp: 'DDDDLLLL' })];
  const weavers = readWeavers('weavers:\n  - { name: A }\n  - { name: B, loom: table }\n', 'group.yaml');
  const lost = (flags: Record<string, string>, loom = weavers) =>
    loom.map((weaver) => {
      const { total, used } = warpFor(cloths[0]!, needsFor(weaver, needsOf(flags)), weaver.loom).length;
      return Math.round((total - used) / INCH) - 18;
    });

  // 27 in on a floor loom, 14 to 20 in on a table loom (common practice, no source); 18 in are for testing.
  test('a table loom wastes less warp, unless it is said how much', () => {
    expect(lost({})).toEqual([27, 17]);
    expect(lost({ waste: '27 in' })).toEqual([27, 27]);
    const floor = readWeavers('weavers:\n  - { name: C, loom: rising }\n', 'group.yaml');
    expect(lost({ loom: 'table' }, floor)).toEqual([27]);
  });
});

describe('weavers whose cloths are nearly alike', () => {
  const group = (names: string) =>
    readWeavers(`weavers:\n${[...names].map((name) => `  - { name: ${name} }\n`).join('')}`, 'group.yaml');

  test('are named, the likest first, as far apart as their shares say', () => {
    const { alike, shares } = dealOut(twelve(), group('ABCDEFGHIJKL'), needsOf());
    expect(alike.length).toBeGreaterThan(1);
    expect(alike.map(({ apart }) => apart)).toEqual(alike.map(({ apart }) => apart).sort((a, b) => a - b));
    expect(alike[0]!.apart).toBe(Math.min(...shares.map(({ apart }) => apart)));
    for (const { weavers, apart } of alike) {
      const [one, other] = weavers.map((name) => shares.find(({ weaver }) => weaver.name === name)!);
      expect(apart).toBeCloseTo(clothDistance(descriptorOf(one!.cloth.draft), descriptorOf(other!.cloth.draft)), 12);
      expect(apart).toBeLessThan(0.2);
    }
    const near = shares.filter(({ apart }) => apart < 0.2).map(({ weaver }) => weaver.name);
    expect(new Set(alike.flatMap(({ weavers }) => weavers))).toEqual(new Set(near));
  });

  test('are none where all are far apart', () => {
    const cloths = [kept('2/2 twill', { warp: 'DDDDLLLL' }), kept('plain weave', { warp: 'D', weft: 'L' })];
    expect(dealOut(cloths, group('AB'), needsOf()).alike).toEqual([]);
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

const cottonNeeds = (flags: Record<string, string> = {}) =>
  readPlanOptions('', 'needs', { 'yarn size': '8/2 cotton', ...flags });

describe('dealing', () => {
  const group = (count: number, extra = '') =>
    readWeavers(
      `weavers:\n${Array.from({ length: count }, (_, w) => `  - { name: W${w}${extra} }`).join('\n')}\n`,
      'group.yaml',
    );

  test('twelve weavers, four weft orders in three sizes: each a different cloth, its distance told, the same each time', () => {
    const deal = dealOut(twelve(), group(12), cottonNeeds({ width: '10 in' }));
    expect(new Set(deal.shares.map(({ cloth }) => cloth.code)).size).toBe(12);
    const portraits = deal.shares.map(({ cloth }) => descriptorOf(cloth.draft));
    deal.shares.forEach(({ apart }, s) => {
      const others = portraits.filter((_, other) => other !== s);
      expect(apart).toBeCloseTo(Math.min(...others.map((other) => clothDistance(portraits[s]!, other))), 12);
    });
    expect(dealOut(twelve(), group(12), cottonNeeds({ width: '10 in' }))).toEqual(deal);
  });

  test('two weavers get the two that are farthest apart of all, in whatever order the list is', () => {
    const cloths = twelve();
    const portraits = cloths.map(({ draft }) => descriptorOf(draft));
    const all = portraits.flatMap((one, a) => portraits.slice(a + 1).map((other) => clothDistance(one, other)));
    const deal = dealOut(cloths, group(2), cottonNeeds());
    expect(deal.least).toBeCloseTo(Math.max(...all), 12);
    expect(deal.atMost).toBe(deal.least);
    expect(deal.spares).toHaveLength(3);
    expect(dealOut(cloths.toReversed(), group(2), cottonNeeds())).toEqual(deal);
    const five = dealOut(cloths, group(5), cottonNeeds());
    expect(dealOut([...cloths.slice(7), ...cloths.slice(0, 7)], group(5), cottonNeeds())).toEqual(five);
  });

  test('no one is left without, though the only cloth that fits them would go to another first', () => {
    const cloths = [
      kept('2/2 twill', { warp: 'DDLDL' }),
      kept('2/2 twill', { warp: 'DDLDL', weft: 'D' }),
      kept('summer and winter', { warp: 'DDLDL', profile: 'A A B A B' }),
    ];
    const weavers = readWeavers('weavers:\n  - { name: A }\n  - { name: B, loom: 1 shuttle }\n', 'group.yaml');
    const deal = dealOut(cloths, weavers, cottonNeeds());
    expect(deal.shares[1]!.cloth.code).toBe(cloths[1]!.code);
    expect(deal.refused).toContainEqual({
      weaver: 'B',
      code: cloths[0]!.code,
      why: ['needs 2 shuttles, the weaver has 1'],
    });
  });

  test('seventy heddles on shaft 4: AABAB and AAAAB refused at 400 ends, AABAB offered at 340', () => {
    const [weaver] = readWeavers('weavers:\n  - { name: H, loom: heddles 120 120 120 70 }\n', 'group.yaml');
    const cloth = (profile: string) => kept('summer and winter', { warp: 'D', weft: 'L', profile });
    const [aabab, aaaab] = [cloth('A A B A B'), cloth('A A A A B')];
    expect(warpFor(aabab, cottonNeeds(), weaver!.loom).heddles).toEqual([100, 100, 120, 80]);
    expect(warpFor(aaaab, cottonNeeds(), weaver!.loom).heddles).toEqual([100, 100, 160, 40]);
    const offered = narrower(aabab, cottonNeeds({ floating: 'no' }), weaver!.loom)!;
    expect([offered.ends.length, offered.heddles]).toEqual([340, [85, 85, 102, 68]]);
    expect(() => dealOut([aabab, aaaab], [weaver!], cottonNeeds())).toThrow(
      /weaver H: found no cloth of 2 that fits the loom \(the first needs 80 heddles on shaft 4, the loom has 70\); \w+ would fit on 340 ends/,
    );
  });

  test('too few cloths, no weavers, a name twice', () => {
    expect(() => dealOut([towel()], group(2), cottonNeeds())).toThrow('found 1 cloths for 2 weavers');
    expect(() => dealOut([towel()], [], cottonNeeds())).toThrow('found no weavers');
    expect(() => readWeavers('weavers:\n  - { name: A }\n  - { name: A }\n', 'group.yaml')).toThrow(
      /^group.yaml:3:\d+: found A twice/,
    );
  });
});

test('weavers without names have letters: A to Z, then AA', () => {
  const letters = weaverLetters(54);
  expect([0, 25, 26, 27, 51, 52].map((at) => letters[at])).toEqual(['A', 'Z', 'AA', 'AB', 'AZ', 'BA']);
  expect(weaverLetters(0)).toEqual([]);
});

test('spare is only what some weaver can take', () => {
  const fits = kept('2/2 twill', { warp: 'DDLDL' });
  const wide = kept('turned twill', { warp: 'DDLDL' });
  const weavers = readWeavers('weavers: [{ name: A, loom: 4 shafts }]\n', 'group.yaml');
  const deal = dealOut([wide, fits, kept('2/2 twill', { warp: 'DL' })], weavers, needsOf());
  expect(deal.shares.map(({ cloth }) => cloth.code)).toEqual([fits.code]);
  expect(deal.spares.map(({ cloth }) => cloth.order?.warp)).toEqual(['DL']);
  expect(deal.refused).toEqual([{ weaver: 'A', code: wide.code, why: ['needs 8 shafts, the loom has 4'] }]);
});
