import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fromCells } from '../../../src/cloth/drawdown.js';
import { floatsOf } from '../../../src/cloth/floats.js';
import { lightness } from '../../../src/colour/yarn.js';
import { parseShortlist } from '../../../src/formats/shortlist.js';
import { floatsOver, longestStandOut } from '../../../src/page/paint/float-runs.js';
import { clothFrom } from '../../../src/page/paint/step-back.js';
import { drawCommand } from '../../../src/page/parts/command.js';
import { differencesOf } from '../../../src/page/parts/differences.js';
import { ordersInWords } from '../../../src/page/parts/weaving-words.js';
import { Marks } from '../../../src/page/store/marks.js';
import { preferenceOf, TRAITS } from '../../../src/page/store/preference.js';
import { laidAgain, sizesOf } from '../../../src/page/store/sizes.js';
import { addressOf, type View, viewOf } from '../../../src/page/store/view.js';
import { UNWEIGHED } from '../../../src/score/rank/presets.js';
import { PARTS } from '../../../src/score/rank/rank.js';
import { codeOf } from '../../../src/score/symmetry/cloth-code.js';
import { explore } from '../../../src/search/explore.js';
import { readQuestion } from '../../../src/search/question/read-question.js';
import { foundOf, HOUNDS_TOOTH, LOG_CABIN, SETT, trialOutcome } from '../../gallery/trial.js';

const USUAL: View = {
  weights: { ...UNWEIGHED, contrast: 3, symmetry: 2, float: 1 },
  filters: {},
  order: 'best',
  find: '',
  kept: false,
  size: 'actual',
  metres: 0,
  grey: false,
  compare: [],
  comparing: false,
};
const CODES = new Set(['aaaa', 'bbbb', 'cccc']);

describe('the longest floats', () => {
  test('stand out where most floats are shorter, not where all are of one length', () => {
    const cells = (...rows: string[]) => fromCells(4, rows.length, (j, i) => rows[j]![i] === '#');
    expect(longestStandOut(cells('##..', '.##.', '..##', '#..#'))).toBe(false);
    expect(longestStandOut(cells('#.#.', '.#.#', '#.#.', '.###'))).toBe(true);
  });
});

describe('the address', () => {
  test('says nothing of what is as usual', () => expect(addressOf(USUAL, USUAL)).toBe(''));

  test('reads back as it was written', () => {
    const view = fc.record<View>({
      weights: fc
        .array(fc.integer({ min: 0, max: 400 }), { minLength: PARTS.length, maxLength: PARTS.length })
        .map((n) => Object.fromEntries(PARTS.map((part, at) => [part, n[at]! / 4])) as View['weights']),
      filters: fc.record(
        {
          float: fc.oneof(
            fc.integer({ min: 1, max: 99 }).map((threads) => ({ threads })),
            fc.integer({ min: 1, max: 99 }).map((n) => ({ mm: n / 4 })),
          ),
          repeat: fc.integer({ min: 0, max: 2000 }),
          knots: fc.integer({ min: 0, max: 2000 }),
          darkFrom: fc.integer({ min: 0, max: 100 }),
          structure: fc.string({ minLength: 1 }),
          fill: fc.constantFrom('solid' as const, 'nest' as const),
        },
        { requiredKeys: [] },
      ),
      order: fc.constantFrom('best', 'calm', 'liked'),
      find: fc.string({ unit: 'grapheme' }),
      kept: fc.boolean(),
      size: fc.constantFrom('quarter', 'actual', 'close'),
      metres: fc.constantFrom(0, 0.6, 1.5, 10),
      grey: fc.boolean(),
      compare: fc.constantFrom([], ['bbbb'], ['cccc', 'aaaa']),
      comparing: fc.constant(false),
    });
    fc.assert(
      fc.property(view, (each) => {
        expect(viewOf(addressOf(each, USUAL), USUAL, CODES)).toEqual(each);
      }),
    );
  });

  test('opens a cloth by its bare code, and passes over what it does not know', () => {
    expect(viewOf('bbbb', USUAL, CODES)).toEqual({ ...USUAL, cloth: 'bbbb' });
    expect(viewOf('size=huge&from=99&float=x&cloth=none&compare=aaaa.zzzz&beside=yes', USUAL, CODES)).toEqual({
      ...USUAL,
      compare: ['aaaa'],
    });
  });
});

