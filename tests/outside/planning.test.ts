// Worked examples of planning, from the first idea to the loom: sample warp, yarn, heddles, floats, winding, shuttles,
// gamp, fitting, twelve weavers, denting, distance, value, sett, edges, print. Every figure was worked out by a script
// that shares nothing with this project; the rules are those of the handweaving literature (CNCH on shrinkage; van der
// Hoogt on balance; Petrini on selvedges; Ashenhurst on sett), the percentages common practice, no source.
import { describe, expect, test } from 'vitest';
import { drawdown, isUp } from '../../src/cloth/drawdown.js';
import { floatsOf } from '../../src/cloth/floats.js';
import { valuePairs, valueWarnings, yarnLightness } from '../../src/colour/lightness.js';
import type { Draft, Sett, Weave } from '../../src/draft/draft.js';
import { gampNeeds, gampOf } from '../../src/plan/gamp/gamp-plan.js';
import {
  checkSections,
  gampColours,
  rightSizes,
  type Section,
  sectionStarts,
  squareNumber,
} from '../../src/plan/gamp/gamp-windows.js';
import { readPlanOptions } from '../../src/plan/options/plan-options.js';
import { planWarps, type WarpPlan } from '../../src/plan/piece/warp-plan.js';
import { dentingOf, dentsOf, rankReeds } from '../../src/plan/warp/denting.js';
import { balanceOf, evenBorders, mirrored, nearestFillings } from '../../src/plan/warp/fill-width.js';
import { caughtEnds, pickList, restingSides, shuttlesOf, startingSides } from '../../src/plan/warp/pick-list.js';
import { FLOAT_LIMITS, picksForSquare, threadsWithin } from '../../src/plan/warp/purpose.js';
import { before, USUAL_WARP, warpLength } from '../../src/plan/warp/warp-length.js';
import { changesIn, windingOf } from '../../src/plan/warp/winding.js';
import { adviseSett, closestSett, diametersPerInch } from '../../src/plan/yarn/sett.js';
import { gramsOf, picksIn, tally, WEFT_EXTRA, yarnAmount } from '../../src/plan/yarn/yarn-amounts.js';
import { parseYarnSize } from '../../src/plan/yarn/yarn-size.js';
import { paintCloth } from '../../src/render/cloth.js';
import { viewingLimits } from '../../src/score/contrast/viewing-distance.js';
import { contactLayout } from '../../src/sheets/contact-pages.js';
import { MARGIN, SIZES } from '../../src/sheets/paper/paper.js';
import { findStructure, parseProfile, weaveOf } from '../../src/structure/catalogue/catalogue.js';
import { heddles } from '../../src/structure/loom/lifts.js';
import { INCH, YARD } from '../../src/words/measure.js';
import { field, kept, type Made } from '../plan/cloths.js';

const SETT: Sett = { ends: 20, picks: 20, per: 'inch' };
const YARNS = [
  { letter: 'D', name: 'navy', hex: '#1f2a44' },
  { letter: 'L', name: 'natural', hex: '#efe6d2' },
];
const word = (text: string, times = 1): number[] =>
  [...text].flatMap((letter) => new Array<number>(times).fill('DLS'.indexOf(letter)));
const inches = (mm: number): number => mm / INCH;

/** 2/2 twill on a straight draw, 12, 23, 34, 41, with these colour orders laid thread by thread. */
function twill(warp: number[], weft: number[]): Draft {
  const whole = (length: number): number => (length % 4 === 0 ? length : length * 4);
  return {
    threading: Array.from({ length: whole(warp.length) }, (_, i) => [(i % 4) + 1]),
    tieUp: [
      [1, 2],
      [2, 3],
      [3, 4],
      [1, 4],
    ],
    treadling: Array.from({ length: whole(weft.length) }, (_, j) => [(j % 4) + 1]),
    pickKinds: Array.from({ length: whole(weft.length) }, () => 'ground'),
    endUnits: new Array<number>(whole(warp.length)).fill(1),
    pickUnits: new Array<number>(whole(weft.length)).fill(1),
    widths: { warp: 1, ground: 1, pattern: 1, tabby: 1 },
    yarns: YARNS,
    warp: field(warp, whole(warp.length)),
    weft: field(weft, whole(weft.length)),
    sett: SETT,
  };
}

