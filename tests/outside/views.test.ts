// Variety of patches and share of solid areas of known cloths at 20 ends and 20 picks per inch: figures to two (one)
// places that a separate plain program of a study of weavers' practice printed; what they mean is common practice.
import { describe, expect, test } from 'vitest';
import { faceMaker, type Woven, woven } from '../../src/cloth/face.js';
import { contrastMeter } from '../../src/score/contrast/contrast.js';
import { lightGatherer } from '../../src/score/look/local-light.js';
import { patchBits } from '../../src/score/look/patches.js';
import { shapesOf } from '../../src/score/look/shapes.js';
import { outlineOf } from '../../src/score/look/sharp.js';
import { solidShares } from '../../src/score/look/solid.js';
import { structureAlone, structureLikeness } from '../../src/score/look/structure-likeness.js';
import { analyse } from '../../src/score/symmetry/analysis.js';
import { colourOf, weaveOf } from './blocks.js';

const PLAIN = '#./.#';
const TWILL = '##../.##./..##/#..#';

/** The same order both ways, each element `times` threads, until weave and order begin again. */
function laid(block: string, warp: string, weft: string, times = 1): Woven {
  const weave = weaveOf(block);
  const inOrder = (order: string, threads: number): number[] =>
    Array.from({ length: order.length * times * threads }, (_, s) =>
      colourOf(order[Math.floor(s / times) % order.length]!),
    );
  return woven(weave, inOrder(warp, weave.ends), inOrder(weft, weave.picks));
}

const cloth = (...of: Parameters<typeof laid>) => faceMaker()(laid(...of));
/** Gathered over two ends. */
const areas = lightGatherer([0, 1], 2, 2);

describe('bits of the 2 × 2 patches', () => {
  test.each([
    ['plain weave, dark warp, light weft', PLAIN, 'D', 'L', 1.0],
    ['plain weave, one and one', PLAIN, 'DL', 'DL', 1.0],
    ['gingham, four and four', PLAIN, 'DDDDLLLL', 'DDDDLLLL', 3.6],
    ['log cabin', PLAIN, 'DLDLDLDLLDLDLDLD', 'DLDLDLDLLDLDLDLD', 3.1],
    ['2/2 twill, dark warp, light weft', TWILL, 'D', 'L', 2.0],
    ['hound’s tooth', TWILL, 'DDDDLLLL', 'DDDDLLLL', 3.4],
    ['DDLDL both ways', TWILL, 'DDLDL', 'DDLDL', 3.4],
    ['DDDDL both ways', TWILL, 'DDDDL', 'DDDDL', 2.7],
  ])('%s: %s', (_, block, warp, weft, bits) => {
    expect(patchBits(cloth(block, warp, weft), [0, 1])).toBeCloseTo(bits, 1);
  });
});

describe('share of solid areas', () => {
  test.each([
    ['hound’s tooth', 'DDDDLLLL', 1, 0],
    ['DDLDL', 'DDLDL', 1, 0],
    ['DDLDL ×4', 'DDLDL', 4, 0.06],
    ['DDLDL ×8', 'DDLDL', 8, 0.28],
    ['DDLDL ×16', 'DDLDL', 16, 0.41],
  ])('%s', (_, order, times, share) => {
    const { dark, light } = solidShares(areas(laid(TWILL, order, order, times)));
    expect(dark + light).toBeCloseTo(share, 2);
  });
});

describe('crispness of outlines', () => {
  const LOG_CABIN = 'DLDLDLDLLDLDLDLD';
  const LOG_CABIN_OF_FIVE = 'DLDLDLDLLDLDDLDLLDLD';

  // The study took slopes on one side of the line; here they are those on both, so that a cloth turned round has the
  // same, which moves some of its figures by less than a hundredth.
  test.each([
    ['gingham, four and four', PLAIN, 'DDDDLLLL', 1, 0.96],
    ['log cabin', PLAIN, LOG_CABIN, 1, 0.51],
    ['hound’s tooth', TWILL, 'DDDDLLLL', 1, 0.97],
    ['DDLDL ×4', TWILL, 'DDLDL', 4, 0.66],
    ['DDLDL ×8', TWILL, 'DDLDL', 8, 0.33],
    ['DDLDL ×16', TWILL, 'DDLDL', 16, 0.05],
    ['log cabin of DDLDL', PLAIN, LOG_CABIN_OF_FIVE, 1, 0.79],
  ])('%s', (_, block, order, times, crisp) => {
    const woven = laid(block, order, order, times);
    const { slope, range } = outlineOf(areas(woven), 1);
    expect(Math.abs(slope / range - crisp)).toBeLessThan(0.01);
  });

  test.each([
    ['plain weave, dark warp, light weft', PLAIN, 'D', 'L'],
    ['plain weave, one and one', PLAIN, 'DL', 'DL'],
    ['2/2 twill, dark warp, light weft', TWILL, 'D', 'L'],
    ['DDLDL both ways', TWILL, 'DDLDL', 'DDLDL'],
    ['DDDDL both ways', TWILL, 'DDDDL', 'DDDDL'],
  ])('none, where there are no areas: %s', (_, block, warp, weft) => {
    const woven = laid(block, warp, weft);
    expect(outlineOf(areas(woven), 1).slope).toBeCloseTo(0, 1);
  });
});

// Counted on squared paper.
test.each([
  ['hairline', PLAIN, 'DL', 'LD', 2],
  ['lines across', PLAIN, 'DL', 'DL', 2],
  ['step', TWILL, 'DL', 'DL', 8],
  ['pinwheel', PLAIN, 'DDLL', 'DDLL', 16],
  ['bars of three', PLAIN, 'DLL', 'DLL', 18],
  ['hound’s tooth', TWILL, 'DDDDLLLL', 'DDDDLLLL', 64],
])('the smallest piece of %s: %d', (_, block, warp, weft, piece) => {
  const { width, height } = analyse(cloth(block, warp, weft)).lattice;
  expect(width * height).toBe(piece);
});

test('DDDDL both ways on 2/2 twill makes six light shapes on a dark ground', () => {
  const woven = laid(TWILL, 'DDDDL', 'DDDDL');
  const millimetres = (Math.PI / 10800) * 2000;
  const light = lightGatherer([0, 1], millimetres / 1.27, millimetres / 1.27)(woven);
  expect(shapesOf(light)).toEqual({ closed: 6, endless: 1 });
});

// Percentiles of 432 candidates on seven structures; these are the three of them that need no units, with every pair
// of orders of five. It tells that most pairs of orders make of a structure what it does not show alone.
test('unlike the structure: the spread over all pairs of five-end orders', () => {
  const orders = ['DLLLL', 'DDLLL', 'DLDLL', 'DDDLL', 'DDLDL', 'DDDDL'];
  const unlike = [PLAIN, TWILL, '###./.###/#.##/##.#']
    .flatMap((block) =>
      [1, 4].flatMap((times) =>
        orders.flatMap((warp) =>
          orders.map((weft) => {
            const values = Float64Array.of(0, 1);
            const variance = contrastMeter(1).variance(cloth(block, warp, weft, times), values);
            return structureLikeness(values)(
              laid(block, warp, weft, times),
              variance,
              structureAlone(weaveOf(block), 1),
            );
          }),
        ),
      ),
    )
    .sort((a, b) => a - b);
  const spread = [0.05, 0.25, 0.5, 0.75, 0.95].map((share) => unlike[Math.round(share * (unlike.length - 1))]!);
  [0.63, 0.79, 0.85, 0.95, 1].forEach((published, k) => {
    expect(Math.abs(spread[k]! - published)).toBeLessThan(0.1);
  });
});
