// Worked examples of planning; their sources are named in worked-plans.ts.
import { describe, expect, test } from 'vitest';
import { drawdown, isUp } from '../../src/cloth/drawdown.js';
import { valuePairs, valueWarnings, yarnLightness } from '../../src/colour/lightness.js';
import type { Draft } from '../../src/draft/draft.js';
import { viewingLimits } from '../../src/score/contrast/viewing-distance.js';
import { INCH } from '../../src/words/measure.js';
import { twill, word, YARNS } from './worked-plans.js';

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