const profiled = (name: string, profile: string): Weave => {
  const known = findStructure(name);
  return weaveOf(known, parseProfile(profile, known.blocks));
};
const structure = (name: string, profile: string, ends: number): number[] => {
  const weave = profiled(name, profile);
  return heddles(weave).map((count) => (count * ends) / weave.threading.length);
};

/** One cloth as the whole plan has it, with the yarn of the examples. */
function planned(name: string, made: Made, flags: Record<string, string> = {}): WarpPlan {
  return planWarps(
    [kept(name, made)],
    readPlanOptions('', 'needs', { yarns: '8/2 cotton', floating: 'no', ...flags }),
  )[0]!;
}

describe('the sample warp', () => {
  test.each([
    [1, 319],
    [4, 79],
    [8, 39],
    [16, 19],
  ])('DDLDL ×%i over 400 ends: D 240, L 160, %i changes', (times, changes) => {
    const warp = field(word('DDLDL', times), 400);
    expect(tally(warp, 400, 2)).toEqual([240, 160]);
    expect(changesIn(warp)).toBe(changes);
    expect(nearestFillings(400, 5 * times, 0)[0]).toEqual({ repeats: 80 / times, ends: 400, over: 0 });
  });

  test('two floating selvedges in D: D 242, L 160; 202 dents of a 10-dent reed, 20.2 in; 100 heddles a shaft', () => {
    const warp = planned('2/2 twill', { warp: 'DDLDL', times: 4 }, { floating: 'yes', reed: '10', pieces: '8' });
    expect(warp.wound).toEqual([
      { letter: 'D', ends: 242 },
      { letter: 'L', ends: 160 },
    ]);
    expect([warp.ends.length, warp.floating.ends, warp.dents]).toEqual([400, 2, 202]);
    expect(inches(warp.widthInReed)).toBeCloseTo(20.2, 9);
    expect(warp.heddles).toEqual([100, 100, 100, 100]);
    expect(warp.length.wind / YARD).toBe(3);
    // 726 yd and 480 yd of warp, whatever is woven into it.
    expect(warp.yarn.map((amount) => amount.warp / YARD)).toEqual([expect.closeTo(726, 6), expect.closeTo(480, 6)]);
  });

  test('its length: 51 in finished, 61.594 used, 106.594 in all, 3 yd to wind', () => {
    const length = warpLength({ ...USUAL_WARP, pieces: new Array<number>(8).fill(5 * INCH) }, 'inch');
    expect(inches(length.finished)).toBeCloseTo(51, 9);
    expect(inches(length.offLoom)).toBeCloseTo(56.667, 3);
    expect(inches(length.used)).toBeCloseTo(61.594, 3);
    // Adding the two percentages, 18 % of 51 in, would be short.
    const added = 51 * 1.18;
    expect([added, inches(length.used) - added].map((each) => each.toFixed(2))).toEqual(['60.18', '1.41']);
    expect(inches(length.total)).toBeCloseTo(106.594, 3);
    expect(length.total / YARD).toBeCloseTo(2.961, 3);
    expect(length.wind / YARD).toBe(3);
    expect([before(10, 0.2), 12 * (1 - 0.2)]).toEqual([12.5, expect.closeTo(9.6, 12)]);
  });

  test('its yarn: 169.6 g of D and 112.4 g of L with includes 10 % reserve', () => {
    const { tex } = parseYarnSize('8/2 cotton');
    expect(tex).toBeCloseTo(147.6, 1);
    expect(gramsOf(6773 * 1000, tex)).toBeCloseTo(1000, 0);
    const offLoom = 51 / 0.9;
    const picks = picksIn(offLoom, 20);
    expect(picks).toBe(1134);
    const [dark, light] = tally(word('DDLDL'), picks, 2) as [number, number];
    expect([dark, light]).toEqual([681, 453]);
    const weft = (count: number): number => count * 20 * INCH * (1 + WEFT_EXTRA);
    const d = yarnAmount('D', 242 * 3 * YARD, weft(dark), tex);
    const l = yarnAmount('L', 160 * 3 * YARD, weft(light), tex);
    expect(d.warp / YARD).toBeCloseTo(726, 9);
    expect(gramsOf(d.warp, tex)).toBeCloseTo(98.0, 1);
    expect(gramsOf(l.warp, tex)).toBeCloseTo(64.8, 1);
    expect(d.weft / YARD).toBeCloseTo(416.2, 1);
    expect(gramsOf(d.weft, tex)).toBeCloseTo(56.2, 1);
    expect(l.weft / YARD).toBeCloseTo(276.8, 1);
    expect(gramsOf(l.weft, tex)).toBeCloseTo(37.4, 1);
    expect(d.total / YARD).toBeCloseTo(1142, 0);
    expect(d.grams).toBeCloseTo(154.2, 1);
    expect(l.total / YARD).toBeCloseTo(757, 0);
    expect(l.grams).toBeCloseTo(102.2, 1);
    expect(d.gramsWithReserve).toBeCloseTo(169.6, 1);
    expect(l.gramsWithReserve).toBeCloseTo(112.4, 1);
  });

  test('in metres: 50 cm at 10 ends are 500 ends; 2.5 m of 16/2 cotton, 1250 m and 92.3 g', () => {
    const sett: Sett = { ends: 10, picks: 10, per: 'cm' };
    const flags = { width: '50 cm', yarns: '16/2 cotton' };
    const warp = planned('plain weave', { warp: 'D', weft: 'L', sett }, flags);
    expect(warp.ends).toHaveLength(500);
    const { tex } = parseYarnSize('16/2 cotton');
    expect(gramsOf(13547 * 1000, tex)).toBeCloseTo(1000, 0);
    expect(yarnAmount('D', 500 * 2500, 0, tex)).toMatchObject({ total: 1250 * 1000, grams: expect.closeTo(92.3, 1) });
  });

  test.each([
    ['5/2 cotton', 2100],
    ['10/2 cotton', 4200],
    ['16/2 cotton', 6720],
    ['20/2 cotton', 8400],
    ['16/2 linen', 2400],
    ['2/12 worsted', 3360],
  ])('%s: %i yards to the pound', (count, yards) => {
    expect(parseYarnSize(count).tex).toBeCloseTo(parseYarnSize(`${yards} yd/lb`).tex, 9);
  });
});

