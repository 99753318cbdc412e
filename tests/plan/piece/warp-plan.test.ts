import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { liftAt } from '../../../src/draft/draft.js';
import { parseShortlist, shortlistText } from '../../../src/formats/shortlist.js';
import { dealOut, narrower, warpFor } from '../../../src/plan/deal/deal.js';
import { readWeavers } from '../../../src/plan/deal/weavers.js';
import { gampNeeds, gampOf } from '../../../src/plan/gamp/gamp-plan.js';
import { readPlanOptions } from '../../../src/plan/options/plan-options.js';
import { folded, pickSheet, threadingLines } from '../../../src/plan/piece/lists.js';
import { settWords } from '../../../src/plan/piece/sett-advice.js';
import { checkLetters, planWarps } from '../../../src/plan/piece/warp-plan.js';
import { doneCloths } from '../../../src/plan/results/done.js';
import { learntBy, learntWords } from '../../../src/plan/results/matching-results.js';
import { readResults, resultsForm } from '../../../src/plan/results/results-form.js';
import { caughtEnds, type Side, shuttlesOf, startingSides } from '../../../src/plan/warp/pick-list.js';
import { tiedUp } from '../../../src/plan/warp/warp-loom.js';
import { adviseSett, diametersPerInch } from '../../../src/plan/yarn/sett.js';
import { tally } from '../../../src/plan/yarn/yarn-amounts.js';
import { parseYarnSize } from '../../../src/plan/yarn/yarn-size.js';
import { clothDistance, descriptorOf } from '../../../src/score/likeness/descriptor.js';
import { PRESETS } from '../../../src/score/rank/presets.js';
import { scoreDraft } from '../../../src/score/score.js';
import { figures } from '../../../src/sheets/warp-sheet/sheet-figures.js';
import { yarnOrder } from '../../../src/sheets/yarn-order.js';
import { INCH, YARD } from '../../../src/words/measure.js';
import { columns, longest } from '../../plain/floats.js';
import { kept, SETT, twelve } from '../cloths.js';

const needsOf = (flags: Record<string, string> = {}) => readPlanOptions('', 'needs', { yarns: '8/2 cotton', ...flags });
const towel = () => kept('2/2 twill', { warp: 'DDLDL', times: 4 });

const cloth = fc.record({
  name: fc.constantFrom('plain weave', '2/2 twill', 'summer and winter', 'huck', 'crackle', 'overshot'),
  warp: fc.constantFrom('D', 'DL', 'DDLDL', 'DDDLL', 'DDLLL'),
  weft: fc.constantFrom('L', 'DL', 'DDLDL'),
  times: fc.constantFrom(1, 2, 4),
});

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
      fc.property(cloth, flags, (made, given) => {
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
        const [ordered] = yarnOrder([warp!, warp!]);
        expect(ordered!.length).toBeCloseTo(2 * warp!.yarn[0]!.withReserve, 6);
      }),
      { numRuns: 60 },
    );
  });

  test('shuttles start where most edges are caught: no other way of starting them catches more', () => {
    fc.assert(
      fc.property(cloth, fc.integer({ min: 20, max: 60 }), fc.nat(9), (made, ends, border) => {
        const { draft } = kept(made.name, made);
        const n = draft.threading.length;
        const [first, last] = [(n * 9 - border) % n, (n * 9 - border + ends - 1) % n];
        const count = shuttlesOf(draft).length;
        const caught = Array.from({ length: 2 ** count }, (_, way) => {
          const sides = Array.from({ length: count }, (__, s) => ((way >> s) & 1 ? 'right' : 'left') as Side);
          const edges = caughtEnds(draft, 4 * draft.weft.length, sides, first, last);
          return { sides, caught: edges, count: edges.left.caught + edges.right.caught };
        });
        const most = caught.reduce((best, way) => (way.count > best.count ? way : best));
        expect(startingSides(draft, ends, border)).toMatchObject({ sides: most.sides, caught: most.caught });
      }),
      { numRuns: 30 },
    );
  });

  test('lists say every end and every pick once', () => {
    fc.assert(
      fc.property(cloth, (made) => {
        const [warp] = planWarps([kept(made.name, made)], needsOf());
        const piece = warp!.pieces[0]!;
        const ends = threadingLines(warp!).flatMap((line) =>
          Array.from({ length: line.times }, () => line.ends).flat(),
        );
        expect(ends).toEqual(
          piece.draft.threading.map((shafts, i) => shafts.join('+') + piece.draft.yarns[piece.draft.warp[i]!]!.letter),
        );
        const { lines, tabby } = pickSheet(piece);
        const picks = lines.reduce(
          (sum, line) => sum + (tabby === undefined ? line.to - line.from + 1 : (line.to - line.from) / 2 + 1),
          0,
        );
        expect(picks * (tabby === undefined ? 1 : 2)).toBe(piece.draft.weft.length);
      }),
      { numRuns: 60 },
    );
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
    expect(planWarps([towel()], needsOf({ treadles: '2', shafts: '4' }))[0]!.cautions[0]).toBe(
      'Not on this loom: needs 4 treadles, the loom has 2, and two feet will not do it.',
    );
  });
});

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

  test.each(['60', '0.5', '500/10', '60 per inch', '20 per cm', '50/20', '10 dents', '1 per inch'])(
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

  test.each(['width', 'piece', 'loom width'])('%s of nothing', (key) => {
    expect(() => needsOf({ [key]: '0 in' })).toThrow(
      `--${key.replace(' ', '-')}: found “0 in”; expected a length of more than nothing, such as 20 in`,
    );
  });

  test('sizes for a yarn that is in no cloth, and borders wider than the warp', () => {
    expect(() => checkLetters([towel()], needsOf({ yarns: 'D 8/2 cotton, Q 16/2 linen' }))).toThrow(
      'yarns: found “Q”; expected yarns that are in the cloths: D L',
    );
    expect(() => checkLetters([towel()], needsOf())).not.toThrow();
    expect(() => planWarps([towel()], needsOf({ border: '200 D', width: '10 in' }))).toThrow(
      'border: found two of 200 ends; expected fewer ends than the 200 of the warp',
    );
  });
});

