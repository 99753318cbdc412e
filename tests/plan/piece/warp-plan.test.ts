import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readPlanOptions } from '../../../src/plan/options/plan-options.js';
import { checkLetters, planWarps } from '../../../src/plan/piece/warp-plan.js';
import { startingSides } from '../../../src/plan/warp/pick-list.js';
import { tally } from '../../../src/plan/yarn/yarn-amounts.js';
import { thicknesses } from '../../../src/render/strands.js';
import { yarnOrder } from '../../../src/sheets/yarn-order.js';
import { INCH, YARD } from '../../../src/words/measure.js';
import { runs } from '../../long.js';
import { anyCloth, kept, needsOf, towel } from '../cloths.js';

describe('a warp', () => {
  test('the sample warp of the worked examples: 402 ends, 202 dents, 100 heddles a shaft, 3 yd', () => {
    const [warp] = planWarps([towel()], needsOf({ floating: 'yes', pieces: '8', reed: '10' }));
    expect(warp!.ends).toHaveLength(400);
    expect(warp!.wound).toEqual([
      { letter: 'D', ends: 242 },
      { letter: 'L', ends: 160 },
    ]);
    expect(warp!.heddles).toEqual([100, 100, 100, 100]);
    expect(warp!.dents).toBe(202);
    expect(warp!.widthInReed / INCH).toBeCloseTo(20.2, 9);
    expect(warp!.length.wind / YARD).toBe(3);
    expect(warp!.yarn[0]!.warp / YARD).toBeCloseTo(726, 6);
    expect(warp!.yarn[1]!.warp / YARD).toBeCloseTo(480, 6);
  });

  test('sides that catch every turn make floating selvedges needless; else they are planned', () => {
    expect(planWarps([kept('2/2 twill', { warp: 'D', weft: 'L' })], needsOf())[0]!.floating.ends).toBe(0);
    expect(planWarps([kept('2/2 twill', { warp: 'DDLDL' })], needsOf())[0]!.floating.ends).toBe(2);
    expect(planWarps([towel()], needsOf({ floating: 'yes' }))[0]!.floating.ends).toBe(2);
  });

  test('on the loom: nothing to wind or to knot, yarn for the weft alone; the weft as of a new warp', () => {
    const there = { ...towel(), onTheLoom: true as const };
    const [on, fresh] = [there, towel()].map((cloth) => planWarps([cloth], needsOf({ floating: 'no' }))[0]!);
    expect(on).toMatchObject({ onTheLoom: true, wound: [], winding: { ways: [], chains: [], ties: [] } });
    expect(on!.length.wind).toBe(0);
    expect(fresh!.length.total - on!.length.total).toBeCloseTo(27 * INCH, 6);
    expect(on!.length.lines.map(({ what }) => what)).not.toContain('wind');
    const weft = (of: typeof on) => of!.yarn.map(({ letter, weft }) => ({ letter, weft }));
    expect(weft(on)).toEqual(weft(fresh));
    expect(on!.yarn.map(({ warp }) => warp)).toEqual([0, 0]);
    expect(on!.pieces[0]!.list).toEqual(fresh!.pieces[0]!.list);
  });

  test('on the loom: apart from the same warp wound anew; heddles and width are there, treadles are not', () => {
    const there = { ...towel(), onTheLoom: true as const };
    expect(planWarps([there, { ...towel(), code: 'new' }], needsOf())).toHaveLength(2);
    const small = needsOf({ loom: 'countermarch, 4 shafts, 3 treadles, 10 heddles, 4 in' });
    expect(planWarps([there], small)[0]!.faults).toEqual(['needs 4 treadles, the loom has 3']);
    expect(planWarps([towel()], small)[0]!.faults).toHaveLength(6);
    for (const flag of [{ border: '8 D' }, { mirror: 'single' }]) {
      expect(() => planWarps([there], needsOf(flag))).toThrow('for a warp that is on the loom');
    }
    expect(planWarps([there], needsOf({ 'mirror weft': 'single' }))).toHaveLength(1);
  });

  test('on the loom: floating selvedges are not wound; where turns miss the edge, a note asks for them', () => {
    const there = { ...kept('2/2 twill', { warp: 'DDLDL' }), onTheLoom: true as const };
    const [warp] = planWarps([there], needsOf());
    expect([warp!.floating.ends, warp!.cautions]).toEqual([
      0,
      ['Some turns miss the edge: if the warp has no floating selvedges, hang one at each side.'],
    ]);
  });

  test('is planned for up to 200 cloths', () => {
    const many = (count: number) => Array.from({ length: count }, (_, k) => ({ ...towel(), code: `t${k}` }));
    expect(planWarps(many(200), needsOf())[0]!.pieces).toHaveLength(200);
    expect(() => planWarps(many(201), needsOf())).toThrow(
      'found 201 cloths to plan; expected 200 at most: keep fewer in a list',
    );
  });

  // Reeds that suppliers stock (common practice, no source): two ends in a dent where one of them does it.
  test.each([
    ['inch', [5, 6, 8, 10, 12, 14, 15]],
    ['cm', [2, 2.5, 3, 3.5, 4, 5, 6]],
  ] as const)('two ends in each dent of a usual reed, dents in the %s', (per, reeds) => {
    for (const reed of reeds) {
      const [warp] = planWarps([towel()], needsOf({ sett: `${2 * reed} per ${per}` }));
      expect(warp!.denting).toMatchObject({ reed, dents: [2] });
    }
  });

  const flags = fc.record({
    width: fc.constantFrom('6 in', '10 in', '20 in', '50 cm'),
    border: fc.constantFrom(undefined, '6 D', '9 L', 'even D'),
    mirror: fc.constantFrom('no', 'single', 'doubled'),
    'mirror weft': fc.constantFrom('no', 'single', 'doubled'),
    floating: fc.constantFrom('auto', 'yes', 'no'),
    pieces: fc.constantFrom('1', '3'),
  });

  test('sums: ends by yarn are the threading, heddles the ends, yarn the parts of the plan', () => {
    fc.assert(
      fc.property(anyCloth, flags, (made, given) => {
        const { border, ...rest } = given;
        const options = needsOf({ ...rest, ...(border !== undefined && { border }) });
        const [warp] = planWarps([kept(made.name, made)], options);
        const counts = tally(
          warp!.ends.map((end) => end.yarn),
          warp!.ends.length,
          2,
        );
        for (const { letter, ends } of warp!.wound) {
          const own = counts['DL'.indexOf(letter)]!;
          expect(ends).toBe(own + (letter === warp!.floating.letter ? warp!.floating.ends : 0));
        }
        expect(warp!.heddles.reduce((a, b) => a + b, 0)).toBe(warp!.ends.length);
        expect(warp!.ends.length).toBe(warp!.repeats * warp!.repeat + warp!.balance + 2 * warp!.border);
        expect(warp!.fillings.map(({ ends }) => ends)).toContain(warp!.ends.length);
        if (given.mirror !== 'no' || warp!.balance > 0) expect(warp!.ends).toEqual(warp!.ends.toReversed());
        expect(warp!.winding.chains.reduce((sum, chain) => sum + chain.ends, 0)).toBe(warp!.ends.length);
        const piece = warp!.pieces[0]!;
        expect(piece.shuttles.reduce((sum, shuttle) => sum + shuttle.picks, 0)).toBe(piece.picks);
        const { draft } = piece;
        expect(draft.endUnits.reduce((a, b) => a + b, 0)).toBe(draft.threading.length);
        expect(draft.pickUnits.reduce((a, b) => a + b, 0)).toBe(draft.treadling.length);
        const whole = {
          ...draft,
          threading: warp!.ends.map(({ shafts }) => shafts),
          warp: warp!.ends.map(({ yarn }) => yarn),
        };
        expect(piece.starts).toEqual(startingSides(whole, warp!.ends.length));
        for (const amount of warp!.yarn) {
          expect(amount.total).toBeCloseTo(amount.warp + amount.weft, 6);
          expect(amount.withReserve).toBeCloseTo(amount.total * 1.1, 6);
        }
        const [ordered] = yarnOrder([warp!, warp!], options);
        expect(ordered!.length).toBeCloseTo(2 * warp!.yarn[0]!.withReserve, 6);
      }),
      { numRuns: runs(60) },
    );
  });

  test('one shuttle is carried past no pick', () => {
    const [warp] = planWarps([kept('plain weave', { warp: 'DDLDL', weft: 'L' })], needsOf());
    expect(warp!.pieces[0]!.carry).toEqual({ picks: 0, mm: 0 });
    // Two and two: each shuttle waits while the other is thrown twice; 20 picks to the inch.
    const [two] = planWarps([kept('plain weave', { warp: 'DDLDL', weft: 'DDLL' })], needsOf());
    expect(two!.pieces[0]!.carry.picks).toBe(2);
    expect(two!.pieces[0]!.carry.mm).toBeCloseTo((2 * INCH) / 20, 9);
  });

  test('balance: one end for a point threading, more only when asked', () => {
    const point = { ...kept('2/2 twill', { warp: 'D', weft: 'L' }) };
    const threading = [1, 2, 3, 4, 3, 2].map((shaft) => [shaft]);
    const ones = new Array<number>(6).fill(1);
    const draft = { ...point.draft, threading, warp: ones.map(() => 0), endUnits: ones };
    expect(planWarps([{ ...point, draft }], needsOf({ width: '10 in' }))[0]).toMatchObject({ balance: 1, repeats: 33 });
    const overshot = kept('overshot', { warp: 'D', weft: 'L' });
    expect(planWarps([overshot], needsOf())[0]!.balance).toBe(0);
    expect(planWarps([overshot], needsOf({ balance: 'yes' }))[0]!.balance).toBe(21);
  });

  test('cloths of one threading and warp share a warp; others have their own', () => {
    const cloths = [
      towel(),
      kept('2/2 twill', { warp: 'DDLDL', weft: 'L', times: 4 }),
      kept('2/2 twill', { warp: 'DL' }),
    ];
    const warps = planWarps(cloths, needsOf());
    expect(warps.map((warp) => warp.pieces.map((piece) => piece.number))).toEqual([[1, 2], [3]]);
  });

  test('cautions: carries, floats for the purpose, yarns that will not show, dents in step, what the loom lacks', () => {
    const [long] = planWarps([kept('2/2 twill', { warp: 'DDLDL', times: 16 })], needsOf());
    expect(long!.pieces[0]!.cautions).toEqual(['Carries up to 1.6 in (4.1 cm): cut and tuck in rather than carry.']);
    const belt = kept("monk's belt", { warp: 'D', weft: 'DL', profile: 'A4 A4 B4 A4 B4' });
    const [floats] = planWarps([belt], needsOf({ for: 'towel' }));
    expect(floats!.pieces[0]!.cautions[0]).toBe(
      'Longest float 0.8 in (2 cm): longer than the 0.375 in (9.5 mm) usual for a towel, 7 threads here.',
    );
    expect(planWarps([belt], needsOf({ for: 'hanging', sett: '24/24' }))[0]!.pieces[0]!.cautions).toEqual([]);
    const [beaten] = planWarps([towel()], needsOf({ sett: '20/18' }));
    expect(beaten!.pieces[0]!.cautions).toEqual([
      'At 18 picks a repeat of 20 ends is square with 18 picks; it has 20: it comes out longer than drawn.',
    ]);
    const step = planWarps([kept('2/2 twill', { warp: 'DDLDL' })], needsOf({ reed: '12' }))[0]!;
    expect(step.cautions[0]).toContain('The dents (1-2-2) fall in step with the colours every 5 ends');
    const near = towel();
    const draft = {
      ...near.draft,
      yarns: near.draft.yarns.map((yarn) => ({ ...yarn, hex: yarn.letter === 'D' ? '#c0392b' : '#2e8b57' })),
    };
    expect(planWarps([{ ...near, draft }], needsOf())[0]!.cautions[0]).toBe(
      'D and L differ by only 6.9 L*: they will not show on each other.',
    );
    expect(planWarps([towel()], needsOf({ loom: '2 treadles, 4 shafts' }))[0]!.cautions[0]).toBe(
      'Not on this loom: needs 4 treadles, the loom has 2, and two feet will not do it.',
    );
  });
});