describe('heddles for AABAB', () => {
  test.each([
    ['summer and winter', 400, [100, 100, 120, 80]],
    ["monk's belt", 400, [120, 120, 80, 80]],
    ["M's and O's", 400, [100, 100, 100, 100]],
    ['huck', 400, [120, 80, 80, 120]],
    ['crackle', 24, [5, 10, 7, 2]],
  ])('%s, %i ends', (name, ends, counts) => {
    // Huck gives A and B as many half-units each.
    expect(structure(name, name === 'huck' ? 'A B' : 'A A B A B', ends)).toEqual(counts);
  });

  test('crackle in 400 ends: 16 repeats of 24 and 16 over', () => {
    expect(nearestFillings(400, 24, 0)).toContainEqual({ repeats: 16, ends: 384, over: -16 });
    const crackle = { warp: 'DDLDL', profile: 'A A B A B', by: 'unit' } as const;
    expect(planned('crackle', crackle, { loom: 'rising', 'loom width': '20 in' }).repeats).toBe(16);
  });
});

describe('floats in length', () => {
  test.each([
    [16, 8, 6],
    [20, 10, 7],
    [24, 12, 9],
    [30, 15, 11],
  ])('%i ends to the inch: 1/2 in holds %i, 3/8 in %i', (epi, half, threeEighths) => {
    expect(threadsWithin(FLOAT_LIMITS.general, INCH / epi)).toBe(half);
    expect(threadsWithin(FLOAT_LIMITS.towel, INCH / epi)).toBe(threeEighths);
  });

  test.each([
    [2, 8, 0.4],
    [4, 16, 0.8],
    [8, 32, 1.6],
  ])("monk's belt AABAB, %i pairs an element: %i ends, %f in", (pairs, ends, length) => {
    const profile = [...'AABAB'].map((block) => new Array<string>(pairs).fill(block).join(' ')).join(' ');
    const { weftFace, weftBack, longestMm } = floatsOf(drawdown(profiled("monk's belt", profile)), SETT);
    expect(Math.max(weftFace!, weftBack!)).toBe(ends);
    expect(inches(longestMm!)).toBeCloseTo(length, 9);
  });

  test.each([1, 2, 4])('summer and winter with tabby: 3 at %i units an element', (units) => {
    const profile = [...'AABAB'].map((block) => new Array<string>(units).fill(block).join(' ')).join(' ');
    const floats = floatsOf(drawdown(profiled('summer and winter', profile)), SETT);
    expect([floats.warpFace, floats.warpBack, floats.weftFace, floats.weftBack]).toEqual([3, 3, 3, 3]);
  });
});