describe('borders and mirrors', () => {
  const planned = (flags: Record<string, string>, cloth = towel()) => planWarps([cloth], needsOf(flags))[0]!;

  test('single turns and even borders: 38 ends, 10 repeats and borders of 9 are 399 of 400, D 231 and L 150 inside', () => {
    const warp = planned({ mirror: 'single', border: 'even D', floating: 'no' });
    expect(warp).toMatchObject({ wanted: 400, repeat: 38, balance: 1, repeats: 10, border: 9 });
    expect(warp.ends).toHaveLength(399);
    const field = warp.ends.slice(9, -9);
    expect(
      tally(
        field.map(({ yarn }) => yarn),
        381,
        2,
      ),
    ).toEqual([231, 150]);
    expect(warp.ends).toEqual(warp.ends.toReversed());
    expect(warp.wound).toEqual([
      { letter: 'D', ends: 249 },
      { letter: 'L', ends: 150 },
    ]);
    const said = Object.fromEntries(figures(warp, warp.pieces[0]!));
    expect(said.ends).toBe('399 = 10 × 38 + 1 to balance + borders 2 × 9');
    expect(said['to fill']).toBe(
      '400 ends: 10 repeats, borders 9: 399 (−1); 9 repeats, borders 28: 399 (−1); 8 repeats, borders 47: 399 (−1)',
    );
  });

  test('borders as they are given: 10 repeats of 38 are 405, 9 are 367', () => {
    const warp = planned({ mirror: 'single', border: '12 D' });
    expect(warp.fillings.slice(0, 2)).toEqual([
      { repeats: 10, ends: 405, over: 5 },
      { repeats: 9, ends: 367, over: -33 },
    ]);
  });

  test('doubled turns: 9 repeats of 40 and even borders of 20 are 400', () => {
    const warp = planned({ mirror: 'doubled', border: 'even L' });
    expect(warp).toMatchObject({ repeat: 40, balance: 0, repeats: 9, border: 20 });
    expect(warp.ends).toHaveLength(400);
  });

  test('one repeat is woven where no more fit; what is no border or no turn is refused', () => {
    expect(planned({ border: 'even D', width: '1.2 in' })).toMatchObject({ repeats: 1, border: 4 });
    expect(() => planned({ border: 'evenly D' })).toThrow(
      '--border: found “evenly D”; expected ends and a letter, such as 8 D',
    );
    expect(() => planned({ mirror: 'twice' })).toThrow('--mirror: found “twice”; expected no, single or doubled');
  });

  test('a mirrored treadling takes as many picks, and its cloth is the same from above and below', () => {
    const { pieces } = planned({ mirror: 'single', 'mirror weft': 'single' });
    const { draft, cloth } = pieces[0]!;
    expect(draft.weft).toHaveLength(38);
    expect(cloth.recipe).toBe('2/2 twill, DDLDL by thread ×4, weft DDLDL; warp and weft mirrored, single turns');
    const { operations } = scoreDraft(draft, {
      weights: PRESETS.clear,
      floatLimit: { threads: 7 },
      classics: [],
    }).scores;
    expect(operations.map(({ op }) => op)).toEqual(expect.arrayContaining(['mirror-left-right', 'mirror-up-down']));
  });

  test('tabby goes on in turn where the pattern picks turn back', () => {
    const { draft } = planned({ 'mirror weft': 'single' }, kept('overshot', { warp: 'D', weft: 'L' })).pieces[0]!;
    const tabby = draft.treadling.filter((_, j) => draft.pickKinds[j] === 'tabby').map(String);
    expect(tabby.every((treadle, k) => treadle !== tabby[(k + 1) % tabby.length])).toBe(true);
    const pattern = draft.treadling.filter((_, j) => draft.pickKinds[j] === 'pattern').map(String);
    expect(pattern.slice(1)).toEqual(pattern.slice(1).toReversed());
  });

  test('floats are measured again, and a turn that lengthens them is told', () => {
    const { floats, cautions } = planned({ mirror: 'doubled', 'mirror weft': 'doubled' }).pieces[0]!;
    expect(floats.longest).toBe(4);
    expect(cautions).toContain('The turns lengthen the longest float from 2 to 4 threads, 0.2 in (5.1 mm).');
    expect(planned({}).pieces[0]!.cautions.join()).not.toContain('turns lengthen');
    fc.assert(
      fc.property(
        cloth,
        fc.constantFrom('single', 'doubled'),
        fc.constantFrom('no', 'single', 'doubled'),
        (made, warp, weft) => {
          const piece = planned({ mirror: warp, 'mirror weft': weft }, kept(made.name, made)).pieces[0]!;
          const { draft } = piece;
          const up = draft.treadling.map((_, j) =>
            draft.threading.map((on) => (on.some((shaft) => liftAt(draft, j).includes(shaft)) ? 1 : 0)),
          );
          const { warpFace, warpBack, weftFace, weftBack } = piece.floats;
          const ends = columns(up);
          expect([warpFace, warpBack]).toEqual([longest(ends, 1), longest(ends, 0)]);
          expect([weftFace, weftBack]).toEqual([longest(up, 0), longest(up, 1)]);
        },
      ),
      { numRuns: 25 },
    );
  });
});

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
    expect(advised(twill, { yarns: '8/2 cotton' }).said).toBe(
      '53.3 threads lie in an inch, × 4 ends ÷ (4 + 2 intersections) = 35.6; 80 % of it 28.4 (Ashenhurst’s rule)',
    );
    expect(advised(twill, { yarns: '8/2 cotton', hand: 'drape' }).said).toContain('70 % of it 24.9');
    const plain = advised(['plain weave', { warp: 'DL' }], { yarns: '8/2 cotton' });
    expect(plain.said).toContain('= 26.7; 80 % of it 21.3');
    expect(plain.cautions).toEqual([]);
    // Pattern weft lies on a plain ground.
    const overshot = advised(['overshot', { warp: 'D', weft: 'L' }], { yarns: '8/2 cotton' });
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
      '12.0 threads lie in a cm, × 4 ends ÷ (4 + 2 intersections) = 8.0; 70 % of it 5.6 (Ashenhurst’s rule)',
    );
    expect(metric.cautions).toEqual([]);
    const sizes = {
      D: diametersPerInch(parseYarnSize('8/2 cotton').tex, 'cotton'),
      L: diametersPerInch(parseYarnSize('16/2 linen').tex, 'linen'),
    };
    expect(advised(twill, { yarns: 'D 8/2 cotton, L 16/2 linen' }).advice!.diameters).toBeCloseTo(
      5 / (3 / sizes.D + 2 / sizes.L),
      9,
    );
  });

  test('is told only where the yarn is known well enough', () => {
    for (const flags of [{}, { yarns: 'D 8/2 cotton' }, { yarns: 'Nm 28/2' }]) {
      expect(advised(twill, flags)).toMatchObject({ said: undefined, advice: undefined });
    }
    expect(advised(twill, { yarns: 'Nm 28/2', fibre: 'worsted' }).said).toContain('= 50.0');
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

  test('intersections, cell by cell', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('plain weave', '2/2 twill', '1/3 twill', 'huck', 'crackle', 'summer and winter', "M's and O's"),
        (name) => {
          const { draft } = kept(name, { warp: 'DDLDL', weft: 'DL' });
          const cells = (j: number): boolean[] =>
            draft.threading.map((on) => on.some((s) => liftAt(draft, j).includes(s)));
          const ground = draft.pickKinds.flatMap((kind, j) => (kind === 'pattern' ? [] : [cells(j)]));
          const changes = ground.map((row) => row.filter((up, i) => up !== row[(i + 1) % row.length]).length);
          const plain = changes.reduce((a, b) => a + b, 0) / changes.length / draft.threading.length;
          const { ends, intersections } = adviseSett(draft, 1, 'general');
          expect(intersections / ends).toBeCloseTo(plain, 12);
        },
      ),
      { numRuns: 7 },
    );
  });
});