describe('floats outlined', () => {
  test('are those of the cloth: all cells of a long float, and the longest as counted elsewhere', () => {
    const cells = fc.array(fc.array(fc.boolean(), { minLength: 5, maxLength: 5 }), { minLength: 3, maxLength: 7 });
    fc.assert(
      fc.property(cells, fc.integer({ min: 0, max: 4 }), (rows, most) => {
        const cloth = fromCells(5, rows.length, (j, i) => rows[j]![i]!);
        const floats = floatsOf(cloth, SETT);
        const runs = floatsOver(cloth, 'face', most);
        const longest = (warp: boolean): number =>
          Math.max(0, ...runs.filter((r) => r.warp === warp).map((r) => r.length));
        if (floats.warpFace !== null) expect(longest(true)).toBe(floats.warpFace > most ? floats.warpFace : 0);
        if (floats.weftFace !== null) expect(longest(false)).toBe(floats.weftFace > most ? floats.weftFace : 0);
        for (const { warp, end, pick, length } of runs) {
          for (let k = 0; k < length; k++) {
            const [j, i] = warp ? [(pick + k) % rows.length, end] : [pick, (end + k) % 5];
            expect(rows[j]![i]).toBe(warp);
          }
        }
      }),
    );
  });
});

describe('stepping back', () => {
  // The spread of lightness over the middles of the crossings is the figure `reads`, which knows flat threads only:
  // the shadows between round threads change it a little.
  test.each([
    ['hound’s tooth', HOUNDS_TOOTH],
    ['log cabin', LOG_CABIN],
  ])('shows as much as the figures say: %s', (_, draft) => {
    const { reads } = foundOf(draft, 1).scores;
    const thread = 25.4 / SETT.ends;
    const ends = draft.warp.length;
    const millimetres = { width: ends * thread, height: ends * thread };
    for (const metres of [2, 6] as const) {
      const { width, rgb } = clothFrom(draft, { millimetres, perMillimetre: 6, grey: true }, metres);
      const light = Array.from({ length: ends * ends }, (_, at) => {
        const middle = (place: number): number => Math.floor(((place + 0.5) / ends) * width);
        const v = rgb[(middle(Math.floor(at / ends)) * width + middle(at % ends)) * 3]! / 255;
        return lightness(v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4);
      });
      const mean = light.reduce((sum, l) => sum + l, 0) / light.length;
      const spread = Math.sqrt(light.reduce((sum, l) => sum + (l - mean) ** 2, 0) / light.length);
      expect(Math.abs(spread - reads[metres])).toBeLessThan(0.1 * reads[metres] + 0.5);
    }
  });
});

describe('every size of a motif', () => {
  test('lays the orders as the search does', async () => {
    const flags = {
      structure: 'summer and winter',
      lengths: '3',
      by: 'thread,unit',
      fill: 'solid,alternate,nest',
      times: '1,2,4',
      weft: 'own',
      'limits.repeat': '2000',
      show: '1000',
    };
    const question = readQuestion({ flags }, () => {
      throw new Error('no draft is asked for');
    });
    const { found } = await explore(question, { workers: 0 });
    expect(found.length).toBeGreaterThan(20);
    for (const each of found) expect(codeOf(laidAgain(each, each.order.times))).toBe(each.code);
    const sized = sizesOf(found[0]!);
    expect(sized.map(({ times }) => times)).toContain(found[0]!.order.times);
  });
});