describe('floats of structures, in ends and picks', () => {
  test.each([
    ["M's and O's", 'A B', { weft: 4, warp: 2 }],
    ['huck', 'A B', { weft: 5, warp: 5 }],
    ['turned taqueté', 'A B', { weft: 2, warp: 3 }],
    ['turned twill', 'A B', { weft: 3, warp: 3 }],
  ])('%s', (name, profile, { weft, warp }) => {
    const { warpFace, warpBack, weftFace, weftBack } = floatsOf(drawdown(profiled(name, profile)), SETT);
    expect(Math.max(weftFace!, weftBack!)).toBe(weft);
    expect(Math.max(warpFace!, warpBack!)).toBe(warp);
  });

  /** Longest warp float of these lifts over a straight draw on four shafts. */
  const warpFloat = (lifts: readonly string[]): number => {
    const draft = twill([0], [0]);
    const floats = floatsOf(
      drawdown({
        ...draft,
        tieUp: lifts.map((lift) => [...lift].map(Number)),
        treadling: lifts.map((_, j) => [j + 1]),
      }),
      SETT,
    );
    return Math.max(floats.warpFace!, floats.warpBack!);
  };

  test.each([
    ['234 134 124 123', 4],
    ['134 124 123 234', 3],
    ['124 123 234 134', 3],
    ['123 234 134 124', 3],
    // The opposites run back: both joins are clean.
    ['123 124 134 234', 3],
  ])('turned twill on four shafts: after the 1/3 band the 3/1 band %s floats %i', (band, longest) => {
    expect(warpFloat([...'1234', ...band.split(' ')])).toBe(longest);
  });
});

describe('winding', () => {
  test.each([
    [1, [2, 1, 1, 1], false],
    [2, [4, 2, 2, 2], true],
    [4, [8, 4, 4, 4], true],
    [8, [16, 8, 8, 8], true],
    [16, [32, 16, 16, 16], true],
  ])('DDLDL ×%i: runs %j, all even: %s', (times, runs, even) => {
    const winding = windingOf(field(word('DDLDL', times), 400), 5 * times);
    expect(winding.even).toBe(even);
    expect(winding.stretch.slice(0, 4).map((run) => run.ends)).toEqual(runs);
    expect(winding.stretch.some((run) => run.peg === 2)).toBe(!even);
    const rounds = winding.chains.map((chain) => chain.rounds);
    expect(rounds).toEqual([120, 80]);
  });

  test('five ends together: 80 passes and no knots; in order, 319', () => {
    const { ways } = windingOf(field(word('DDLDL'), 400), 5);
    expect(ways.map(({ way, knots }) => [way, knots])).toEqual([
      ['a separate chain per colour', 0],
      ['several ends together', 0],
      ['in order, changing at the pegs', 319],
    ]);
    expect(ways[1]!.passes).toBe(80);
  });
});

