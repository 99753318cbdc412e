// How many blocks shafts hold, and the threadings of further blocks, as they are taught. Summer and winter and Bronson
// lace, two shafts and one for each block: Atwater, by way of articles. Spot Bronson, one shaft and one for each block:
// articles. Turned twill, four shafts a block: articles on twill blocks (Petrini). Huck, two shafts for the ground and
// one for each block; monk's belt (block dräll), a pair of shafts a block; crackle on more shafts, a point of three
// neighbouring shafts for each, and never three neighbouring shafts tied alike: common practice, no source.
import { describe, expect, test } from 'vitest';
import { drawdown, isUp } from '../../src/cloth/drawdown.js';
import { findStructure, parseProfile, weaveOf } from '../../src/structure/catalogue/catalogue.js';
import { tooMany } from '../../src/structure/model/sized.js';

test.each([
  ['summer and winter', 8, 6],
  ['summer and winter', 16, 14],
  ['Bronson lace', 4, 2],
  ['Bronson lace', 5, 3],
  ['spot Bronson', 4, 3],
  ['spot Bronson', 8, 7],
  ['turned twill', 8, 2],
  ['turned twill', 16, 4],
  ['turned twill', 32, 8],
  ['turned twill of three', 12, 4],
  ['huck', 8, 6],
  ['Swedish lace', 8, 6],
  ['monk’s belt', 8, 4],
  ['crackle', 8, 8],
])('%s on %i shafts has %i blocks, and no more', (name, shafts, blocks) => {
  expect(tooMany(findStructure(name), blocks, shafts)).toBeUndefined();
  expect(tooMany(findStructure(name), blocks + 1, shafts)).toContain(`enough for ${blocks} blocks`);
});

test.each([
  ['summer and winter', 'D', '1-6-2-6'],
  ['Bronson lace', 'C', '1-5-1-5-1-2'],
  ['spot Bronson', 'D', '1-5'],
  ['turned twill', 'C', '9-10-11-12'],
  ['monk’s belt', 'C', '5-6'],
  ['M’s and O’s', 'C', '3-2-3-2-1-4-1-4'],
])('a unit of %s, block %s: %s', (name, block, unit) => {
  expect(weaveOf(findStructure(name), [block]).threading.flat().join('-')).toBe(unit);
});

test('crackle on six shafts: the blocks and the joins of neighbours', () => {
  const threading = weaveOf(findStructure('crackle').withBlocks!(6), [...'ABCDEF'])
    .threading.flat()
    .join('');
  expect(threading).toBe('1232' + '1' + '2343' + '2' + '3454' + '3' + '4565' + '4' + '5616' + '5' + '6121' + '6');
});

/** The cells of a cloth as rows, `#` for warp on the face. */
const rowsOf = (name: string, profile: string, treadled: string): string[] => {
  const blocks = [...'ABCD'];
  const options = { treadled: parseProfile(treadled, blocks) };
  const cloth = drawdown(weaveOf(findStructure(name), parseProfile(profile, blocks), options));
  return Array.from({ length: cloth.picks }, (_, j) =>
    Array.from({ length: cloth.ends }, (__, i) => (isUp(cloth, j, i) ? '#' : '.')).join(''),
  );
};

// Worked by hand from the sheds: a tie and the pattern shafts of all blocks that do not show.
describe('blocks together', () => {
  test('summer and winter: A and C show, B does not; then none; then all', () => {
    expect(rowsOf('summer and winter', 'A B C', 'A+C . A+B+C')).toEqual([
      '#...##.##...',
      '#.#.#.#.#.#.',
      '..#..###..#.',
      '.#.#.#.#.#.#',
      '##.###.###.#',
      '#.#.#.#.#.#.',
      '.###.###.###',
      '.#.#.#.#.#.#',
      '#...#...#...',
      '#.#.#.#.#.#.',
      '..#...#...#.',
      '.#.#.#.#.#.#',
    ]);
  });
  test('Bronson lace: both blocks, beside a plain unit', () => {
    expect(rowsOf('Bronson lace', 'A . B', 'A+B')).toEqual([
      '#.#.#.#.#.#.#.#.#.',
      '.....#.#.#.#.....#',
      '#.#.#.#.#.#.#.#.#.',
      '.....#.#.#.#.....#',
      '#.#.#.#.#.#.#.#.#.',
      '.#.#.#.#.#.#.#.#.#',
    ]);
  });
  test('turned twill of four blocks: one against three, then two against two', () => {
    expect(rowsOf('turned twill', 'A B C D', 'A B+D')).toEqual([
      '#...###.###.###.',
      '.#..##.###.###.#',
      '..#.#.###.###.##',
      '...#.###.###.###',
      '###.#...###.#...',
      '##.#.#..##.#.#..',
      '#.##..#.#.##..#.',
      '.###...#.###...#',
    ]);
  });
});