describe('what a weaver reads', () => {
  test('the command, with quotation marks where a shell needs them', () => {
    const { order } = foundOf(HOUNDS_TOOTH, 1);
    const redraw = [
      ['structure', '2/2 twill'],
      ['warp', 'D4'],
      ['times', '2'],
      ['yarns', 'D #1f2a44'],
    ] as const;
    expect(drawCommand({ redraw, order }, 4)).toBe(
      'shedlight draw --structure "2/2 twill" --warp D4 --yarns "D #1f2a44" --times 4',
    );
    expect(drawCommand({ redraw: [['draft', "it's $HOME.yaml"]], order })).toBe("shedlight draw 'it'\\''s $HOME.yaml'");
  });

  test('the orders as written, wound and threaded', () => {
    expect(Object.fromEntries(ordersInWords(foundOf(HOUNDS_TOOTH, 1)))).toMatchObject({
      'As wound': 'D4 L4: 8 ends in a repeat',
      'As threaded': '1–8: 1 2 3 4 1 2 3 4 in DDDDLLLL',
    });
    const { order } = foundOf(HOUNDS_TOOTH, 1);
    const later = foundOf(HOUNDS_TOOTH, 1, { order: { ...order, start: [4, 2] } });
    expect(Object.fromEntries(ordersInWords(later))['As written']).toBe(
      'DDDDLLLL, by thread; warp order begins on end 5, weft order on pick 3',
    );
  });

  test('what tells cloths apart, and what does not', () => {
    const { apart, same } = differencesOf([foundOf(HOUNDS_TOOTH, 1), foundOf(LOG_CABIN, 2)]);
    expect(apart.map(({ name }) => name)).toContain('Turns and mirrors');
    expect(same).toContain('shuttles 2');
  });
});

describe('marks', () => {
  test('are saved as the commands read them, and read back', () => {
    const [first, second] = trialOutcome().found;
    const marks = new Marks();
    marks.toggle(first!);
    marks.toggle(second!);
    marks.mark(first!.code, { stars: 4, note: 'for the <b>hall</b>' });
    const kept = parseShortlist(marks.text(), 'shortlist.json');
    expect(kept).toMatchObject([
      { code: first!.code, stars: 4, note: 'for the <b>hall</b>' },
      { code: second!.code, stars: 0, note: '' },
    ]);
    const again = new Marks();
    expect(again.read(marks.text(), 'shortlist.json')).toBe(2);
    expect(again.text()).toBe(marks.text());
  });
});

describe('what the stars say', () => {
  const found = Array.from({ length: 12 }, (_, at) => {
    const each = foundOf(HOUNDS_TOOTH, at + 1);
    return { ...each, code: `c${at}`, scores: { ...each.scores, darkShare: at / 12, figure: (at % 3) / 3 } };
  });

  test('nothing of fewer than three cloths', () => {
    expect(
      preferenceOf(found, [
        [found[0]!, 5],
        [found[1]!, 1],
      ]),
    ).toBeUndefined();
  });

  test('finds the one figure that the stars follow', () => {
    const starred = found.map((each, at) => [each, Math.round(at / 2.4)] as const);
    const preference = preferenceOf(found, starred)!;
    const dark = TRAITS.findIndex(({ more }) => more === 'dark');
    const largest = Math.max(...preference.weights.map(Math.abs));
    expect(preference.weights[dark]).toBe(largest);
    expect(preference.stars(found[11]!)).toBeGreaterThan(preference.stars(found[0]!) + 2);
  });

  // For one figure that varies, ridge regression is Σxy / (Σx² + λ), here with λ = 2.
  test('is the textbook’s value for a single figure', () => {
    const plain = found.map((each) => ({ ...each, scores: { ...each.scores, figure: 0 } }));
    const starred = [
      [plain[0]!, 1],
      [plain[6]!, 2],
      [plain[11]!, 5],
    ] as const;
    const spread = Math.sqrt(143 / 12) / 12;
    const x = [0, 6, 11].map((at) => (at - 17 / 3) / 12 / spread);
    const y = [1, 2, 5].map((stars) => stars - 8 / 3);
    const expected =
      x.reduce((sum, value, n) => sum + value * y[n]!, 0) / (x.reduce((sum, value) => sum + value * value, 0) + 2);
    const dark = TRAITS.findIndex(({ more }) => more === 'dark');
    expect(preferenceOf(plain, starred)!.weights[dark]).toBeCloseTo(expected, 9);
  });
});