describe('looms', () => {
  test('a tie-up for each kind: what sinks is the rest of what rises', () => {
    const { draft } = towel();
    const rising = tiedUp(draft, { kind: 'rising' });
    expect(rising.treadles[0]).toEqual({ rise: [1, 2], sink: [] });
    expect(tiedUp(draft, { kind: 'sinking' }).treadles[0]).toEqual({ rise: [], sink: [3, 4] });
    expect(tiedUp(draft, { kind: 'countermarch' }).treadles[0]).toEqual({ rise: [1, 2], sink: [3, 4] });
    expect(tiedUp(draft, { kind: 'table' }).manner).toBe('lift plan');
  });
});

describe('needs', () => {
  test('a file and flags; flags win; every fault has its place', () => {
    const text = 'width: 50 cm\nloom: countermarch\nheddles: 120 120 120 70\nyarns: { D: 8/2 cotton, L: 16/2 linen }\n';
    const options = readPlanOptions(text, 'loom.yaml', { width: '20 in' });
    expect(options.width).toBe(508);
    expect(options.loom).toMatchObject({ kind: 'countermarch', heddles: [120, 120, 120, 70] });
    expect(options.yarns.L!.tex).toBeCloseTo(206.689, 3);
    expect(() => readPlanOptions('widht: 20 in\n', 'loom.yaml')).toThrow(
      /^loom.yaml:1:1: found the unknown key “widht”; .*did you mean “width”\?/,
    );
    expect(() => readPlanOptions('width: 20\n', 'loom.yaml')).toThrow(
      'loom.yaml:1:8: found “20”; expected a length such as',
    );
    expect(() => readPlanOptions('', 'needs', { shrinkage: '12' })).toThrow(
      '--shrinkage: found “12”; expected per cent',
    );
    expect(() => readPlanOptions('yarns: { D: 60/2 silk }\n', 'loom.yaml')).toThrow(
      /loom.yaml:1:13: “60\/2 silk” can mean/,
    );
  });
});