test('a metric plan has round metric lengths; a sett in the other measure has its own', () => {
  const metric = kept('2/2 twill', { warp: 'DDLDL', times: 4, sett: { ends: 8, picks: 8, per: 'cm' } });
  const options = readPlanOptions('', 'needs', { 'yarn size': '8/2 cotton' }, 'cm');
  const [warp] = planWarps([metric], options);
  expect([warp!.wanted, options.piece, warp!.per]).toEqual([400, 120, 'cm']);
  const said = warp!.length.lines.map(({ how }) => how);
  expect(said[0]).toBe('1 × 12 cm + 5 cm + 5 cm');
  expect(said[3]).toBe('+ 70 cm loom waste + 45 cm test weaving and re-tying');
  expect(readPlanOptions('', 'needs', { sett: '20' }, 'cm').width).toBe(20 * INCH);
  expect(readPlanOptions('', 'needs', { sett: '8/8 per cm' }).width).toBe(500);
  expect(readPlanOptions('', 'needs', { width: '18 in' }, 'cm').width).toBeCloseTo(18 * INCH);
});

describe('a pattern weft', () => {
  const overshot = () => kept('overshot', { warp: 'D', weft: 'DL' });
  const amounts = (size: string) =>
    planWarps([overshot()], needsOf({ 'yarn size': size }))[0]!.yarn.map(({ letter, use, tex }) => [letter, use, tex]);

  test('is weighed by its own size, apart from the ground of its yarn', () => {
    const cotton = (1e6 * 0.45359237) / (4 * 840 * 0.9144);
    const found = amounts('D 8/2 cotton, L 8/2 cotton, pattern 4/2 cotton');
    expect(found.map(([letter, use]) => [letter, use])).toEqual([
      ['D', undefined],
      ['D', 'pattern weft'],
      ['L', undefined],
      ['L', 'pattern weft'],
    ]);
    expect(found[0]![2]).toBeCloseTo(cotton, 6);
    expect(found[1]![2]).toBeCloseTo(2 * cotton, 6);
  });

  test('is drawn by its own size: the root of its weight', () => {
    const [warp] = planWarps([overshot()], needsOf({ 'yarn size': 'D 8/2 cotton, L 8/2 cotton, pattern 2/2 cotton' }));
    const { draft } = warp!.pieces[0]!;
    const { ends, picks } = thicknesses(draft);
    draft.pickKinds.forEach((kind, j) => {
      expect(picks[j]! / ends[0]!).toBeCloseTo(kind === 'pattern' ? 2 : 1, 6);
    });
  });

  test('without a size of its own is weighed as thick as it is drawn, and a note says so', () => {
    const [warp] = planWarps([overshot()], needsOf());
    const [plain, pattern] = warp!.yarn;
    expect(pattern!.tex! / plain!.tex!).toBeCloseTo(4, 6);
    expect(warp!.cautions.join(' ')).toContain('The pattern weft is taken to be 2 times as thick as the warp');
    expect(planWarps([towel()], needsOf())[0]!.cautions).toEqual([]);
  });

  test('a size for it is refused where no cloth has one', () => {
    const options = needsOf({ 'yarn size': 'D 8/2 cotton, pattern 4/2 cotton' });
    expect(() => checkLetters([overshot()], options)).not.toThrow();
    expect(() => checkLetters([towel()], options)).toThrow(
      'found “pattern”; expected yarns that are in the cloths: D L',
    );
  });
});

describe('reeds and needs that a person gives', () => {
  test('sizes for a yarn that is in no cloth, and borders wider than the warp', () => {
    expect(() => checkLetters([towel()], needsOf({ 'yarn size': 'D 8/2 cotton, Q 16/2 linen' }))).toThrow(
      'yarn size: found “Q”; expected yarns that are in the cloths: D L',
    );
    expect(() => checkLetters([towel()], needsOf({ 'in hand': 'Q 400 g' }))).toThrow(
      'in hand: found “Q”; expected yarns that are in the cloths: D L',
    );
    expect(() => checkLetters([towel()], needsOf({ 'put-up': 'Q 400 g' }))).toThrow('put-up: found “Q”');
    expect(() => checkLetters([towel()], needsOf())).not.toThrow();
    expect(() => needsOf({ border: '500 D' })).toThrow('--border: found “500”; expected 1 to 200 ends of a border');
    expect(() => planWarps([towel()], needsOf({ border: '200 D', width: '10 in' }))).toThrow(
      'border: found two of 200 ends; expected fewer ends than the 200 of the warp',
    );
  });
});
