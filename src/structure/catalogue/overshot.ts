import { type BlockWeave, blockWeave } from '../model/block-weave.js';
import { type Manner, PATTERN_AND_TABBY, PATTERN_WIDTHS, type Structure } from '../model/structure.js';
import { perBlock, type Unit, type Units } from '../model/unit.js';

const monksBelt: BlockWeave = {
  name: 'monk’s belt',
  aliases: ['munkabälte', 'block dräll'],
  about:
    'Blocks of paired shafts that never share a thread: clean squares of pattern weft on plain weave. Two blocks on four shafts, three on six; any of them together.',
  blocks: 2,
  profile: ['A', 'A', 'A', 'B', 'A', 'B', 'B', 'B'],
  shared: 0,
  own: 2,
  unit: 'p-q',
  sheds: { a: 'p', b: 'q', 'P*': ['', 'p q'] },
  tabby: ['a', 'b'],
  manners: [{ name: 'as drawn in', kinds: PATTERN_AND_TABBY, lay: 'P* tabby P* tabby' }],
  widths: PATTERN_WIDTHS,
  floatLaw:
    'pattern weft 2 ends for each neighbouring unit that shows, and on the back for each that does not; warp 3; ground 1',
  colour: 'Warp and ground of one colour; the pattern weft’s colour by block.',
  scale: 'The float grows with the block: mind its length. Halvdräll keeps it short.',
  source: 'Bress; Walterstorff 1940 (over six, under two); floats computed',
};

/** The four pattern sheds of blocks on neighbouring shafts: a block's own two shafts stay down. */
export const RING_TIE_UP = { a: [1, 3], b: [2, 4], PA: [3, 4], PB: [4, 1], PC: [1, 2], PD: [2, 3] } as const;
export const RING_BLOCKS = ['A', 'B', 'C', 'D'] as const;

/**
 * One step of the walk on the ring of shafts 1-2-3-4-1: from one shaft of the block to the other. From a shaft
 * outside the block the walk first passes through the shaft between.
 */
function step(low: number): Unit<number> {
  const on = (shaft: number): number => ((shaft + 3) % 4) + 1;
  const high = on(low + 1);
  return {
    lay: [high],
    after: {
      [low]: { lay: [high] },
      [high]: { lay: [low] },
      [on(high + 1)]: { first: [[high]], lay: [low] },
      [on(low - 1)]: { first: [[low]], lay: [high] },
    },
  };
}

/** The steps of a walk on the ring of shafts. */
export const RING_STEPS: Units<number> = {
  blocks: perBlock(RING_BLOCKS, (_, index) => step(index + 1)),
  starts: [1, 2, 3, 4],
};

function treadled(name: string, about: string, sheds: string): Manner {
  const order = sheds.split(' ');
  return {
    name,
    about,
    kinds: PATTERN_AND_TABBY,
    blocks: perBlock(RING_BLOCKS, (_, index) => ({ lay: order[index] === '-' ? [] : [order[index]!, 'tabby'] })),
  };
}

/** Overshot: a threading is a closed walk on the ring of shafts; each element of the profile is one step of it. */
const overshot: Structure = {
  name: 'overshot',
  aliases: ['daldräll', 'over shot'],
  about:
    'Four blocks of neighbouring shafts. Each letter of the profile is one step from shaft to shaft, so a block of three letters covers four ends and shares its outer ones with its neighbours. Blocks A and C alone are overshot on opposites: monk’s belt.',
  shafts: 4,
  blocks: RING_BLOCKS,
  // Neighbours share a shaft and weave half-tones beside each other; opposites do not.
  apart: ['A', 'C', 'B', 'D'],
  profile: [...'AAABBBCCCDDDDCCCBBBAAADD'],
  threading: RING_STEPS,
  tieUp: RING_TIE_UP,
  tabby: ['a', 'b'],
  manners: [
    treadled('as drawn in', 'Star fashion: one pattern pick for each step of the threading.', 'PA PB PC PD'),
    treadled('rose', 'Rose fashion: the same lengths, with neighbouring sheds exchanged.', 'PB PA PD PC'),
    treadled('on opposites', 'Only blocks A and C are treadled; B and D weave half-tones.', 'PA - PC -'),
  ],
  widths: PATTERN_WIDTHS,
  floatLaw: 'pattern weft one end more than the steps of the block, on both faces; warp 3; ground 1',
  colour: 'Warp and ground of one quiet colour; the pattern weft’s colour by block.',
  scale: 'Two steps more at a time keep the way out of a block; the float grows with it.',
  source: 'van der Hoogt; Davison; parity and floats computed; rose fashion from memory',
};

/** Blocks of paired shafts, woven with a pattern weft over plain weave. */
export const OVERSHOT: readonly Structure[] = [blockWeave(monksBelt), overshot];
