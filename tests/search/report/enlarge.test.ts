import { describe, expect, test } from 'vitest';
import { readQuestion } from '../../../src/search/question/read-question.js';
import { type Enlarged, enlarge, usualTargets, type Way } from '../../../src/search/report/enlarge.js';

function motif(structure: string, more: Record<string, string> = {}): Enlarged {
  const question = readQuestion({ flags: { structure, orders: 'DLDDL', ...more } }, () => {
    throw new Error('no draft is asked for');
  });
  return enlarge(question, usualTargets(question.orders[0]!), 0.1);
}
const ends = ({ sizes }: Enlarged, way: Way): number[] =>
  sizes.filter((size) => size.way === way).map((size) => size.ends);
const why = ({ refused }: Enlarged, way: Way) => refused.filter((refusal) => refusal.way === way);

describe('five elements at twenty, forty and eighty ends (worked sizes of common practice)', () => {
  test('turned twill: 5, 20, 40, 80 in every way, and nothing refused', () => {
    const found = motif('turned twill');
    expect(found.refused).toEqual([]);
    expect(ends(found, 'thread')).toEqual([5, 20, 40, 80]);
    for (const way of ['unit', 'alternate', 'block'] as const) expect(ends(found, way)).toEqual([20, 40, 80]);
    expect(ends(found, 'nest')).toEqual([25, 100]);
    expect(found.sizes.every(({ floats }) => floats.longest! <= 3)).toBe(true);
    expect(found.sizes.every(({ holdsTogether }) => holdsTogether)).toBe(true);
  });

  test('every size begins with the first element of its order, in warp and weft', () => {
    const { sizes } = motif('2/2 twill', { orders: 'DLL' });
    for (const { times, draft } of sizes.filter(({ way }) => way === 'thread')) {
      expect([draft.warp.indexOf(1), draft.weft.indexOf(1)]).toEqual([times, times]);
    }
  });

  test('finished widths: 20 ends at 20 to the inch are 1 in on the loom, 0.9 in at a shrinkage of 10 %', () => {
    const widths = motif('turned twill').sizes.filter(({ way }) => way === 'unit');
    expect(widths.map(({ width }) => width / 25.4)).toEqual([1, 2, 4].map((inch) => expect.closeTo(inch, 9)));
    expect(widths.map(({ finished }) => finished / 25.4)).toEqual(
      [0.9, 1.8, 3.6].map((inch) => expect.closeTo(inch, 9)),
    );
  });

  test('run on until in step: 5 ends on weaves of 4 and 8 come back after 20 and 40', () => {
    const repeats = (name: string) => motif(name).sizes[0]!.repeat.ends;
    expect([repeats('2/2 twill'), repeats('turned twill')]).toEqual([20, 40]);
  });

  test('monk’s belt: 2, 4, 8 pairs an element; floats of 8, 16 and 32 ends, 0.4, 0.8 and 1.6 in', () => {
    // A B A A B, read round from its third element, is A A B A B.
    const found = motif('monk’s belt', { by: 'block' });
    const blocks = found.sizes.filter(({ way }) => way === 'block');
    expect(blocks.map(({ times }) => times)).toEqual([2, 4, 8]);
    expect(blocks.map(({ floats }) => floats.longest)).toEqual([8, 16, 32]);
    expect(blocks.map(({ pattern }) => pattern!.ends)).toEqual([8, 16, 32]);
    expect(blocks.map(({ pattern }) => pattern!.mm! / 25.4)).toEqual([0.4, 0.8, 1.6].map((l) => expect.closeTo(l, 9)));
    // 0.4 in is over 3/8 in and within 1/2 in.
    expect(blocks.map(({ passes }) => passes.usual)).toEqual([
      [false, true],
      [false, false],
      [false, false],
    ]);
  });

  test('M’s and O’s hold no whole units in 20 ends; 40 is the nearest', () => {
    const found = motif('M’s and O’s');
    expect(ends(found, 'block')).toEqual([40, 80]);
    expect(why(found, 'block')).toEqual([
      { way: 'block', ends: 20, nearest: 40, why: 'whole units make 40 ends at a time' },
    ]);
  });

  test('crackle: 24 ends with its incidental ones', () => {
    const found = motif('crackle');
    expect(ends(found, 'block')).toEqual([24, 44, 84]);
    expect(why(found, 'block').map(({ ends: asked, nearest }) => [asked, nearest])).toEqual([
      [20, 24],
      [40, 44],
      [80, 84],
    ]);
    expect(why(found, 'block')[0]!.why).toBe(
      'with its incidental ends the smallest is 24 ends, and then 20 more at a time',
    );
  });

  test('huck goes in fives, alternating too, as a search lays it; its blocks must alternate', () => {
    const found = motif('huck');
    expect(ends(found, 'unit')).toEqual([25, 50, 75]);
    expect(ends(found, 'alternate')).toEqual([25, 50, 75]);
    expect(why(found, 'block')[0]!.why).toContain('cannot follow');
  });

  test('units of four or five ends make up sizes that depend on the unit on which the order begins', () => {
    const [one] = motif('crackle').sizes.filter(({ way }) => way === 'unit');
    // Five of twelve units; six joins, each of one end, in the whole.
    expect([one!.ends, one!.range]).toEqual([22, [22, 23]]);
    const [plain] = motif('summer and winter').sizes.filter(({ way }) => way === 'unit');
    expect(plain!.range).toBeUndefined();
  });

  test.each([
    ['summer and winter', 3],
    ['crackle', 3],
    ['turned taqueté', 3],
    ['M’s and O’s', 4],
  ])('%s keeps its float of %i at every size by block', (name, float) => {
    for (const { floats, way } of motif(name).sizes) if (way === 'block') expect(floats.longest).toBe(float);
  });
});

test('a structure of one block is not enlarged by block, and says so', () => {
  expect(why(motif('plain weave'), 'block')[0]!.why).toMatch(/^by block: plain weave has 1 block/);
});