describe('shuttles', () => {
  test('DDLDL in single picks, both from the left: D comes to rest right, L left; carries of 2 picks on both sides', () => {
    const draft = twill(word('DDLDL'), word('DDLDL'));
    expect(restingSides(draft, 5, ['left', 'left'])).toEqual(['right', 'left']);
    const list = pickList(draft, 40, ['left', 'left']);
    expect(Math.max(...list.map((thrown) => thrown.carry))).toBe(2);
    expect(new Set(list.filter((t) => t.carry > 0).map((t) => t.from)).size).toBe(2);
    const [piece] = planned('2/2 twill', { warp: 'DDLDL' }).pieces;
    expect(piece!.carry).toEqual({ picks: 2, mm: expect.closeTo(0.1 * INCH, 9) });
  });

  test.each([
    [2, 4, 0.2],
    [4, 8, 0.4],
    [8, 16, 0.8],
    [16, 32, 1.6],
  ])('DDLDL ×%i: both rest left, carries on the left only, longest %i picks = %f in', (times, longest, length) => {
    const draft = twill(word('DDLDL', times), word('DDLDL', times));
    expect(restingSides(draft, 5 * times, ['left', 'left'])).toEqual(['left', 'left']);
    const list = pickList(draft, 20 * times, ['left', 'left']);
    expect(Math.max(...list.map((thrown) => thrown.carry))).toBe(longest);
    expect(list.filter((t) => t.carry > 0).every((t) => t.from === 'left')).toBe(true);
    const [piece] = planned('2/2 twill', { warp: 'DDLDL', times }).pieces;
    expect(piece!.carry).toEqual({ picks: longest, mm: expect.closeTo(length * INCH, 9) });
  });

  test('caught edges of 2/2 twill, 400 ends: from the right always, from the left never', () => {
    const draft = twill([0], [0]);
    expect(caughtEnds(draft, 80, ['right'], 0, 3)).toEqual({
      left: { turns: 40, caught: 40 },
      right: { turns: 39, caught: 39 },
    });
    const left = caughtEnds(draft, 80, ['left'], 0, 3);
    expect(left.left.caught + left.right.caught).toBe(0);
    expect(startingSides(draft, 400)).toMatchObject({ sides: ['right'], allCaught: true });
  });

  test('DDLDL ×4 in the weft, both from the right: 160 of 160 and 158 of 158; one each: some', () => {
    const draft = twill(word('DDLDL', 4), word('DDLDL', 4));
    expect(caughtEnds(draft, 320, ['right', 'right'], 0, 19)).toEqual({
      left: { turns: 160, caught: 160 },
      right: { turns: 158, caught: 158 },
    });
    const left = caughtEnds(draft, 320, ['left', 'left'], 0, 19);
    expect(left.left.caught + left.right.caught).toBe(0);
    const mixed = caughtEnds(draft, 320, ['left', 'right'], 0, 19);
    expect(mixed.left.caught).toBeGreaterThan(0);
    expect(mixed.left.caught).toBeLessThan(mixed.left.turns);
    expect(shuttlesOf(draft).map((shuttle) => shuttle.name)).toEqual(['D', 'L']);
  });
});