describe('a shortlist', () => {
  test('reads back as it was written', () => {
    const cloths = twelve().map((cloth, at) => ({ ...cloth, stars: at % 6, note: `“${at}” <b>` }));
    expect(parseShortlist(shortlistText(cloths), 'kept.json')).toEqual(cloths);
  });

  test.each([
    [(text: string) => text.slice(0, -9), 'kept.json: found text that is not whole JSON'],
    [(text: string) => text.replace('shedlight-shortlist', 'another'), 'kept.json: found another kind of file'],
    [(text: string) => text.replace('"version": 1', '"version": 2'), 'kept.json: found version 2 of a shortlist'],
    [(text: string) => text.replace('"stars":0', '"stars":9'), 'kept.json: candidates.0.stars: found'],
    [(text: string) => text.replace('"hex":"#1f2a44"', '"hex":"#1f2a45"'), 'kept.json: candidates.0.code: found'],
    [(text: string) => text.replace(/("draft":.*?"warp":")D/, '$1X'), 'kept.json: candidates.0.draft.warp: found “X”'],
    [
      (text: string) => text.replace(/("draft":.*?"weft":")D/, '$1'),
      'kept.json: candidates.0.draft.weft: found 19 threads',
    ],
  ])('damage %# is told in one sentence', (damage, said) => {
    expect(() => parseShortlist(damage(shortlistText([towel()])), 'kept.json')).toThrow(said);
  });

  test('a cloth twice is refused', () => {
    expect(() => parseShortlist(shortlistText([towel(), towel()]), 'kept.json')).toThrow(/found \w+ twice/);
  });
});

describe('dealing', () => {
  const group = (count: number, extra = '') =>
    readWeavers(
      `weavers:\n${Array.from({ length: count }, (_, w) => `  - { name: W${w}${extra} }`).join('\n')}\n`,
      'group.yaml',
    );

  test('twelve weavers, four weft orders in three sizes: each a different cloth, its distance told, the same each time', () => {
    const deal = dealOut(twelve(), group(12), needsOf({ width: '10 in' }));
    expect(new Set(deal.shares.map(({ cloth }) => cloth.code)).size).toBe(12);
    const portraits = deal.shares.map(({ cloth }) => descriptorOf(cloth.draft));
    deal.shares.forEach(({ apart }, s) => {
      const others = portraits.filter((_, other) => other !== s);
      expect(apart).toBeCloseTo(Math.min(...others.map((other) => clothDistance(portraits[s]!, other))), 12);
    });
    expect(dealOut(twelve(), group(12), needsOf({ width: '10 in' }))).toEqual(deal);
  });

  test('farthest first: two weavers get the two that a plain search finds farthest from the first', () => {
    const cloths = twelve();
    const portraits = cloths.map(({ draft }) => descriptorOf(draft));
    const farthest = portraits.map((descriptor) => clothDistance(portraits[0]!, descriptor));
    const deal = dealOut(cloths, group(2), needsOf());
    expect(deal.shares.map(({ cloth }) => cloth.code).sort()).toEqual(
      [cloths[0]!.code, cloths[farthest.indexOf(Math.max(...farthest))]!.code].sort(),
    );
    expect(deal.spares).toHaveLength(3);
  });

  test('no one is left without, though the only cloth that fits them would go to another first', () => {
    const cloths = [
      kept('2/2 twill', { warp: 'DDLDL' }),
      kept('2/2 twill', { warp: 'DDLDL', weft: 'D' }),
      kept('summer and winter', { warp: 'DDLDL', profile: 'A A B A B' }),
    ];
    const weavers = readWeavers('weavers:\n  - { name: A }\n  - { name: B, shuttles: 1 }\n', 'group.yaml');
    const deal = dealOut(cloths, weavers, needsOf());
    expect(deal.shares[1]!.cloth.code).toBe(cloths[1]!.code);
    expect(deal.refused).toContainEqual({
      weaver: 'B',
      code: cloths[0]!.code,
      why: ['needs 2 shuttles, the weaver has 1'],
    });
  });

  test('seventy heddles on shaft 4: AABAB and AAAAB refused at 400 ends, AABAB offered at 340', () => {
    const [weaver] = readWeavers('weavers:\n  - { name: H, heddles: 120 120 120 70 }\n', 'group.yaml');
    const cloth = (profile: string) => kept('summer and winter', { warp: 'D', weft: 'L', profile });
    const [aabab, aaaab] = [cloth('A A B A B'), cloth('A A A A B')];
    expect(warpFor(aabab, needsOf(), weaver!.loom).heddles).toEqual([100, 100, 120, 80]);
    expect(warpFor(aaaab, needsOf(), weaver!.loom).heddles).toEqual([100, 100, 160, 40]);
    const offered = narrower(aabab, needsOf({ floating: 'no' }), weaver!.loom)!;
    expect([offered.ends.length, offered.heddles]).toEqual([340, [85, 85, 102, 68]]);
    expect(() => dealOut([aabab, aaaab], [weaver!], needsOf())).toThrow(
      /weaver H: found no cloth of 2 that fits the loom \(the first needs 80 heddles on shaft 4, the loom has 70\); \w+ would fit on 340 ends/,
    );
  });

  test('too few cloths, no weavers, a name twice', () => {
    expect(() => dealOut([towel()], group(2), needsOf())).toThrow('found 1 cloths for 2 weavers');
    expect(() => dealOut([towel()], [], needsOf())).toThrow('found no weavers');
    expect(() => readWeavers('weavers:\n  - { name: A }\n  - { name: A }\n', 'group.yaml')).toThrow(
      /^group.yaml:3:\d+: found A twice/,
    );
  });

  test('unlikeness: 0 with itself, the same both ways', () => {
    const portraits = twelve().map(({ draft }) => descriptorOf(draft));
    for (const a of portraits) {
      expect(clothDistance(a, a)).toBeCloseTo(0, 9);
      for (const b of portraits) expect(clothDistance(a, b)).toBeCloseTo(clothDistance(b, a), 12);
    }
  });
});

describe('what was learnt', () => {
  const twill = towel();
  const other = kept('2/2 twill', { warp: 'DDDLL' });
  const summer = kept('summer and winter', { warp: 'DLDDL', by: 'unit' });
  const overshot = kept('overshot', { warp: 'D', weft: 'L', sett: { ends: 20, picks: 40, per: 'inch' } });
  const list = [twill, other, summer, overshot];
  /** What lines below the code of a cloth are read as. */
  const results = (lines: string, code = twill.code) => readResults(`results:\n  - code: ${code}\n${lines}`, 'r.yaml');
  const learnt = (read: ReturnType<typeof results>, from = list) => learntBy(read, from, 'r.yaml', 'kept.json');

  test('warp used 61.6 in, off the loom 56.7, finished 51: take-up 8.0 %, shrinkage 10.0 %, and the beat', () => {
    const found = learnt(
      results('    warp used: 61.6 in\n    off the loom: 56.7 in\n    finished: 51 in\n    picks: 18\n'),
    );
    const { takeUp, shrinkage, picks } = found(twill);
    expect(takeUp!.value * 100).toBeCloseTo(8.0, 1);
    expect(shrinkage!.value * 100).toBeCloseTo(10.1, 1);
    expect(picks!.value * INCH).toBeCloseTo(18, 9);
    const [warp] = planWarps([twill], needsOf(), found);
    expect(warp!.pieces[0]!.draft.sett.picks).toBe(18);
    expect(warp!.length.offLoom / warp!.length.used).toBeCloseTo(56.7 / 61.6, 9);
    expect(warp!.length.finished / warp!.length.offLoom).toBeCloseTo(51 / 56.7, 9);
    expect(figures(warp!, warp!.pieces[0]!)).toContainEqual([
      'results',
      '18 picks per inch, take-up 8 %, shrinkage 10.1 % (found in this cloth)',
    ]);
  });

  test('twill 18 and summer and winter 26: each plans its own structure, and an overshot at 40 stays at 40', () => {
    const read = [...results('    picks: 18\n'), ...results('    picks: 26\n    finished: 9 in\n', summer.code)];
    const found = learnt(read);
    const pieces = planWarps(list, needsOf(), found).flatMap((warp) => warp.pieces);
    const picksOf = (cloth: typeof twill) => pieces.find((piece) => piece.cloth.code === cloth.code)!.draft.sett.picks;
    expect(list.map(picksOf)).toEqual([18, 18, 26, 40]);
    expect(list.map((cloth) => learntWords(found(cloth), cloth, 'inch'))).toEqual([
      ['18 picks per inch (found in this cloth)'],
      [`18 picks per inch (found in 2/2 twill: ${twill.code})`],
      ['26 picks per inch (found in this cloth)'],
      [],
    ]);
  });

  test('a result of the cloth itself comes before one of its structure, figure by figure', () => {
    const read = [
      ...results('    picks: 18\n    off the loom: 10 in\n    finished: 9 in\n'),
      ...results('    picks: 24\n', other.code),
    ];
    expect(learntWords(learnt(read)(other), other, 'inch')).toEqual([
      '24 picks per inch (found in this cloth)',
      `shrinkage 10 % (found in 2/2 twill: ${twill.code})`,
    ]);
    const warp = planWarps([other], needsOf(), learnt(read))[0]!;
    expect(Object.fromEntries(figures(warp, warp.pieces[0]!)).results).toBe(
      `24 picks per inch (found in this cloth); shrinkage 10 % (found in 2/2 twill: ${twill.code})`,
    );
  });

  test('cloths that share a warp still share it, which is long enough for the one that takes most', () => {
    const weft = kept('2/2 twill', { warp: 'DDLDL', weft: 'L', times: 4 });
    const found = learnt(results('    picks: 18\n    off the loom: 10 in\n    finished: 7 in\n'), [twill]);
    const own = (cloth: { code: string; structure: string }) =>
      cloth.code === twill.code ? found(cloth) : { picks: { value: 1, codes: [weft.code] } };
    const [warp, ...more] = planWarps([twill, weft], needsOf(), own);
    expect(more).toEqual([]);
    expect(warp!.pieces.map(({ draft }) => draft.sett.picks)).toEqual([18, 25.4]);
    expect(warp!.length.finished / warp!.length.offLoom).toBeCloseTo(0.7, 9);
    expect(warp!.pieces[0]!.woven / INCH).toBeCloseTo(5 / 0.7, 9);
    expect(warp!.pieces[1]!.woven / INCH).toBeCloseTo(5 / 0.9, 9);
  });

  test('picks are read with their measure, and planned in that of the sett', () => {
    const metric = kept('2/2 twill', { warp: 'DDLDL', sett: { ends: 8, picks: 8, per: 'cm' } });
    const picksOf = (line: string, code = twill.code) =>
      planWarps([metric], needsOf(), learnt(results(line, code), [...list, metric]))[0]!.pieces[0]!.draft.sett.picks;
    expect(picksOf('    picks: 18\n')).toBe(7.09);
    expect(picksOf('    picks: 7\n    per: cm\n')).toBe(7);
    expect(picksOf('    picks: 7 per cm\n    per: inch\n')).toBe(7);
    expect(picksOf('    picks: 7\n', metric.code)).toBe(7);
  });

  test('results of another list count for the structure that the form says', () => {
    const form = resultsForm(planWarps([twill], needsOf())[0]!.pieces).replace('    picks:', '    picks: 18');
    expect(form).toContain('    structure: "2/2 twill"\n    per: inch\n');
    const found = learnt(readResults(form, 'r.yaml'), [other, summer]);
    expect(found(other).picks!.codes).toEqual([twill.code]);
    expect(found(summer)).toEqual({});
    expect(() => learnt(readResults(form, 'r.yaml'), [summer])).toThrow(
      'r.yaml: found results for 2/2 twill alone; expected one for a structure of kept.json: summer and winter',
    );
  });

  test('a form with nothing filled in is refused, and so is a code that is nowhere', () => {
    const form = resultsForm(planWarps([twill], needsOf())[0]!.pieces);
    expect(readResults(form, 'r.yaml')).toEqual([{ code: twill.code, structure: '2/2 twill', per: 'inch' }]);
    const nothing =
      /^r\.yaml: found nothing filled in that a plan can use; expected picks, warp used with off the loom/;
    expect(() => learnt(readResults(form, 'r.yaml'))).toThrow(nothing);
    expect(() => learnt(results('    stars: 4\n'))).toThrow(nothing);
    expect(() => learnt(results('    picks: 18\n', 'zzz'))).toThrow(
      /^r\.yaml: found zzz, which is not in kept\.json.*; expected a code of that list, or the structure beside it$/,
    );
    expect(() => learnt(results('    picks: 18\n    structure: "2/2 twill"\n', 'zzz'))).toThrow(
      'r.yaml: zzz: found 18 picks; expected their measure too, as 18 per inch',
    );
  });

  test.each([
    ['    off the loom: 51 in\n    finished: 56 in\n', '4:15: found 56 in (142.2 cm) finished, and 51 in'],
    ['    warp used: 51 in\n    off the loom: 5.1 in\n', '4:19: found 5.1 in (13 cm) off the loom, and 51 in'],
    ['    warp used: 0 in\n', '3:16: found “0 in”; expected a length of more than nothing'],
    ['    picks: 0\n', '3:12: found “0”; expected picks from 1 to 400'],
    ['    picks: 18 per yard\n', '3:12: found “18 per yard”; expected picks from 1 to 400'],
    ['    stars: 7\n', '3:12: found “7”; expected stars from 0 to 5'],
  ])('what cannot be is refused: %j', (lines, said) => {
    expect(() => results(lines)).toThrow(`r.yaml:${said}`);
  });

  test('what was done: of results what was filled in, and every list that no result is from', () => {
    const [chosen, others] = [twelve(), [towel()]];
    const files = [
      { file: 'kept.json', items: chosen },
      { file: 'gallery', items: others },
    ];
    const form = [{ code: chosen[0]!.code, stars: 3 }, { code: chosen[1]!.code }];
    expect(doneCloths([{ file: 'results.yaml', items: form }], files)).toEqual([
      { file: 'results.yaml', items: [chosen[0]] },
      { file: 'gallery', items: others },
    ]);
    expect(doneCloths([], files)).toEqual(files);
    expect(() => doneCloths([{ file: 'results.yaml', items: [{ code: 'abc', stars: 1 }] }], files)).toThrow(
      'results.yaml: found abc, which no list given with it has; expected the shortlist or gallery that it is from as well',
    );
  });
});

describe('a gamp of a shortlist', () => {
  const orders = ['DDLDL', 'DDDLL', 'DL', 'DDLL', 'LLDLD'];
  const five = orders.map((warp) => kept('2/2 twill', { warp }));

  test('separators are the fewest threads from four on with which every section starts in step', () => {
    const widthOf = (warp: string, needs: { separator?: number }) =>
      gampOf([kept('2/2 twill', { warp, by: 'thread' })], needsOf(), needs).warps[0]!.from - 1;
    expect(widthOf('DDL', {})).toBe(4);
    const eight = kept('turned twill', { warp: 'DDDLLL', by: 'unit', times: 4 });
    expect(gampOf([eight], needsOf(), {}).warps[0]!.from - 1).toBe(8);
    expect(() => gampOf([eight], needsOf(), { separator: 4 })).toThrow(
      '--separator: found 4 threads, with which some sections never start in step with the weave; expected 8, or another multiple of 8',
    );
  });

  test('five orders, 324 ends in 16.2 in: whole repeats, all in step, S in the separators', () => {
    const options = needsOf({ width: '16.2 in' });
    const gamp = gampOf(five, options, { separator: 4 });
    expect(gamp.warps.map(({ from, threads }) => [from, threads])).toEqual(
      [5, 69, 133, 197, 261].map((from) => [from, 60]),
    );
    const [warp] = planWarps([gamp.cloth], gampNeeds(gamp, options));
    expect(warp!.ends).toHaveLength(324);
    expect(warp!.heddles).toEqual([81, 81, 81, 81]);
    expect(warp!.wound.find(({ letter }) => letter === 'S')!.ends).toBeGreaterThanOrEqual(24);
    expect(gamp.squares).toHaveLength(25);
    expect(gamp.choice.exact).toBe(true);
  });

  test('a square weaves what its two orders weave', () => {
    const gamp = gampOf(five, needsOf({ width: '16.2 in' }), { separator: 4 });
    const { draft } = gamp.cloth;
    for (const { warp, weft } of gamp.squares) {
      const [i, j] = [gamp.warps[warp - 1]!.from - 1, gamp.wefts[weft - 1]!.from - 1];
      expect([i % 4, j % 4]).toEqual([0, 0]);
      const letters = (word: readonly number[], from: number) =>
        word
          .slice(from, from + 60)
          .map((yarn) => 'DLS'[yarn])
          .join('');
      expect(letters(draft.warp, i)).toBe(orders[warp - 1]!.repeat(60).slice(0, 60));
      expect(letters(draft.weft, j)).toBe(orders[weft - 1]!.repeat(60).slice(0, 60));
    }
  });

  test('fewer sections: those that weave the most different cloths', () => {
    const gamp = gampOf(five, needsOf(), { warps: 2, wefts: 2, separator: 4 });
    expect(gamp.squares).toHaveLength(4);
    expect(gamp.choice.cloths).toBe(4);
  });

  test('refuses mixed weaves, and a width too small', () => {
    expect(() => gampOf([towel(), kept('plain weave', { warp: 'DL' })], needsOf(), { separator: 4 })).toThrow(
      /found another weave, or other yarns, than in \w+; expected one weave for a gamp/,
    );
    expect(() => gampOf(five, needsOf({ width: '8 in' }), { separator: 4 })).toThrow(
      'fewer sections (--warps) or more width',
    );
  });
});

test('folding: lines that repeat in turn are written once, and unfold to the same list', () => {
  fc.assert(
    fc.property(fc.array(fc.constantFrom('a', 'b', 'c'), { maxLength: 60 }), (lines) => {
      const folds = folded(lines, (line) => line);
      expect(folds.flatMap((fold) => Array.from({ length: fold.times }, () => fold.lines).flat())).toEqual(lines);
    }),
  );
  expect(folded([...'ababab'], (line) => line)).toEqual([{ lines: ['a', 'b'], times: 3 }]);
});
