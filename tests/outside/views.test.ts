// Variety of patches and share of solid areas of known cloths at 20 ends and 20 picks per inch: figures to two (one)
// places that a separate plain program of a study of weavers' practice printed; what they mean is common practice.
import { describe, expect, test } from 'vitest';
import { colourFace } from '../../src/cloth/face.js';
import { patchVariety } from '../../src/score/patches.js';
import { solidShare } from '../../src/score/solid.js';
import { colourOf, weaveOf } from './blocks.js';

const PLAIN = '#./.#';
const TWILL = '##../.##./..##/#..#';

/** The same order both ways, each element `times` threads, until weave and order begin again. */
function cloth(block: string, warp: string, weft: string, times = 1) {
  const weave = weaveOf(block);
  const laid = (order: string, threads: number): number[] =>
    Array.from({ length: order.length * times * threads }, (_, s) =>
      colourOf(order[Math.floor(s / times) % order.length]!),
    );
  return colourFace(weave, laid(warp, weave.ends), laid(weft, weave.picks));
}

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
    expect(4 * patchVariety(cloth(block, warp, weft), [0, 1])).toBeCloseTo(bits, 1);
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
    expect(solidShare(cloth(TWILL, order, order, times), [0, 1], 1)).toBeCloseTo(share, 2);
  });
});