describe('gamp', () => {
  const orders = [word('DDLDL'), word('DDLDL', 4), word('DL'), word('DDLL'), word('LLDLD')];
  const sections: Section[] = orders.map((order) => ({ order, threads: 60 }));
  const gamp = { sections, separator: 4, yarn: 2 };

  test('five sections of 60 and six separators of 4: 324 ends, D 156, L 144, S 24, 16.2 in, 81 heddles a shaft', () => {
    checkSections(gamp, 4);
    const ends = gampColours(gamp);
    expect(ends).toHaveLength(324);
    expect(tally(ends, 324, 3)).toEqual([156, 144, 24]);
    expect(sections.map(({ order, threads }) => tally(order, threads, 2))).toEqual([
      [36, 24],
      [36, 24],
      [30, 30],
      [30, 30],
      [24, 36],
    ]);
    expect(sectionStarts(gamp).every((start) => start % 4 === 0)).toBe(true);
    expect(squareNumber(4, 4, 5)).toBe(25);
  });

  test('the same from a shortlist: 324 ends, 16.2 in, 81 heddles a shaft, a woven square with two hems 18.2 in', () => {
    const shortlist = [
      kept('2/2 twill', { warp: 'DDLDL' }),
      kept('2/2 twill', { warp: 'DDLDL', times: 4 }),
      ...['DL', 'DDLL', 'LLDLD'].map((warp) => kept('2/2 twill', { warp })),
    ];
    const options = readPlanOptions('', 'needs', { width: '16.2 in', floating: 'no' });
    const whole = gampOf(shortlist, options, { separator: 4 });
    const wanted = gampNeeds(whole, options);
    const [warp] = planWarps([whole.cloth], wanted);
    expect(warp!.wound).toEqual([
      { letter: 'D', ends: 156 },
      { letter: 'L', ends: 144 },
      { letter: 'S', ends: 24 },
    ]);
    expect([warp!.ends.length, inches(warp!.ends.length * (INCH / 20))]).toEqual([324, expect.closeTo(16.2, 9)]);
    expect(warp!.heddles).toEqual([81, 81, 81, 81]);
    expect(inches(warp!.pieces[0]!.woven)).toBeCloseTo(18.2, 9);
    expect(whole.squares.map(({ number }) => number)).toEqual(Array.from({ length: 25 }, (_, s) => s + 1));
  });

  test('an order of 4 and 4 does not fit 60: 56 or 64', () => {
    expect(rightSizes(60, 8, 4, 4)).toEqual([56, 64]);
    expect(() => checkSections({ ...gamp, sections: [{ order: word('DDDDLLLL'), threads: 60 }] }, 4)).toThrow(
      'section 1: found 60 threads for an order of 8; expected whole repeats that start in step with the weave: 56 or 64',
    );
  });
});

describe('fitting a width', () => {
  const order = word('DDLDL', 4);

  test('single turns: repeat 38, balance 1; 9 repeats are 367 ends, 10 are 405; even borders of 9 give 399', () => {
    const { order: turned, balance } = mirrored(order, 'single');
    expect([turned.length, balance]).toEqual([38, 1]);
    expect(balanceOf(turned)).toBe(1);
    const fillings = nearestFillings(400, 38, 24 + 1);
    expect(fillings.slice(0, 2)).toEqual([
      { repeats: 10, ends: 405, over: 5 },
      { repeats: 9, ends: 367, over: -33 },
    ]);
    const borders = evenBorders(400, 38, 1, 10);
    expect(borders).toBe(9);
    const ends = field(turned, 10 * 38 + 1);
    expect(ends.length + 2 * borders).toBe(399);
    expect(ends).toEqual(ends.toReversed());
    expect(tally(ends, 381, 2)).toEqual([231, 150]);
  });

  test('doubled turns: 9 repeats of 40 and borders of 20 are 400', () => {
    const { order: turned, balance } = mirrored(order, 'doubled');
    expect([turned.length, balance]).toEqual([40, 0]);
    expect(nearestFillings(400, 40, 40)[0]).toEqual({ repeats: 9, ends: 400, over: 0 });
  });
});

test('twelve weavers: one loom 208.04 in, 6 yd, 2412 yd in all; twelve looms 61.91 in, 1.75 yd, 4242 yd', () => {
  const one = warpLength({ ...USUAL_WARP, pieces: new Array<number>(12).fill(10 * INCH) }, 'inch');
  expect(inches(one.finished)).toBeCloseTo(135, 9);
  expect(inches(one.used)).toBeCloseTo(163.04, 2);
  expect(inches(one.total)).toBeCloseTo(208.04, 2);
  expect(one.wind / YARD).toBe(6);
  expect((402 * one.wind) / YARD).toBe(2412);
  const each = warpLength({ ...USUAL_WARP, pieces: [10 * INCH] }, 'inch');
  expect(inches(each.finished)).toBeCloseTo(14, 9);
  expect(inches(each.total)).toBeCloseTo(61.91, 2);
  expect(each.wind / YARD).toBe(1.75);
  expect((202 * each.wind * 12) / YARD).toBe(4242);
});

