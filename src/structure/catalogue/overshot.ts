import { andList } from '../../words/counts.js';
import { type BlockWeave, blockWeave } from '../model/block-weave.js';
import { type Manner, PATTERN_AND_TABBY, PATTERN_WIDTHS, type Structure } from '../model/structure.js';
import { perBlock, type Unit, type Units } from '../model/unit.js';
import { type Ring, ringFor } from './shaft-ring.js';

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

const FOUR = ringFor(4);
export const RING_BLOCKS = FOUR.blocks;

/**
 * One step of the walk on the ring of shafts: from one shaft of the block to the other. From a shaft outside the block
 * the walk first passes through the shafts between, the shorter way.
 */
function step({ size, shaft }: Ring, block: number): Unit<number> {
  const after = Array.from({ length: size }, (_, up) => {
    const last = shaft(block - up);
    // Places from the last shaft to the nearer of the block’s own two, which the step leaves for the other.
    const rises = 2 * up < size;
    const first = rises
      ? Array.from({ length: up }, (__, n) => shaft(block - up + n + 1))
      : Array.from({ length: size - up - 1 }, (__, n) => shaft(block - up - n - 1));
    return [last, { ...(first.length > 0 && { first: [first] }), lay: [shaft(rises ? block + 1 : block)] }] as const;
  });
  return { lay: [shaft(block + 1)], after: Object.fromEntries(after) };
}

/** The steps of a walk on the ring of shafts. */
const stepsOn = (ring: Ring): Units<number> => ({
  blocks: perBlock(ring.blocks, (_, block) => step(ring, block)),
  starts: ring.blocks.map((_, place) => ring.shaft(place)),
});
export const RING_STEPS = stepsOn(FOUR);

function treadled({ blocks, letter }: Ring, name: string, about: string, shift: (place: number) => number): Manner {
  return {
    name,
    about,
    kinds: PATTERN_AND_TABBY,
    blocks: perBlock(blocks, (_, place) => ({ lay: [`P${letter(shift(place))}`, 'tabby'] })),
  };
}

/**
 * Overshot with `count` blocks, on as many shafts: four at least, and an even number. A threading is a closed walk on
 * the ring of shafts; each element of the profile is one step of it.
 */
function overshotOf(count: number): Structure {
  const ring = ringFor(count);
  const { size, blocks, tieUp } = ring;
  const isOdd = (place: number): boolean => place % 2 === 1;
  const asDrawnIn = treadled(
    ring,
    'as drawn in',
    'Star fashion: one pattern pick for each step of the threading.',
    (place) => place,
  );
  const opposites = blocks.filter((_, place) => !isOdd(place));
  return {
    name: 'overshot',
    aliases: ['daldräll', 'over shot'],
    about:
      'Blocks of neighbouring shafts, as many as shafts. Each letter of the profile is one step from shaft to shaft: three of a block cover four ends, the outer ones shared with its neighbours. One block shows, the second after it is clear, the rest are half-tones. A and C alone are monk’s belt.',
    shafts: size,
    blocks,
    // Neighbours share a shaft and weave half-tones beside each other; opposites do not.
    apart: [...opposites, ...blocks.filter((_, place) => isOdd(place))],
    profile:
      count === 4 ? [...'AAABBBCCCDDDDCCCBBBAAADD'] : blocks.slice(0, count).flatMap((block) => [block, block, block]),
    threading: stepsOn(ring),
    tieUp,
    neverTogether: 'they share their shafts',
    tabby: ['a', 'b'],
    manners: [
      asDrawnIn,
      treadled(ring, 'rose', 'Rose fashion: the same lengths, with neighbouring sheds exchanged.', (place) =>
        isOdd(place) ? place - 1 : place + 1,
      ),
      {
        ...asDrawnIn,
        name: 'on opposites',
        about: `Only blocks ${andList(opposites)} are treadled; the others weave half-tones.`,
        blocks: perBlock(blocks, (block) => (opposites.includes(block) ? asDrawnIn.blocks[block]! : { lay: [] })),
      },
    ],
    widths: PATTERN_WIDTHS,
    floatLaw: 'pattern weft one end more than the steps of the block, on both faces; warp 3; ground 1',
    colour: 'Warp and ground of one quiet colour; the pattern weft’s colour by block.',
    scale: 'Two steps more at a time keep the way out of a block; the float grows with it.',
    source:
      'van der Hoogt; Davison; parity and floats computed; rose fashion from memory; sheds on more shafts computed, no source',
    withBlocks: overshotOf,
  };
}

/** Blocks of paired shafts, woven with a pattern weft over plain weave. */
export const OVERSHOT: readonly Structure[] = [blockWeave(monksBelt), overshotOf(4)];
