import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawdown, isUp } from '../../../src/cloth/drawdown.js';
import { floatsOf } from '../../../src/cloth/floats.js';
import { holdsTogether } from '../../../src/cloth/holds-together.js';
import { findStructure, weaveOf } from '../../../src/structure/catalogue/catalogue.js';
import { letters } from '../../../src/structure/model/structure.js';
import { runs } from '../../long.js';

const SETT = { ends: 10, picks: 10, per: 'cm' } as const;
const kindOf = (block: string): number => (block.charCodeAt(0) - 65) % 2;

/** Groups of the two kinds by turns, and as many groups of picks, in each of which any blocks of its kind show. */
const cloths = fc.integer({ min: 2, max: 8 }).chain((count) => {
  const [first, second] = [0, 1].map((kind) => letters(count).filter((block) => kindOf(block) === kind));
  const pair = fc.tuple(fc.constantFrom(...first!), fc.constantFrom(...second!));
  const shown = fc.tuple(fc.subarray(first!, { minLength: 1 }), fc.subarray(second!, { minLength: 1 }));
  return fc.record({
    count: fc.constant(count),
    threaded: fc.array(pair, { minLength: 1, maxLength: 4 }).map((pairs) => pairs.flat()),
    shown: fc.array(shown, { minLength: 1, maxLength: 3 }).map((pairs) => pairs.flat()),
  });
});

/**
 * Plain weave, but: where a block shows weft spots its second and fourth ends stay down at the second and fourth pick
 * of a group; where it shows warp spots they are up. A group of its own kind makes weft spots, another warp spots.
 */
function cell(i: number, j: number, threaded: string[], spots: (group: number) => { weft: string[]; warp: string[] }) {
  const [block, end, pick] = [threaded[Math.floor(i / 5)]!, i % 5, j % 5];
  const { weft, warp } = spots(Math.floor(j / 5));
  if (end % 2 === 1 && pick % 2 === 1) {
    if (weft.includes(block)) return false;
    if (warp.includes(block)) return true;
  }
  return (i + j) % 2 === 0;
}

const check = (
  { count, threaded, shown }: { count: number; threaded: string[]; shown: string[][] },
  manner: string,
  spots: Parameters<typeof cell>[3],
) => {
  const treadled = shown.map((blocks) => blocks.join('+'));
  const cloth = drawdown(weaveOf(findStructure('huck').withBlocks!(count), threaded, { manner, treadled }));
  expect([cloth.ends, cloth.picks]).toEqual([5 * threaded.length, 5 * shown.length]);
  for (let j = 0; j < cloth.picks; j++) {
    for (let i = 0; i < cloth.ends; i++) expect(isUp(cloth, j, i)).toBe(cell(i, j, threaded, spots));
  }
  const { warpFace, warpBack, weftFace, weftBack } = floatsOf(cloth, SETT);
  expect(Math.max(warpFace!, warpBack!, weftFace!, weftBack!)).toBeLessThanOrEqual(5);
  expect(holdsTogether(cloth)).toBe(true);
};

describe('huck on more shafts, cell by cell', () => {
  test('texture: any blocks of one kind show weft spots together', () => {
    fc.assert(
      fc.property(cloths, (given) => check(given, 'texture', (group) => ({ weft: given.shown[group]!, warp: [] }))),
      { numRuns: runs(40) },
    );
  });

  test('warp spots: the groups of picks are of the other kind', () => {
    fc.assert(
      fc.property(cloths, ({ shown, ...given }) => {
        const turned = [...shown.slice(1), shown[0]!];
        check({ ...given, shown: turned }, 'warp spots', (group) => ({ weft: [], warp: turned[group]! }));
      }),
      { numRuns: runs(40) },
    );
  });

  test('lace in any blocks of both kinds, plain weave elsewhere', () => {
    fc.assert(
      fc.property(cloths, ({ shown, ...given }) => {
        const both = shown.map((_, group) => [...new Set([...shown[0]!, ...shown[1]!, ...shown[group]!])].sort());
        check({ ...given, shown: both }, 'lace', (group) => ({
          weft: both[group]!.filter((block) => kindOf(block) === group % 2),
          warp: both[group]!.filter((block) => kindOf(block) !== group % 2),
        }));
      }),
      { numRuns: runs(40) },
    );
  });

  test('blocks of both kinds have no weft spots on one pick', () => {
    expect(() => weaveOf(findStructure('huck'), ['A', 'B'], { treadled: ['A+B', 'B'] })).toThrow(
      'huck cannot weave A+B together: blocks A, C … float on the picks of one tabby, B, D … on those of the other',
    );
  });
});

describe('Swedish lace on more shafts', () => {
  const blocks = fc
    .integer({ min: 2, max: 8 })
    .chain((count) =>
      fc.tuple(fc.constant(count), fc.array(fc.constantFrom(...letters(count), '.'), { minLength: 1, maxLength: 8 })),
    );

  test('ends alternate between odd and even places of plain weave, with plain units too; floats 5 and 1', () => {
    fc.assert(
      fc.property(blocks, ([count, profile]) => {
        const structure = findStructure('Swedish lace').withBlocks!(count);
        const weave = weaveOf(structure, profile);
        // Inner shafts of blocks B, D … and shaft 1 are the odd ends.
        const isOdd = (shaft: number): boolean => shaft === 1 || (shaft !== count + 2 && shaft % 2 === 1);
        const odd = weave.threading.map(([shaft]) => isOdd(shaft!));
        expect(odd.every((is, i) => is !== odd.at(i - 1))).toBe(true);
        const { warpFace, warpBack, weftFace, weftBack } = floatsOf(drawdown(weave), SETT);
        const laced = profile.some((block) => block !== '.');
        expect([warpFace, warpBack, weftFace, weftBack]).toEqual(laced ? [1, 5, 5, 1] : [1, 1, 1, 1]);
      }),
      { numRuns: runs(60) },
    );
  });
});