describe('denting', () => {
  test.each([
    [20, 8, '2-3'],
    [20, 10, '2'],
    [20, 12, '1-2-2'],
    [20, 15, '1-1-2'],
    [24, 10, '2-2-3-2-3'],
    [28, 12, '2-2-3'],
    [16, 12, '1-1-2'],
  ])('%i ends in %i dents: %s', (sett, reed, dents) => {
    expect(dentsOf(sett, reed).join('-')).toBe(dents);
    // Ends in the group × dents per inch = ends per inch × dents in the group.
    const group = dentsOf(sett, reed);
    expect(group.reduce((a, b) => a + b, 0) * reed).toBe(sett * group.length);
  });

  test('a five-end order in step with 1-2-2 every 5 ends, with 1-1-2 every 20, with 24 in 10 every 60', () => {
    expect(dentingOf(20, { dents: 12 }, 'inch', 5)).toMatchObject({ meets: 5, inStep: true });
    expect(dentingOf(20, { dents: 8 }, 'inch', 5)).toMatchObject({ meets: 5, inStep: true });
    expect(dentingOf(20, { dents: 15 }, 'inch', 5)).toMatchObject({ meets: 20, inStep: false });
    expect(dentingOf(24, { dents: 10 }, 'inch', 5)).toMatchObject({ meets: 60, inStep: false });
    expect(rankReeds(20, [8, 10, 12, 15], 'inch', 5).map(({ reed }) => reed)).toEqual([10, 15, 8, 12]);
  });
});

describe('distance', () => {
  test('20 ends at 20 to the inch: 1.37 cycles a degree at 2 m, 4.12 at 6 m', () => {
    // `easyTo` is where four cycles fill a degree, so cycles at d are 4 d / easyTo.
    const { easyTo } = viewingLimits(20, INCH / 20);
    expect((4 * 2) / easyTo).toBeCloseTo(1.37, 2);
    expect((4 * 6) / easyTo).toBeCloseTo(4.12, 2);
  });

  test.each([
    [2, '0.6', '4.4'],
    [5, '1.5', '11'],
    [20, '5.8', '44'],
    [40, '12', '87'],
    [80, '23', '175'],
  ])('%i ends: easy to see up to %s m, gone by %s m', (ends, easy, gone) => {
    const { easyTo, goneBy } = viewingLimits(ends, INCH / 20);
    const said = (metres: number): string => (metres < 10 ? metres.toFixed(1) : metres.toFixed(0));
    expect([said(easyTo), said(goneBy)]).toEqual([easy, gone]);
  });

  test('in widths of the repeat: easy up to 229, gone by 1719', () => {
    const { easyTo, goneBy } = viewingLimits(1, 1000);
    expect([easyTo, goneBy].map((widths) => widths.toFixed(0))).toEqual(['229', '1719']);
  });
});

test("plain weave one and one: stripes across, or along; and hound's tooth, end by end", () => {
  const face = (draft: Draft): string[] => {
    const cloth = drawdown(draft);
    return draft.weft.map((f, j) => draft.warp.map((w, i) => ((isUp(cloth, j, i) ? w : f) === 0 ? '#' : '.')).join(''));
  };
  const plain = (weft: string): Draft => ({
    ...twill(word('DLDL'), word(weft)),
    threading: [[1], [2], [1], [2]],
    tieUp: [[1], [2]],
    treadling: [[1], [2], [1], [2]],
  });
  expect(face(plain('DLDL'))).toEqual(['####', '....', '####', '....']);
  expect(face(plain('LDLD'))).toEqual(['#.#.', '#.#.', '#.#.', '#.#.']);
  expect(face(twill(word('DDDDLLLL'), word('DDDDLLLL')))).toEqual(
    '####..## #####..# ######.. ####.##. ##...... .##..... ..##.... #..#....'.split(' '),
  );
});

test('a weaving square: 4 pattern picks a unit at 40 picks in all, 2.4 at 24', () => {
  expect(picksForSquare(4, 20, 40 / 2)).toBe(4);
  expect(picksForSquare(4, 20, 24 / 2)).toBeCloseTo(2.4, 12);
});

