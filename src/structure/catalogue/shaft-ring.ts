import { letters } from '../model/structure.js';

/** Blocks and shafts on a ring, an even number of each: block A begins on shaft 1, B on shaft 2 … */
export interface Ring {
  readonly size: number;
  readonly blocks: readonly string[];
  /** The block at a place of the ring, from 0. */
  letter(place: number): string;
  /** The shaft at a place of the ring, from 1. */
  shaft(place: number): number;
  /** Plain weave, then the shed that shows each block, by treadle. */
  readonly tieUp: Readonly<Record<string, readonly number[]>>;
}

/** The ring for a number of blocks: four at least, and an even number, so that odd and even shafts alternate. */
export function ringFor(count: number): Ring {
  const size = Math.max(4, count + (count % 2));
  const blocks = letters(size);
  const at = (place: number): number => ((place % size) + size) % size;
  const shaft = (place: number): number => at(place) + 1;
  const all = blocks.map((_, place) => place + 1);
  return {
    size,
    blocks,
    letter: (place) => blocks[at(place)]!,
    shaft,
    tieUp: {
      a: all.filter((each) => each % 2 === 1),
      b: all.filter((each) => each % 2 === 0),
      ...Object.fromEntries(blocks.map((block, place) => [`P${block}`, shown(size).map((up) => shaft(place + up))])),
    },
  };
}

/**
 * Places that rise where a block shows: its own two shafts stay down, the next two rise, and then one stays down and one
 * rises in turn. So no three neighbouring shafts are alike, whatever the number of shafts.
 */
function shown(size: number): number[] {
  return [2, 3, ...Array.from({ length: (size - 4) / 2 }, (_, pair) => 5 + 2 * pair)];
}