test('value: navy on natural 74.2, red on green 6.8 and orange on mid-blue 8.3 will not show', () => {
  const yarn = (letter: string, hex: string) => ({ letter, name: letter, hex });
  expect(yarnLightness({ hex: '#1f2a44' })).toBeCloseTo(17.3, 1);
  expect(yarnLightness({ hex: '#efe6d2' })).toBeCloseTo(91.5, 1);
  expect(valuePairs(YARNS)[0]).toMatchObject({ verdict: 'strong' });
  expect(valuePairs(YARNS)[0]!.difference).toBeCloseTo(74.2, 1);
  const red = valuePairs([yarn('D', '#c0392b'), yarn('L', '#2e8b57')])[0]!;
  expect(yarnLightness(red.darker)).toBeCloseTo(44.7, 1);
  expect(yarnLightness(red.lighter)).toBeCloseTo(51.5, 1);
  // 6.8 is the difference of the two rounded figures; unrounded it is 6.87.
  expect(red.difference).toBeCloseTo(6.87, 2);
  expect(red.verdict).toBe('will not show');
  const orange = valuePairs([yarn('D', '#d2691e'), yarn('L', '#3b74b0')])[0]!;
  expect(
    [yarnLightness(orange.lighter), yarnLightness(orange.darker), orange.difference].map((l) => l.toFixed(1)),
  ).toEqual(['56.0', '47.7', '8.3']);
  expect(valueWarnings([yarn('D', '#d2691e'), yarn('L', '#3b74b0')])).toEqual([
    'L and D differ by only 8.3 L*: they will not show on each other',
    'D is the lighter yarn and L the darker one',
  ]);
});

test('sett of 8/2 cotton: 53.3 diameters; plain weave 26.7, at 80 % 21.3; 2/2 twill 35.6, at 80 % 28.4, at 70 % 24.9', () => {
  const diameters = diametersPerInch(parseYarnSize('8/2 cotton').tex, 'cotton');
  expect(diameters).toBeCloseTo(53.3, 1);
  expect(closestSett(diameters, 2, 2)).toBeCloseTo(26.7, 1);
  expect(closestSett(diameters, 2, 2) * 0.8).toBeCloseTo(21.3, 1);
  const weave = twill([0], [0]);
  expect(adviseSett(weave, diameters, 'general')).toMatchObject({ ends: 4, intersections: 2 });
  expect(adviseSett(weave, diameters, 'general').closest).toBeCloseTo(35.6, 1);
  expect(adviseSett(weave, diameters, 'general').advised).toBeCloseTo(28.4, 1);
  expect(adviseSett(weave, diameters, 'drape').advised).toBeCloseTo(24.9, 1);
});

describe('print', () => {
  const across = INCH / 20;

  test('20 ends to the inch: 1.27 mm an end, 4.8 points of a screen at 96 to the inch', () => {
    expect(across).toBeCloseTo(1.27, 12);
    const millimetres = { width: 7.5 * INCH, height: across };
    const { width } = paintCloth(twill([0], [0]), { millimetres, perMillimetre: 96 / INCH });
    expect(width / threadsWithin(7.5 * INCH, across)).toBeCloseTo(4.8, 12);
  });

  test('at actual size 149 ends lie across the 190 mm of A4 between its margins, 150 across 7.5 in', () => {
    expect(SIZES.a4.width - 2 * MARGIN).toBe(190);
    expect(threadsWithin(190, across)).toBe(149);
    expect(threadsWithin(7.5 * INCH, across)).toBe(150);
  });

  test.each([
    ['a4', 4, '44.5', 16],
    ['a4', 5, '34.8', 25],
    ['letter', 4, '46.0', 16],
    ['letter', 5, '36.0', 20],
  ] as const)('contact sheets on %s in %i columns: pictures %s mm wide, %i a page', (paper, columns, width, each) => {
    const layout = contactLayout(paper, columns);
    expect(layout.width.toFixed(1)).toBe(width);
    expect(layout.columns * layout.rows).toBe(each);
    // Columns and rows stay on the paper.
    expect(layout.rows * layout.room).toBeLessThanOrEqual(SIZES[paper].height - 2 * MARGIN);
    expect(layout.height).toBeLessThanOrEqual(layout.width);
  });

  test('half size shows 70 ends across 44.5 mm', () => {
    expect(threadsWithin(2 * contactLayout('a4', 4).width, across)).toBe(70);
  });
});
